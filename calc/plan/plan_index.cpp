#include "plan/plan_index.hpp"

#include "plan/qualification_basis.hpp"

namespace seamtakt {

namespace {

template <class Map, class List>
void fill(Map& map, const List& list) {
  map.reserve(list.size());
  for (const auto& item : list) map.emplace(item.id, &item);
}

QualifiedTest ranges_of(const TestedWeld& tested, const char* edition) {
  QualifiedTest test;
  test.edition = edition;
  test.joint = tested.throat_mm || tested.joint == "fillet" ? "fillet" : "butt";
  test.runs = tested.runs == "single" ? "single" : "multi";
  test.impact_tested = tested.impact_tested.value_or(false);
  test.hardness_tested = tested.hardness_tested.value_or(false);
  return test;
}

/// Sets the test of a qualification whose ranges or essential variables are judged.
void add_test(const Qualification* qualification, PlanIndex::ScheduleParts& parts) {
  if (!qualification || !qualification->tested) return;
  const QualificationRoute route = qualification_route(qualification->basis);
  if (route == QualificationRoute::judged) {
    parts.iso_test = &*qualification->tested;
    parts.iso_ranges = ranges_of(*parts.iso_test, iso_15614_1_edition(qualification->basis));
  }
  if (route == QualificationRoute::d1_1) parts.d1_1_test = &*qualification->tested;
}

}  // namespace

PlanIndex::PlanIndex(const Plan& plan) : first_schedule_(plan.schedules.data()) {
  fill(base_metals_, plan.base_metals);
  fill(wires_, plan.wires);
  fill(gases_, plan.gases);
  fill(power_sources_, plan.power_sources);
  fill(schedules_, plan.schedules);
  fill(qualifications_, plan.qualifications);
  fill(weldments_, plan.weldments);
  if (plan.cell) fill(robots_, plan.cell->robots);
  for (const Schedule& schedule : plan.schedules) {
    parts_.push_back({.wire = wire(schedule.wire),
                      .gas = gas(schedule.gas),
                      .power_source = power_source(schedule.power_source)});
    add_test(qualification(schedule.qualification), parts_.back());
  }
}

std::string seam_place(std::string_view weldment, std::string_view seam) {
  std::string place(weldment);
  place += '/';
  place += seam;
  return place;
}

std::string pass_place(std::string_view weldment, std::string_view seam, int pass) {
  return seam_place(weldment, seam) + "/pass " + std::to_string(pass);
}

}  // namespace seamtakt
