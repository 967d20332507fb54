#include "document/plan_address.hpp"

#include <algorithm>
#include <charconv>

#include "base/error.hpp"
#include "document/new_item.hpp"
#include "document/plan_items.hpp"
#include "document/revision.hpp"
#include "plan/approval.hpp"
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

bool has_nested(const Plan& plan, std::string_view pointer, std::string_view key) {
  return !field_text(plan, pointer, key).empty();
}

void set_nested(Plan& plan, std::string_view pointer, std::string_view key, bool present) {
  const auto object = object_at(plan, pointer);
  const FieldInfo* field = object ? object->table().named(key) : nullptr;
  if (field == nullptr || field->kind != FieldKind::object) return;
  if (present == (field->objects->elements(object->data(), *field).count > 0)) return;
  field->objects->make(object->data(), *field, present ? 1 : 0);
  if (present) fill_required(plan, std::string(pointer) + "/" + std::string(key));
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

/// The list at a pointer such as "/wires" or "/cell/robots".
struct ListRef {
  ConstObjectRef owner;
  const FieldInfo& field;
  Elements elements;

  std::string id(std::size_t index) const {
    const ConstObjectRef item = NestedAccess::element(elements, field, index);
    // What has no id of its own is called by its number.
    return item.table().id_field ? item.table().id_field->text(item) : std::to_string(index + 1);
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
  if (field == nullptr || field->kind != FieldKind::object_list) return std::nullopt;
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
  if (copy.table().id_field) copy.table().id_field->set_text(copy, id);
  if (last_step(pointer).before == "/schedules") {
    // Nobody approved the copy, and it is no revision: a family of its own begins.
    plan.schedules.back().revision = 1;
    plan.schedules.back().revision_of.clear();
    plan.schedules.back().status = "draft";
    clear_approval(plan.schedules.back());
  }
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

/// A list of the weldment in which the object at `pointer` is.
std::string list_in_weldment(std::string_view pointer, const char* list) {
  const PointerStep weldments = first_step(pointer);
  if (weldments.part != "weldments") return {};
  return "/weldments/" + std::string(first_step(weldments.rest).part) + list;
}

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
    case IdList::seams:
      return list_in_weldment(pointer, "/seams");
    case IdList::robots:
      return "/cell/robots";
    case IdList::orientations:
      return "/cell/orientations";
    case IdList::stages:
      return "/line/stages";
    case IdList::weldments:
      return "/weldments";
    case IdList::parts:
      return list_in_weldment(pointer, "/parts");
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
