#include "records/passes/planned_pass.hpp"

#include <algorithm>

namespace seamtakt {

PlannedPasses::PlannedPasses(const Plan& plan) : plan_(plan), index_(plan) {
  for (const auto& weldment : plan.weldments)
    for (const auto& seam : weldment.seams) seams_[{weldment.id, seam.id}] = &seam;
}

std::string_view PlannedPasses::only_weldment() const {
  return plan_.weldments.size() == 1 ? std::string_view(plan_.weldments[0].id) : std::string_view();
}

const Seam* PlannedPasses::seam(std::string_view weldment, std::string_view seam) const {
  const auto at = seams_.find({weldment, seam});
  return at == seams_.end() ? nullptr : at->second;
}

std::optional<PlannedPass> PlannedPasses::find(std::string_view weldment, std::string_view seam_id,
                                               int pass) const {
  const Seam* found = seam(weldment, seam_id);
  if (found == nullptr) return std::nullopt;
  if (pass == 0 && found->schedules.size() == 1) pass = 1;
  if (pass < 1 || static_cast<std::size_t>(pass) > found->schedules.size()) return std::nullopt;
  const Schedule* schedule = index_.schedule(found->schedules[static_cast<std::size_t>(pass) - 1]);
  if (schedule == nullptr) return std::nullopt;
  return PlannedPass{index_.weldment(weldment), found, pass, schedule};
}

const Robot* PlannedPasses::robot(const Seam& seam, std::string_view logged) const {
  if (!logged.empty()) {
    if (const Robot* named = index_.robot(logged)) return named;
  }
  for (const auto& id : seam.robots)
    if (const Robot* first = index_.robot(id)) return first;
  return plan_.cell && !plan_.cell->robots.empty() ? &plan_.cell->robots[0] : nullptr;
}

const Seam* planned_seam(const Plan& plan, const PassRecord& record) {
  const Weldment* weldment = find_by_id(plan.weldments, record.weldment);
  return weldment != nullptr ? find_by_id(weldment->seams, record.seam) : nullptr;
}

double arc_start_s(const PlannedPass& planned, const Robot* robot) {
  return planned.schedule->arc_start_s.value_or(robot != nullptr ? robot->arc_start_s : 0);
}

double crater_fill_s(const PlannedPass& planned, const Robot* robot) {
  return planned.schedule->crater_fill_s.value_or(robot != nullptr ? robot->crater_fill_s : 0);
}

double default_limits_window_s(const Schedule& schedule) {
  constexpr double least_s = 1, weaves = 5;
  const double frequency_Hz = schedule.weave ? schedule.weave->frequency_Hz : 0;
  return frequency_Hz > 0 ? std::max(least_s, weaves / frequency_Hz) : least_s;
}

}  // namespace seamtakt
