#include "document/plan_items.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "document/new_item.hpp"
#include "document/plan_address.hpp"
#include "plan/fields/nested_access.hpp"

namespace seamtakt::desk {

namespace {

/// Initial content where the least value that a field allows says nothing. A draft to be changed: common
/// practice, no source.
struct StartingValue {
  std::string_view table, key, text;
};
constexpr StartingValue starting_values[] = {{"groove", "type", "single-v"},
                                             {"intermittent", "length_mm", "50"},
                                             {"schedule", "status", "draft"},
                                             {"schedule", "process", "135"},
                                             {"schedule", "wire_feed_speed_m_min", "9.5"},
                                             {"schedule", "arc_voltage_V", "29"},
                                             {"schedule", "travel_speed_mm_s", "8"},
                                             {"schedule", "contact_tip_distance_mm", "18"},
                                             {"schedule", "arc_length_mm", "3"},
                                             {"calendar", "start", "2027-01-04T06:00"},
                                             {"shift", "days", "mon, tue, wed, thu, fri"},
                                             {"shift", "from", "06:00"},
                                             {"shift", "to", "14:00"},
                                             {"turn", "time_s", "10"}};

/// What the first item of a list is called.
struct FirstId {
  std::string_view list, id;
};
constexpr FirstId first_ids[] = {
    {"base_metals", "M1"},  {"wires", "D1"},          {"gases", "G1"},     {"power_sources", "P1"},
    {"schedules", "F1"},    {"qualifications", "Q1"}, {"weldments", "W1"}, {"robots", "R1"},
    {"orientations", "O1"}, {"zones", "Z1"},          {"stages", "T1"},    {"instruments", "I1"},
    {"operators", "H1"},    {"parts", "P1"},          {"plates", "P1"},    {"tubes", "R1"}};

std::string first_id(std::string_view list) {
  for (const FirstId& each : first_ids)
    if (each.list == list) return std::string(each.id);
  return "1";
}

std::string least_number(const Range& range) {
  if (std::isfinite(range.lower)) return number_text(range.lower_open ? range.lower + 1 : range.lower);
  return range.contains(0) ? "0" : number_text(range.upper);
}

/// A text that a required field takes; empty where nothing can be said.
std::string valid_text(const Plan& plan, std::string_view pointer, const FieldInfo& field) {
  switch (field.kind) {
    case FieldKind::number:
    case FieldKind::integer:
      return least_number(field.range);
    case FieldKind::choice:
    case FieldKind::choice_or_number:
      return field.choices.empty() ? std::string() : std::string(field.choices.front());
    case FieldKind::boolean:
      return "false";
    case FieldKind::reference:
    case FieldKind::reference_list: {
      const auto ids = ids_of(plan, field.refers_to, pointer);
      if (ids.empty()) return {};
      return field.key == "to" ? ids.back() : ids.front();  // a way leads somewhere else
    }
    case FieldKind::number_list: {
      std::string text;
      for (std::size_t i = 0; i < field.least; ++i) text += (i > 0 ? ", " : "") + least_number(field.range);
      return text;
    }
    case FieldKind::number_pairs:
      return "0 0; 100 0; 100 100; 0 100";
    case FieldKind::point:
      return "0 0 0";
    case FieldKind::path:
      return "0 0 0; 100 0 0";
    case FieldKind::text:
    case FieldKind::text_list:
      return "?";
    default:
      return {};
  }
}

const StartingValue* starting_value(const FieldTable& table, std::string_view key) {
  for (const StartingValue& value : starting_values)
    if (value.table == table.name && value.key == key) return &value;
  return nullptr;
}

void set_where_it_can(const FieldInfo& field, ObjectRef object, std::string_view text) {
  try {
    field.set_text(object, text);
  } catch (const InputError&) {
    // The check of the whole plan says what is wrong.
  }
}

/// As if nothing had been set; required fields keep what they had.
void reset(ObjectRef object) {
  for (const FieldInfo& field : object.table().fields)
    if (field.objects)
      field.objects->make(object.data(), field, 0);
    else
      set_where_it_can(field, object, {});
  object.file_keys() = {};
}

struct List {
  ObjectRef owner;
  const FieldInfo* field;
  std::string key;
};

std::optional<List> owned_list(Plan& plan, std::string_view pointer) {
  const std::size_t slash = pointer.rfind('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto owner = object_at(plan, pointer.substr(0, slash));
  const FieldInfo* field = owner ? owner->table().named(pointer.substr(slash + 1)) : nullptr;
  if (field == nullptr || field->kind != FieldKind::object_list) return std::nullopt;
  return List{*owner, field, std::string(pointer.substr(slash + 1))};
}

/// Gives the last item of a list a free id.
void name_last(const List& list, const std::string& like) {
  const Elements elements = list.field->objects->elements(list.owner.data(), *list.field);
  const FieldInfo* id = list.field->nested().id_field;
  if (id == nullptr || elements.count == 0) return;
  std::vector<std::string> taken;
  for (std::size_t i = 0; i + 1 < elements.count; ++i)
    taken.push_back(id->text(NestedAccess::element(elements, *list.field, i)));
  const std::string free =
      next_id(like, [&](const std::string& each) { return std::ranges::find(taken, each) != taken.end(); });
  id->set_text(list.field->objects->element_of(list.owner.data(), *list.field, elements.count - 1), free);
}

/// A seam of the weldment in which the list is; false where it isn't a list of seams.
bool add_seam(Plan& plan, std::string_view list) {
  const PointerStep weldments = first_step(list);
  const PointerStep item = first_step(weldments.rest);
  if (weldments.part != "weldments" || item.rest != "/seams") return false;
  const std::size_t at = list_index(item.part, plan.weldments.size());
  if (at >= plan.weldments.size()) return false;
  plan.weldments[at].seams.push_back(new_seam(plan, plan.weldments[at]));
  return true;
}

/// The last shift begins where the one before it ends, and is eight hours long.
void follow_on(std::vector<Shift>& shifts) {
  const std::string& ended = shifts[shifts.size() - 2].to;
  Shift& last = shifts.back();
  last.from = ended;
  const int hour = (std::atoi(ended.c_str()) + 8) % 24;
  last.to = (hour < 10 ? "0" : "") + std::to_string(hour) + ended.substr(ended.find(':'));
}

std::string last_item(Plan& plan, std::string_view list) {
  const auto found = owned_list(plan, list);
  if (!found) return {};
  const std::size_t count = found->field->objects->elements(found->owner.data(), *found->field).count;
  return std::string(list) + "/" + std::to_string(count - 1);
}

}  // namespace

void fill_required(Plan& plan, std::string_view pointer) {
  const auto object = object_at(plan, pointer);
  if (!object) return;
  for (const FieldInfo& field : object->table().fields) {
    if (&field == object->table().id_field) continue;
    if (const StartingValue* value = starting_value(object->table(), field.key)) {
      set_where_it_can(field, *object, value->text);
    } else if (field.required && field.kind == FieldKind::object_list) {
      field.objects->make(object->data(), field, field.least);
      for (std::size_t i = 0; i < field.least; ++i)
        fill_required(plan, std::string(pointer) + "/" + std::string(field.key) + "/" + std::to_string(i));
    } else if (field.required && !field.objects) {
      set_where_it_can(field, *object, valid_text(plan, pointer, field));
    }
  }
}

std::string add_item(Plan& plan, std::string_view list) {
  if (list == "/base_metals" || list == "/wires") {
    // Their figures have no least value that is one of a metal.
    const std::string made = add_from_catalogue(plan, list, list == "/wires" ? "solid-steel-1.2" : "S355J2");
    if (list == "/wires") {
      plan.wires.back().classification.clear();
    } else {
      plan.base_metals.back().standard.clear();
      plan.base_metals.back().composition_basis.clear();
    }
    name_last(*owned_list(plan, list), first_id(list.substr(1)));
    return made;
  }
  if (add_seam(plan, list)) return last_item(plan, list);
  const auto found = owned_list(plan, list);
  if (!found) return {};
  const NestedAccess& access = *found->field->objects;
  const std::size_t count = access.elements(found->owner.data(), *found->field).count;
  if (count == 0) {
    access.make(found->owner.data(), *found->field, 1);
  } else {
    access.append_copy(found->owner.data(), *found->field, 0);
    reset(access.element_of(found->owner.data(), *found->field, count));
  }
  name_last(*found, first_id(found->key));
  const std::string made = last_item(plan, list);
  fill_required(plan, made);
  if (list == "/line/calendar/shifts" && count > 0) follow_on(plan.line->calendar->shifts);
  return made;
}

std::string add_from_catalogue(Plan& plan, std::string_view list, std::string_view row) {
  if (list == "/base_metals")
    plan.base_metals.push_back(catalogue_metal(row));
  else if (list == "/wires")
    plan.wires.push_back(catalogue_wire(row));
  else if (list == "/gases")
    plan.gases.push_back(catalogue_gas(row));
  else
    return {};
  const auto found = owned_list(plan, list);
  name_last(*found, std::string(row));
  return last_item(plan, list);
}

}  // namespace seamtakt::desk
