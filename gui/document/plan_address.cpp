#include "document/plan_address.hpp"

#include <algorithm>
#include <charconv>

#include "base/error.hpp"
#include "document/new_item.hpp"
#include "plan/fields/nested_access.hpp"

namespace seamtakt::desk {

PointerStep first_step(std::string_view pointer) {
  if (pointer.starts_with('/')) pointer.remove_prefix(1);
  const std::size_t slash = pointer.find('/');
  if (slash == std::string_view::npos) return {pointer, {}};
  return {pointer.substr(0, slash), pointer.substr(slash)};
}

std::size_t list_index(std::string_view part, std::size_t list_size) {
  std::size_t index = list_size;
  const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), index);
  return error == std::errc() && end == part.data() + part.size() ? index : list_size;
}

std::string schedule_address(std::size_t schedule) {
  return "/schedules/" + std::to_string(schedule);
}

std::string seam_address(std::size_t weldment, std::size_t seam) {
  return "/weldments/" + std::to_string(weldment) + "/seams/" + std::to_string(seam);
}

std::string weldment_address(std::size_t weldment) {
  return "/weldments/" + std::to_string(weldment);
}

namespace {

/// One step down from an object: a nested object, or an element of a list.
std::optional<ConstObjectRef> child_at(ConstObjectRef object, PointerStep& step) {
  const FieldInfo* field = object.table().named(step.part);
  if (field == nullptr || field->objects == nullptr) return std::nullopt;
  const Elements elements = field->objects->elements(object.data(), *field);
  std::size_t index = 0;
  if (field->kind == FieldKind::object_list) {
    step = first_step(step.rest);
    index = list_index(step.part, elements.count);
  }
  if (index >= elements.count) return std::nullopt;
  return NestedAccess::element(elements, *field, index);
}

}  // namespace

std::optional<ConstObjectRef> object_at(const Plan& plan, std::string_view pointer) {
  std::optional<ConstObjectRef> object(plan);
  while (object && !pointer.empty()) {
    PointerStep step = first_step(pointer);
    object = child_at(*object, step);
    pointer = step.rest;
  }
  return object;
}

std::optional<ObjectRef> object_at(Plan& plan, std::string_view pointer) {
  const auto found = object_at(std::as_const(plan), pointer);
  if (!found) return std::nullopt;
  return ObjectRef(found->table(), const_cast<void*>(found->data()));  // it is part of the plan
}

std::string field_text(const Plan& plan, std::string_view pointer, std::string_view key) {
  const FieldInfo* field = field_info(plan, pointer, key);
  return field ? field->text(*object_at(plan, pointer)) : std::string();
}

void set_field_text(Plan& plan, std::string_view pointer, std::string_view key, std::string_view text) {
  const FieldInfo* field = field_info(plan, pointer, key);
  if (field == nullptr)
    throw InputError(std::string(pointer), "no field \"" + std::string(key) + "\"", "a field of the plan");
  field->set_text(*object_at(plan, pointer), text);
}

const FieldInfo* field_info(const Plan& plan, std::string_view pointer, std::string_view key) {
  const auto object = object_at(plan, pointer);
  return object ? object->table().named(key) : nullptr;
}

namespace {

/// Initial content of a nested object whose table has required fields.
struct StartingValue {
  std::string_view table, key, text;
};
constexpr StartingValue starting_values[] = {{"groove", "type", "single-v"},
                                             {"intermittent", "length_mm", "50"}};

}  // namespace

bool has_nested(const Plan& plan, std::string_view pointer, std::string_view key) {
  return !field_text(plan, pointer, key).empty();
}

void set_nested(Plan& plan, std::string_view pointer, std::string_view key, bool present) {
  const auto object = object_at(plan, pointer);
  const FieldInfo* field = object ? object->table().named(key) : nullptr;
  if (field == nullptr || field->kind != FieldKind::object) return;
  if (present == (field->objects->elements(object->data(), *field).count > 0)) return;
  field->objects->make(object->data(), *field, present ? 1 : 0);
  if (!present) return;
  const ObjectRef made = field->objects->element_of(object->data(), *field, 0);
  for (const StartingValue& value : starting_values)
    if (value.table == made.table().name) made.table().named(value.key)->set_text(made, value.text);
}

namespace {

/// The last part of a pointer, and the part before it.
struct LastStep {
  std::string_view before, part;
};
LastStep last_step(std::string_view pointer) {
  const std::size_t slash = pointer.rfind('/');
  if (slash == std::string_view::npos) return {{}, pointer};
  return {pointer.substr(0, slash), pointer.substr(slash + 1)};
}

/// The list at a pointer such as "/wires" or "/cell/robots", of objects that have an id.
struct ListRef {
  ConstObjectRef owner;
  const FieldInfo& field;
  Elements elements;

  std::string id(std::size_t index) const {
    const ConstObjectRef item = NestedAccess::element(elements, field, index);
    return item.table().id_field->text(item);
  }
  std::vector<std::string> ids() const {
    std::vector<std::string> all;
    for (std::size_t i = 0; i < elements.count; ++i) all.push_back(id(i));
    return all;
  }
};

std::optional<ListRef> list_at(const Plan& plan, std::string_view pointer) {
  const auto [before, key] = last_step(pointer);
  const auto owner = object_at(plan, before);
  const FieldInfo* field = owner ? owner->table().named(key) : nullptr;
  if (field == nullptr || field->kind != FieldKind::object_list || field->nested().id_field == nullptr)
    return std::nullopt;
  return ListRef{*owner, *field, field->objects->elements(owner->data(), *field)};
}

/// The item at a pointer, of a plan that may be changed.
struct ItemRef {
  ListRef list;
  void* owner;
  std::size_t index;
};

std::optional<ItemRef> item_at(Plan& plan, std::string_view pointer) {
  const auto [before, part] = last_step(pointer);
  const auto list = list_at(plan, before);
  if (!list) return std::nullopt;
  const std::size_t index = list_index(part, list->elements.count);
  if (index >= list->elements.count) return std::nullopt;
  return ItemRef{*list, const_cast<void*>(list->owner.data()), index};
}

}  // namespace

std::string duplicate_item(Plan& plan, std::string_view pointer) {
  const auto item = item_at(plan, pointer);
  if (!item) return {};
  const FieldInfo& field = item->list.field;
  const std::size_t count = item->list.elements.count;
  const std::vector<std::string> ids = item->list.ids();
  const std::string id = next_id(
      ids[item->index], [&](const std::string& each) { return std::ranges::find(ids, each) != ids.end(); });
  field.objects->append_copy(item->owner, field, item->index);
  const ObjectRef copy = field.objects->element_of(item->owner, field, count);
  copy.table().id_field->set_text(copy, id);
  return std::string(last_step(pointer).before) + "/" + std::to_string(count);
}

void remove_item(Plan& plan, std::string_view pointer) {
  if (const auto item = item_at(plan, pointer))
    item->list.field.objects->erase(item->owner, item->list.field, item->index);
}

std::vector<std::pair<std::string, std::string>> items_of(const Plan& plan, std::string_view list) {
  std::vector<std::pair<std::string, std::string>> items;
  if (const auto found = list_at(plan, list))
    for (std::size_t i = 0; i < found->elements.count; ++i)
      items.emplace_back(std::string(list) + "/" + std::to_string(i), found->id(i));
  return items;
}

namespace {

/// Where the list is that a reference names; empty where it isn't one list.
std::string list_pointer(IdList list, std::string_view pointer) {
  switch (list) {
    case IdList::base_metals:
      return "/base_metals";
    case IdList::wires:
      return "/wires";
    case IdList::gases:
      return "/gases";
    case IdList::power_sources:
      return "/power_sources";
    case IdList::schedules:
      return "/schedules";
    case IdList::qualifications:
      return "/qualifications";
    case IdList::seams: {
      const PointerStep weldments = first_step(pointer);
      if (weldments.part != "weldments") return {};
      return "/weldments/" + std::string(first_step(weldments.rest).part) + "/seams";
    }
    case IdList::robots:
      return "/cell/robots";
    case IdList::orientations:
      return "/cell/orientations";
    case IdList::stages:
      return "/line/stages";
    case IdList::seam_places:
    case IdList::none:
      return {};
  }
  return {};
}

}  // namespace

std::vector<std::string> ids_of(const Plan& plan, IdList list, std::string_view pointer) {
  const auto found = list_at(plan, list_pointer(list, pointer));
  return found ? found->ids() : std::vector<std::string>();
}

namespace {

/// Calls visit(id) for each id, in `object` and in all within it, that refers to this list.
template <class Visit>
void each_reference(ObjectRef object, IdList list, const Visit& visit) {
  for (const FieldInfo& field : object.table().fields) {
    if (field.objects) {
      const std::size_t count = field.objects->elements(object.data(), field).count;
      for (std::size_t i = 0; i < count; ++i)
        each_reference(field.objects->element_of(object.data(), field, i), list, visit);
    } else if (field.refers_to == list) {
      if (field.kind == FieldKind::reference) visit(member_at<std::string>(object.data(), field.offset));
      if (field.kind == FieldKind::reference_list)
        for (std::string& id : member_at<std::vector<std::string>>(object.data(), field.offset)) visit(id);
    }
  }
}

void rename_references(ObjectRef object, IdList list, const std::string& before, const std::string& after) {
  each_reference(object, list, [&](std::string& id) {
    if (id == before) id = after;
  });
}

void follow_seam(Plan& plan, Weldment& weldment, const std::string& before, const std::string& after) {
  rename_references(weldment, IdList::seams, before, after);
  rename_references(plan, IdList::seam_places, weldment.id + "/" + before, weldment.id + "/" + after);
}

void follow_weldment(Plan& plan, const std::string& before, const std::string& after) {
  each_reference(plan, IdList::seam_places, [&](std::string& place) {
    if (place.starts_with(before + "/")) place = after + place.substr(before.size());
  });
}

}  // namespace

void follow_rename(Plan& plan, std::string_view pointer, const std::string& before,
                   const std::string& after) {
  const PointerStep list = first_step(pointer);
  const PointerStep item = first_step(list.rest);
  if (list.part == "schedules") return rename_references(plan, IdList::schedules, before, after);
  if (list.part != "weldments") return;
  const std::size_t at = list_index(item.part, plan.weldments.size());
  if (at >= plan.weldments.size()) return;
  if (item.rest.empty()) return follow_weldment(plan, before, after);
  if (first_step(item.rest).part == "seams") follow_seam(plan, plan.weldments[at], before, after);
}

std::optional<SeamPlace> find_seam(const Plan& plan, std::string_view weldment, std::string_view seam) {
  for (std::size_t w = 0; w < plan.weldments.size(); ++w) {
    if (plan.weldments[w].id != weldment) continue;
    for (std::size_t s = 0; s < plan.weldments[w].seams.size(); ++s)
      if (plan.weldments[w].seams[s].id == seam) return SeamPlace{w, s};
  }
  return std::nullopt;
}

std::optional<std::size_t> find_schedule(const Plan& plan, std::string_view id) {
  for (std::size_t s = 0; s < plan.schedules.size(); ++s)
    if (plan.schedules[s].id == id) return s;
  return std::nullopt;
}

bool lies_in(std::string_view place, std::string_view whole) {
  return place.starts_with(whole) && (place.size() == whole.size() || place[whole.size()] == '/');
}

/// An id may contain a slash itself, so places aren't split.
std::string address_of_finding(const Plan& plan, std::string_view where) {
  for (std::size_t w = 0; w < plan.weldments.size(); ++w) {
    const Weldment& weldment = plan.weldments[w];
    if (!lies_in(where, weldment.id) || where.size() == weldment.id.size()) continue;
    const std::string_view rest = where.substr(weldment.id.size() + 1);
    for (std::size_t s = 0; s < weldment.seams.size(); ++s)
      if (lies_in(rest, weldment.seams[s].id)) return seam_address(w, s);
  }
  constexpr std::string_view word = "schedule ";
  const std::string_view id = where.starts_with(word) ? where.substr(word.size()) : where;
  for (const std::string_view each : {where, id})
    if (const auto schedule = find_schedule(plan, each)) return schedule_address(*schedule);
  return {};
}

std::string weldment_address_of(const Plan& plan, std::string_view where) {
  for (std::size_t w = 0; w < plan.weldments.size(); ++w)
    if (lies_in(where, plan.weldments[w].id)) return weldment_address(w);
  return {};
}

}  // namespace seamtakt::desk
