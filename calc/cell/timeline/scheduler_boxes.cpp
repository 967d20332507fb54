// Scheduler: boxes in the way of air moves, what wears, and torches that keep their distance.
#include <algorithm>

#include "cell/timeline/scheduler.hpp"
#include "cell/travel/box_crossing.hpp"
#include "cell/travel/torch_distance.hpp"

namespace seamtakt {

bool Scheduler::leads_through(int robot, int from, int to, const CellBox& box) const {
  const AirWay way = model_->air_way_between(robot, from, to);
  for (int i = 0; i < way.count; ++i) {
    const AirLeg& leg = way.legs[static_cast<std::size_t>(i)];
    if (passes_through(leg.from, leg.to, box.low, box.high)) return true;
  }
  return false;
}

/// Leaves later where another robot holds a box that the way leads through.
void Scheduler::wait_for_boxes(int robot, int from, int to, const std::vector<ZoneState>& zones,
                               double& leave_s, WaitReason* reason) const {
  for (const CellBox& box : model_->boxes) {
    const ZoneState& zone = zones[static_cast<std::size_t>(box.zone)];
    if (zone.robot == robot || zone.free_s <= leave_s || !leads_through(robot, from, to, box)) continue;
    leave_s = zone.free_s;
    if (reason) *reason = {WaitCause::zone, -1, box.zone, zone.robot};
  }
}

void Scheduler::take_boxes(int robot, int from, int to, double until_s, std::vector<ZoneState>& zones) const {
  for (const CellBox& box : model_->boxes)
    if (leads_through(robot, from, to, box)) {
      ZoneState& zone = zones[static_cast<std::size_t>(box.zone)];
      zone = {zone.robot == robot ? std::max(zone.free_s, until_s) : until_s, robot};
    }
}

Scheduler::HomeWay Scheduler::home_way(int robot, double from_s, std::vector<ZoneState>& zones) const {
  const int from = robots_[robot].point, home = model_->home_point(robot);
  HomeWay way{from_s, from_s, {}};
  if (from == home) return way;
  wait_for_boxes(robot, from, home, zones, way.leave_s, &way.reason);
  way.arrive_s = way.leave_s + model_->air_s(robot, from, home);
  take_boxes(robot, from, home, way.arrive_s, zones);
  return way;
}

/// When all robots are home, each after those before it in the plan's list where a box is in both ways.
double Scheduler::turn_start_s(const Step& step, double ready_s, std::vector<ZoneState>& zones) const {
  double away_s = turned_s_;
  for (int i = 0; i < model_->robot_count(); ++i)
    away_s = std::max(away_s, home_way(i, i == step.robot ? ready_s : robots_[i].free_s, zones).arrive_s);
  return away_s;
}

/// With the way to its place and back, where it has one.
double Scheduler::service_s(int robot, const AirPlace& place) const {
  if (model_->service_point < 0) return model_->service_s;
  const Motion& motion = model_->motions[model_->robots[robot].motion];
  const AirPlace cleaner = model_->place(model_->service_point);
  return air_way(motion, place, cleaner).time_s + model_->service_s + air_way(motion, cleaner, place).time_s;
}

/// What a run of the pass, with this share of its arc, would wear out. What was just changed isn't changed
/// again, however long the run.
Scheduler::WearChange Scheduler::wear_change(int robot, int pass, double share) const {
  constexpr double tolerance = 1e-9;  // sums that end on the limit to within rounding
  const CellRobot& worn = model_->robots[robot];
  const RobotState& state = robots_[robot];
  const double arc_s = model_->passes[pass].arc_s * share, wire_g = model_->passes[pass].wire_g * share;
  const auto passes = [&](double used, double use, double limit) {
    return limit > 0 && used > 0 && used + use > limit * (1 + tolerance);
  };
  WearChange change;
  change.tip = passes(state.tip_arc_s, arc_s, worn.tip_every_arc_s);
  change.spool = passes(state.spool_g, wire_g, worn.spool_g);
  change.time_s = (change.tip ? worn.tip_change_s : 0) + (change.spool ? worn.spool_change_s : 0);
  return change;
}

/// Whether a tip or spool is used up within the pass.
bool Scheduler::wears_out(int robot, int pass) const {
  const CellRobot& worn = model_->robots[robot];
  const RobotState& state = robots_[robot];
  return (worn.tip_every_arc_s > 0 && state.tip_arc_s + model_->passes[pass].arc_s > worn.tip_every_arc_s) ||
         (worn.spool_g > 0 && state.spool_g + model_->passes[pass].wire_g > worn.spool_g);
}

namespace {

/// A piece of a run as it is welded: `arc_s` from `start_s`.
TorchPiece torch_of(const CellPiece& piece, bool reversed, double start_s, double arc_s) {
  if (reversed)
    return {piece.to, piece.from, start_s + (1 - piece.to_share) * arc_s,
            start_s + (1 - piece.from_share) * arc_s};
  return {piece.from, piece.to, start_s + piece.from_share * arc_s, start_s + piece.to_share * arc_s};
}

}  // namespace

/// Delays the step's pass once for each arc of another seam that it would come too near to; whether it did.
/// arc_start_s_ holds the pass's arcs from its own beginning.
bool Scheduler::push_apart(const Step& step, int other, double& at_s) const {
  const CellSeam &own = model_->seams[step.seam], &seam = model_->seams[other];
  const int own_pass = seams_[step.seam].passes_done;
  const double own_arc_s = model_->passes[own.first_pass + own_pass].arc_s;
  constexpr double slack_s = 1e-9;
  const double distance_mm = model_->torch_distance_mm * (1 - 1e-12);
  bool pushed = false;
  if (own_arc_s <= 0) return pushed;
  for (int pass = 0; pass < seams_[other].passes_done; ++pass)
    for (int run = 0; run < seam.run_count; ++run) {
      const double start_s = arc_start_s_[seam.first_arc + pass * seam.run_count + run];
      const CellRun& at = model_->runs[seam.first_run + run];
      const double arc_s = model_->passes[seam.first_pass + pass].arc_s * at.share;
      if (start_s + arc_s <= at_s || arc_s <= 0) continue;
      for (int own_run = 0; own_run < own.run_count; ++own_run) {
        const CellRun& from = model_->runs[own.first_run + own_run];
        const double own_start_s = arc_start_s_[own.first_arc + own_pass * own.run_count + own_run];
        for (int a = from.first_piece; a < from.first_piece + from.piece_count; ++a)
          for (int b = at.first_piece; b < at.first_piece + at.piece_count; ++b) {
            const auto delays = delays_too_near(
                torch_of(model_->pieces[a], step.reversed, own_start_s, own_arc_s * from.share),
                torch_of(model_->pieces[b], pass_reversed_[seam.first_pass + pass] != 0, start_s, arc_s),
                distance_mm);
            if (!delays || at_s <= delays->from_s + slack_s || at_s >= delays->to_s - slack_s) continue;
            at_s = delays->to_s;
            pushed = true;
          }
      }
    }
  return pushed;
}

/// When the step's pass may begin, at `at_s` or later, so that none of its arcs comes too near to one that is
/// known. Each push ends one range of delays for good, so that this ends.
double Scheduler::apart_s(const Step& step, double at_s, WaitReason& reason) const {
  const CellSeam& seam = model_->seams[step.seam];
  for (bool pushed = true; pushed;) {
    pushed = false;
    for (int i = seam.first_near; i < seam.first_near + seam.near_count; ++i) {
      const int other = model_->near_seams[i];
      if (seams_[other].passes_done == 0 || seams_[other].robot == step.robot) continue;
      if (!push_apart(step, other, at_s)) continue;
      reason = {WaitCause::apart, other, -1, seams_[other].robot};
      pushed = true;
    }
  }
  return at_s;
}

}  // namespace seamtakt
