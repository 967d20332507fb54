#include "plan/manual_time.hpp"

#include "plan/seam_geometry.hpp"

namespace seamtakt {

double hand_time_s(const Plan& plan, const ManualWork& work, const Seam& seam) {
  const double length_mm = welded_length_mm(seam);
  double arc_s = 0;
  for (const std::string& own : seam.schedules) {
    const std::string& id = seam.manual_schedule.empty() ? own : seam.manual_schedule;
    const Schedule* schedule = find_by_id(plan.schedules, id);
    if (schedule && schedule->travel_speed_mm_s > 0) arc_s += length_mm / schedule->travel_speed_mm_s;
  }
  return arc_s / work.arc_share + work.setup_s_per_seam;
}

double manual_stage_s(const Plan& plan, const Weldment& weldment) {
  if (weldment.manual_s) return *weldment.manual_s;
  if (!plan.cell || !plan.cell->manual) return 0;
  double time_s = 0;
  for (const Seam& seam : weldment.seams)
    if (seam.by == "manual") time_s += hand_time_s(plan, *plan.cell->manual, seam);
  return time_s;
}

}  // namespace seamtakt
