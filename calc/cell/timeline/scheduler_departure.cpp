// Scheduler: what may come next, and when it would leave.
#include <algorithm>

#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// Whether the step may come next, whatever the time.
bool Scheduler::allowed(const Step& step) const {
  const CellSeam& seam = model_->seams[step.seam];
  const SeamState& state = seams_[step.seam];
  if (step.reversed && !seam.reversible) return false;
  if (held_.seam >= 0 && (seam.partner != held_.seam || step.robot == held_.robot)) return false;
  if (state.passes_done > 0) return state.passes_done < seam.pass_count && state.robot == step.robot;
  if (!(seam.robot_mask >> step.robot & 1)) return false;
  for (int i = seam.first_after; i < seam.first_after + seam.after_count; ++i)
    if (!done(model_->after[i])) return false;
  if (held_.seam >= 0) return true;  // they are begun at once: neither is the first of the two
  if (seam.partner >= 0 && !may_begin_pair(step)) return false;
  return seam.pass_count > 0 && (balance_ == Balance::ignored || seam.group < 0 || alternates(seam));
}

/// Whether the seam that is begun together with the step's could be, too.
bool Scheduler::may_begin_pair(const Step& step) const {
  const CellSeam& partner = model_->seams[model_->seams[step.seam].partner];
  return (partner.robot_mask & ~(std::uint64_t{1} << step.robot)) != 0 &&
         follows_done(model_->seams[step.seam].partner);
}

/// Whether all seams that this one comes after are done.
bool Scheduler::follows_done(int seam) const {
  const CellSeam& at = model_->seams[seam];
  for (int i = at.first_after; i < at.first_after + at.after_count; ++i)
    if (!done(model_->after[i])) return false;
  return true;
}

/// Whether a seam of a balance group is on the other side than the one begun before it, or no seam of the
/// other side could be taken instead.
bool Scheduler::alternates(const CellSeam& seam) const {
  if (groups_[seam.group].side != seam.side) return true;
  const CellGroup& group = model_->groups[seam.group];
  const auto fresh = [&](int member) { return seams_[member].passes_done == 0; };
  for (int i = group.first_member; i < group.first_member + group.member_count; ++i) {
    const CellSeam& other = model_->seams[model_->members[i]];
    if (other.side == seam.side || !fresh(model_->members[i])) continue;
    const auto awaited = model_->awaited.begin() + other.first_awaited;
    if (std::none_of(awaited, awaited + other.awaited_count, fresh)) return false;
  }
  return true;
}

bool Scheduler::holds_zones(const CellSeam& seam, int robot) const {
  for (int i = seam.first_zone; i < seam.first_zone + seam.zone_count; ++i)
    if (zones_[model_->zones_of[i]].robot != robot) return false;
  return true;
}

Scheduler::Departure Scheduler::departure(const Step& step) const {
  Departure departure;
  if (!allowed(step)) return departure;
  const CellSeam& seam = model_->seams[step.seam];
  const RobotState& robot = robots_[step.robot];
  const CellPass& pass = model_->passes[seam.first_pass + seams_[step.seam].passes_done];
  departure.possible = true;
  departure.ready_s = robot.free_s;
  departure.changes_wire = !fits(robot.loaded, pass.need);
  if (departure.changes_wire) departure.ready_s += model_->robots[step.robot].wire_change_s;
  const CellRun& first_run = model_->runs[seam.first_run + (step.reversed ? seam.run_count - 1 : 0)];
  departure.serviced = needs_service(robot.arc_s, pass.arc_s * first_run.share);
  if (departure.serviced)
    departure.ready_s = serve_from_s(departure.ready_s) + service_s(step.robot, model_->place(robot.point));
  if (model_->has_wear) {
    departure.wear =
        wear_change(step.robot, seam.first_pass + seams_[step.seam].passes_done, first_run.share);
    departure.ready_s += departure.wear.time_s;
  }
  departure.stays = robot.seam == step.seam && holds_zones(seam, step.robot);
  departure.leave_s = departure.ready_s;
  if (departure.stays) return departure;

  double leave_s = std::max(departure.ready_s, turned_s_);
  for (int i = seam.first_after; i < seam.first_after + seam.after_count; ++i)
    leave_s = std::max(leave_s, seams_[model_->after[i]].end_s);
  for (int i = seam.first_zone; i < seam.first_zone + seam.zone_count; ++i) {
    const ZoneState& zone = zones_[model_->zones_of[i]];
    if (zone.robot != step.robot) leave_s = std::max(leave_s, zone.free_s);
  }
  departure.turns = seam.orientation >= 0 && orientation_ >= 0 && seam.orientation != orientation_;
  if (departure.turns) {
    const double turn_s = model_->turn_time_s(orientation_, seam.orientation);
    if (!model_->boxes.empty()) {
      std::vector<ZoneState> zones = zones_;
      departure.turn_start_s = turn_start_s(step, departure.ready_s, zones);
      leave_s = std::max(leave_s, departure.turn_start_s + turn_s);
      wait_for_boxes(step.robot, model_->home_point(step.robot),
                     model_->entry_point(step.seam, step.reversed), zones, leave_s);
    } else {
      double away_s = std::max(turned_s_, home_s(step.robot, departure.ready_s));
      for (int i = 0; i < model_->robot_count(); ++i)
        if (i != step.robot) away_s = std::max(away_s, home_s(i, robots_[i].free_s));
      departure.turn_start_s = away_s;
      leave_s = std::max(leave_s, away_s + turn_s);
    }
  } else if (!model_->boxes.empty()) {
    wait_for_boxes(step.robot, robot.point, model_->entry_point(step.seam, step.reversed), zones_, leave_s);
  }
  departure.leave_s = leave_s;
  return departure;
}

double Scheduler::departure_s(const Step& step) const {
  return departure(step).leave_s;
}

Scheduler::Preview Scheduler::preview(const Step& step) const {
  const Departure departure = this->departure(step);
  if (!departure.possible) return {};
  const int entry = model_->entry_point(step.seam, step.reversed);
  const int from = departure.turns ? model_->home_point(step.robot) : robots_[step.robot].point;
  double way_s = 0;
  if (!departure.stays)
    way_s = model_->air_s(step.robot, from, entry);
  else if (from != entry)
    way_s = model_->back_s[per_robot(step.seam, step.robot)];
  return {true, departure.turns, departure.changes_wire, departure.leave_s, departure.leave_s + way_s};
}

}  // namespace seamtakt
