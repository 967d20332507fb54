#pragma once

#include <charconv>
#include <string>
#include <string_view>
#include <vector>

#include "plan/fields/field.hpp"

/// An object of a plan is named by its JSON pointer ("/weldments/0/seams/3/groove"), so that an edit, the
/// form field that made it and the finding that led there speak of the same place.
namespace seamtakt::desk {

/// One step down a pointer: the part before the next '/', and what is left.
struct PointerStep {
  std::string_view part, rest;
};
PointerStep first_step(std::string_view pointer);

/// The index that a pointer's part is; list_size where it is none or outside.
std::size_t list_index(std::string_view part, std::size_t list_size);

namespace detail {

template <class Object, class Visit>
bool visit_below(Object&, std::string_view, Visit&&) {
  return false;
}

template <class Object, class Visit>
bool visit_here(Object& object, std::string_view rest, Visit&& visit);

template <class List, class Visit>
bool visit_item(List& list, std::string_view pointer, Visit&& visit) {
  const PointerStep step = first_step(pointer);
  const std::size_t at = list_index(step.part, list.size());
  return at < list.size() && visit_here(list[at], step.rest, visit);
}

template <class Maybe, class Visit>
bool visit_maybe(Maybe& maybe, std::string_view rest, Visit&& visit) {
  return maybe && visit_here(*maybe, rest, visit);
}

template <class S, class Visit>
bool visit_schedule(S& schedule, std::string_view pointer, Visit&& visit) {
  const auto [part, rest] = first_step(pointer);
  if (part == "weave") return visit_maybe(schedule.weave, rest, visit);
  if (part == "use") return visit_maybe(schedule.use, rest, visit);
  if (part == "limits") return visit_maybe(schedule.limits, rest, visit);
  return false;
}

template <class S, class Visit>
bool visit_seam(S& seam, std::string_view pointer, Visit&& visit) {
  const auto [part, rest] = first_step(pointer);
  if (part == "groove") return visit_maybe(seam.groove, rest, visit);
  if (part == "intermittent") return visit_maybe(seam.intermittent, rest, visit);
  if (part == "tacks") return visit_maybe(seam.tacks, rest, visit);
  return false;
}

template <class W, class Visit>
bool visit_weldment(W& weldment, std::string_view pointer, Visit&& visit) {
  const auto [part, rest] = first_step(pointer);
  if (part == "seams") return visit_item(weldment.seams, rest, visit);
  if (part == "parts") return visit_item(weldment.parts, rest, visit);
  if (part == "features") return visit_item(weldment.features, rest, visit);
  if (part == "section") return visit_maybe(weldment.section, rest, visit);
  return false;
}

template <class C, class Visit>
bool visit_cell(C& cell, std::string_view pointer, Visit&& visit) {
  const auto [part, rest] = first_step(pointer);
  if (part == "robots") return visit_item(cell.robots, rest, visit);
  if (part == "orientations") return visit_item(cell.orientations, rest, visit);
  if (part == "zones") return visit_item(cell.zones, rest, visit);
  if (part == "torch_service") return visit_maybe(cell.torch_service, rest, visit);
  return false;
}

template <class Object, class Visit>
bool visit_here(Object& object, std::string_view rest, Visit&& visit) {
  if (rest.empty()) {
    visit(object);
    return true;
  }
  using Plain = std::remove_const_t<Object>;
  if constexpr (std::is_same_v<Plain, Schedule>) return visit_schedule(object, rest, visit);
  if constexpr (std::is_same_v<Plain, Seam>) return visit_seam(object, rest, visit);
  if constexpr (std::is_same_v<Plain, Weldment>) return visit_weldment(object, rest, visit);
  if constexpr (std::is_same_v<Plain, Cell>) return visit_cell(object, rest, visit);
  if constexpr (std::is_same_v<Plain, Robot>)
    return first_step(rest).part == "loaded" && visit_maybe(object.loaded, first_step(rest).rest, visit);
  if constexpr (std::is_same_v<Plain, Line>)
    return first_step(rest).part == "stages" && visit_item(object.stages, first_step(rest).rest, visit);
  if constexpr (std::is_same_v<Plain, Qualification>)
    return first_step(rest).part == "tested" && visit_maybe(object.tested, first_step(rest).rest, visit);
  return false;
}

}  // namespace detail

/// Calls visit(object) with the object at `pointer` (its own type, const where the plan is). False where
/// there is none.
template <class PlanType, class Visit>
bool visit_object(PlanType& plan, std::string_view pointer, Visit&& visit) {
  using namespace detail;
  if (pointer.empty()) {
    visit(plan);
    return true;
  }
  const auto [part, rest] = first_step(pointer);
  if (part == "base_metals") return visit_item(plan.base_metals, rest, visit);
  if (part == "wires") return visit_item(plan.wires, rest, visit);
  if (part == "gases") return visit_item(plan.gases, rest, visit);
  if (part == "power_sources") return visit_item(plan.power_sources, rest, visit);
  if (part == "schedules") return visit_item(plan.schedules, rest, visit);
  if (part == "qualifications") return visit_item(plan.qualifications, rest, visit);
  if (part == "weldments") return visit_item(plan.weldments, rest, visit);
  if (part == "instruments") return visit_item(plan.instruments, rest, visit);
  if (part == "accepted") return visit_item(plan.accepted, rest, visit);
  if (part == "cell") return visit_maybe(plan.cell, rest, visit);
  if (part == "line") return visit_maybe(plan.line, rest, visit);
  if (part == "costs") return visit_maybe(plan.costs, rest, visit);
  if (part == "measuring") return visit_maybe(plan.measuring, rest, visit);
  return false;
}

/// Pointers of what pages show.
std::string schedule_address(std::size_t schedule);
std::string seam_address(std::size_t weldment, std::size_t seam);
std::string weldment_address(std::size_t weldment);

/// The value of a field as a person types it; empty where absent or where there is no such object.
std::string field_text(const Plan& plan, std::string_view pointer, std::string_view key);

/// Sets a field from text; InputError where the text can't be used or there is no such object or field.
void set_field_text(Plan& plan, std::string_view pointer, std::string_view key, std::string_view text);

/// The field's description; nullptr where there is no such object or field.
const FieldInfo* field_info(const Plan& plan, std::string_view pointer, std::string_view key);

/// Whether the object at `pointer` has the nested object `key`, and making or dropping it.
bool has_nested(const Plan& plan, std::string_view pointer, std::string_view key);
void set_nested(Plan& plan, std::string_view pointer, std::string_view key, bool present);

/// A copy of the item at `pointer` (an item of a list) under another id, put at the list's end; its pointer.
std::string duplicate_item(Plan& plan, std::string_view pointer);
void remove_item(Plan& plan, std::string_view pointer);
/// Pointers and ids of the items of a list ("/wires", "/cell/robots").
std::vector<std::pair<std::string, std::string>> items_of(const Plan& plan, std::string_view list);

/// The ids that a reference field of the object at `pointer` may name.
std::vector<std::string> ids_of(const Plan& plan, IdList list, std::string_view pointer);

/// After the object at `pointer` got another id: references to a schedule or a seam follow it.
void follow_rename(Plan& plan, std::string_view pointer, const std::string& before, const std::string& after);

/// A seam's or schedule's place in the plan.
struct SeamPlace {
  std::size_t weldment = 0, seam = 0;
  bool operator==(const SeamPlace&) const = default;
};
std::optional<SeamPlace> find_seam(const Plan& plan, std::string_view weldment, std::string_view seam);
std::optional<std::size_t> find_schedule(const Plan& plan, std::string_view id);

/// Whether a place ("BD/S03/pass 1") is `whole` ("BD/S03") or lies in it.
bool lies_in(std::string_view place, std::string_view whole);
/// Pointer of the seam or schedule that a finding's place ("BD/S03/pass 1", "F5S", "schedule F5S") is about;
/// empty where it names none.
std::string address_of_finding(const Plan& plan, std::string_view where);
/// Pointer of the weldment that a finding's place ("BD", "BD/S03", "BD/R1") lies in; empty where in none.
std::string weldment_address_of(const Plan& plan, std::string_view where);

}  // namespace seamtakt::desk
