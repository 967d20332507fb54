#include "document/plan_address.hpp"

#include "base/error.hpp"
#include "document/new_item.hpp"

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

std::string field_text(const Plan& plan, std::string_view pointer, std::string_view key) {
  std::string text;
  visit_object(plan, pointer, [&](const auto& object) {
    using Object = std::remove_cvref_t<decltype(object)>;
    if (const Field<Object>* field = field_named<Object>(key)) text = field->text(object);
  });
  return text;
}

void set_field_text(Plan& plan, std::string_view pointer, std::string_view key, std::string_view text) {
  bool done = false;
  visit_object(plan, pointer, [&](auto& object) {
    using Object = std::remove_cvref_t<decltype(object)>;
    const Field<Object>* field = field_named<Object>(key);
    if (!field) return;
    field->set_text(object, text);
    done = true;
  });
  if (!done)
    throw InputError(std::string(pointer), "no field \"" + std::string(key) + "\"", "a field of the plan");
}

const FieldInfo* field_info(const Plan& plan, std::string_view pointer, std::string_view key) {
  const FieldInfo* info = nullptr;
  visit_object(plan, pointer,
               [&](const auto& object) { info = field_named<std::remove_cvref_t<decltype(object)>>(key); });
  return info;
}

namespace {

template <class Maybe>
void make_or_drop(Maybe& maybe, bool present) {
  if (!present) {
    maybe.reset();
  } else if (!maybe) {
    maybe.emplace();
  }
}

void set_nested_of(Seam& seam, std::string_view key, bool present) {
  if (key == "groove") {
    make_or_drop(seam.groove, present);
    if (present) seam.groove->type = "single-v";
  }
  if (key == "intermittent") {
    make_or_drop(seam.intermittent, present);
    if (present) seam.intermittent->length_mm = 50;
  }
  if (key == "tacks") make_or_drop(seam.tacks, present);
}

void set_nested_of(Schedule& schedule, std::string_view key, bool present) {
  if (key == "weave") make_or_drop(schedule.weave, present);
  if (key == "use") make_or_drop(schedule.use, present);
  if (key == "limits") make_or_drop(schedule.limits, present);
}

void set_nested_of(Weldment& weldment, std::string_view key, bool present) {
  if (key == "section") make_or_drop(weldment.section, present);
}

void set_nested_of(Robot& robot, std::string_view key, bool present) {
  if (key == "loaded") make_or_drop(robot.loaded, present);
}

void set_nested_of(Cell& cell, std::string_view key, bool present) {
  if (key == "torch_service") make_or_drop(cell.torch_service, present);
}

void set_nested_of(Qualification& qualification, std::string_view key, bool present) {
  if (key == "tested") make_or_drop(qualification.tested, present);
}

void set_nested_of(Plan& plan, std::string_view key, bool present) {
  if (key == "cell") make_or_drop(plan.cell, present);
  if (key == "line") make_or_drop(plan.line, present);
  if (key == "costs") make_or_drop(plan.costs, present);
  if (key == "measuring") make_or_drop(plan.measuring, present);
}

template <class Object>
void set_nested_of(Object&, std::string_view, bool) {}

}  // namespace

bool has_nested(const Plan& plan, std::string_view pointer, std::string_view key) {
  return !field_text(plan, pointer, key).empty();
}

void set_nested(Plan& plan, std::string_view pointer, std::string_view key, bool present) {
  visit_object(plan, pointer, [&](auto& object) { set_nested_of(object, key, present); });
}

namespace {

/// Calls visit(list) with the list at a pointer such as "/wires" or "/cell/robots".
template <class PlanType, class Visit>
void visit_list(PlanType& plan, std::string_view list, Visit&& visit) {
  if (list == "/base_metals") visit(plan.base_metals);
  if (list == "/wires") visit(plan.wires);
  if (list == "/gases") visit(plan.gases);
  if (list == "/power_sources") visit(plan.power_sources);
  if (list == "/qualifications") visit(plan.qualifications);
  if (list == "/instruments") visit(plan.instruments);
  if (list == "/cell/robots" && plan.cell) visit(plan.cell->robots);
  if (list == "/cell/orientations" && plan.cell) visit(plan.cell->orientations);
  if (list == "/cell/zones" && plan.cell) visit(plan.cell->zones);
  if (list == "/line/stages" && plan.line) visit(plan.line->stages);
}

}  // namespace

std::string duplicate_item(Plan& plan, std::string_view pointer) {
  const std::size_t slash = pointer.rfind('/');
  std::string made;
  visit_list(plan, pointer.substr(0, slash), [&](auto& list) {
    const std::size_t at = list_index(pointer.substr(slash + 1), list.size());
    if (at >= list.size()) return;
    auto copy = list[at];
    copy.id = next_id(list, copy.id);
    list.push_back(std::move(copy));
    made = std::string(pointer.substr(0, slash)) + "/" + std::to_string(list.size() - 1);
  });
  return made;
}

void remove_item(Plan& plan, std::string_view pointer) {
  const std::size_t slash = pointer.rfind('/');
  visit_list(plan, pointer.substr(0, slash), [&](auto& list) {
    const std::size_t at = list_index(pointer.substr(slash + 1), list.size());
    if (at < list.size()) list.erase(list.begin() + static_cast<std::ptrdiff_t>(at));
  });
}

std::vector<std::pair<std::string, std::string>> items_of(const Plan& plan, std::string_view list) {
  std::vector<std::pair<std::string, std::string>> items;
  visit_list(plan, list, [&](const auto& found) {
    for (const auto& item : found)
      items.emplace_back(std::string(list) + "/" + std::to_string(items.size()), item.id);
  });
  return items;
}

namespace {

template <class List>
std::vector<std::string> ids_in(const List& list) {
  std::vector<std::string> ids;
  for (const auto& item : list) ids.push_back(item.id);
  return ids;
}

std::vector<std::string> seam_ids(const Plan& plan, std::string_view pointer) {
  const PointerStep list = first_step(pointer);
  if (list.part != "weldments") return {};
  const std::size_t at = list_index(first_step(list.rest).part, plan.weldments.size());
  return at < plan.weldments.size() ? ids_in(plan.weldments[at].seams) : std::vector<std::string>();
}

}  // namespace

std::vector<std::string> ids_of(const Plan& plan, IdList list, std::string_view pointer) {
  switch (list) {
    case IdList::base_metals:
      return ids_in(plan.base_metals);
    case IdList::wires:
      return ids_in(plan.wires);
    case IdList::gases:
      return ids_in(plan.gases);
    case IdList::power_sources:
      return ids_in(plan.power_sources);
    case IdList::schedules:
      return ids_in(plan.schedules);
    case IdList::qualifications:
      return ids_in(plan.qualifications);
    case IdList::seams:
      return seam_ids(plan, pointer);
    case IdList::robots:
      return plan.cell ? ids_in(plan.cell->robots) : std::vector<std::string>();
    case IdList::orientations:
      return plan.cell ? ids_in(plan.cell->orientations) : std::vector<std::string>();
    case IdList::stages:
      return plan.line ? ids_in(plan.line->stages) : std::vector<std::string>();
    case IdList::seam_places:
    case IdList::none:
      return {};
  }
  return {};
}

namespace {

void rename_in(std::vector<std::string>& ids, const std::string& before, const std::string& after) {
  for (std::string& id : ids)
    if (id == before) id = after;
}

void follow_schedule(Plan& plan, const std::string& before, const std::string& after) {
  for (Weldment& weldment : plan.weldments)
    for (Seam& seam : weldment.seams) {
      rename_in(seam.schedules, before, after);
      if (seam.tacks && seam.tacks->schedule == before) seam.tacks->schedule = after;
    }
}

void follow_seam(Plan& plan, Weldment& weldment, const std::string& before, const std::string& after) {
  for (Seam& seam : weldment.seams) rename_in(seam.after, before, after);
  for (OrderStep& step : weldment.order)
    if (step.seam == before) step.seam = after;
  if (!plan.cell) return;
  for (Zone& zone : plan.cell->zones)
    rename_in(zone.seams, weldment.id + "/" + before, weldment.id + "/" + after);
}

void follow_weldment(Plan& plan, const std::string& before, const std::string& after) {
  if (!plan.cell) return;
  for (Zone& zone : plan.cell->zones)
    for (std::string& place : zone.seams)
      if (place.starts_with(before + "/")) place = after + place.substr(before.size());
}

}  // namespace

void follow_rename(Plan& plan, std::string_view pointer, const std::string& before,
                   const std::string& after) {
  const PointerStep list = first_step(pointer);
  const PointerStep item = first_step(list.rest);
  if (list.part == "schedules") return follow_schedule(plan, before, after);
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

/// An id may hold a slash itself, so places aren't taken apart.
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
