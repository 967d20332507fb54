// Scheduler: why a robot waits.
#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// Before the robots drive home: which of them keeps the positioner from turning.
WaitReason Scheduler::reason_to_turn_later(const Step& step, const Departure& departure) const {
  WaitReason reason{WaitCause::positioner};
  double latest_s = 0;
  for (int i = 0; i < model_->robot_count(); ++i) {
    const double home_at_s = home_s(i, robots_[i].free_s);
    if (i == step.robot || home_at_s < departure.turn_start_s || home_at_s <= latest_s) continue;
    latest_s = home_at_s;
    reason = {WaitCause::others, -1, -1, i};
  }
  return reason;
}

/// The last of what the step has to wait for at its robot's place.
WaitReason Scheduler::reason_to_leave_later(const Step& step) const {
  const CellSeam& seam = model_->seams[step.seam];
  WaitReason reason{WaitCause::positioner};
  double latest_s = turned_s_;
  for (int i = seam.first_after; i < seam.first_after + seam.after_count; ++i) {
    const int before = model_->after[i];
    if (seams_[before].end_s <= latest_s) continue;
    latest_s = seams_[before].end_s;
    reason = {WaitCause::after, before, -1, seams_[before].robot};
  }
  for (int i = seam.first_zone; i < seam.first_zone + seam.zone_count; ++i) {
    const ZoneState& zone = zones_[model_->zones_of[i]];
    if (zone.robot == step.robot || zone.free_s <= latest_s) continue;
    latest_s = zone.free_s;
    reason = {WaitCause::zone, -1, model_->zones_of[i], zone.robot};
  }
  if (!model_->boxes.empty())
    wait_for_boxes(step.robot, robots_[step.robot].point, model_->entry_point(step.seam, step.reversed),
                   zones_, latest_s, &reason);
  return reason;
}

}  // namespace seamtakt
