#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

template <class Map, class List>
void fill(Map& map, const List& list) {
  map.reserve(list.size());
  for (const auto& item : list) map.emplace(item.id, &item);
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
  for (const Schedule& schedule : plan.schedules)
    parts_.push_back({wire(schedule.wire), gas(schedule.gas), power_source(schedule.power_source)});
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
