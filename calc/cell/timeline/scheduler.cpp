#include "cell/timeline/scheduler.hpp"

#include <algorithm>

#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// Arc times are sums: a run that ends on every_arc_s to within rounding doesn't pass it.
constexpr double service_tolerance_s = 1e-9;

struct NoRecorder {
  static constexpr bool records = false;
  void add(const BareMove&) {}
};

struct MoveRecorder {
  static constexpr bool records = true;
  std::vector<BareMove>& moves;
  void add(const BareMove& move) {
    // Moves that take no time are left out, except for what is welded, wires and orientations.
    if (move.end_s > move.start_s || move.kind == MoveKind::arc || move.kind == MoveKind::orientation ||
        move.kind == MoveKind::wire_change)
      moves.push_back(move);
  }
};

/// Keeps the arcs alone.
struct ArcRecorder {
  static constexpr bool records = true;
  const CellModel& model;
  std::vector<ArcTime>& arcs;
  void add(const BareMove& move) {
    if (move.kind == MoveKind::arc)
      arcs.push_back(
          {move.robot, model.seams[move.seam].first_pass + move.pass - 1, move.start_s, move.end_s});
  }
};

}  // namespace

Scheduler::Scheduler(const CellModel& model, Balance balance)
    : model_(&model),
      robots_(model.robots.size()),
      seams_(model.seams.size()),
      zones_(static_cast<std::size_t>(model.zone_count)),
      groups_(model.groups.size()),
      balance_(balance),
      steps_needed_(model.passes.size()) {
  restart();
}

void Scheduler::restart() {
  for (int i = 0; i < model_->robot_count(); ++i)
    robots_[i] = {0, 0, model_->home_point(i), -1, model_->robots[i].loaded};
  std::fill(seams_.begin(), seams_.end(), SeamState{});
  std::fill(zones_.begin(), zones_.end(), ZoneState{});
  std::fill(groups_.begin(), groups_.end(), GroupState{});
  orientation_ = -1;
  turned_s_ = 0;
  flow_s_ = 0;
}

/// Whether the step may come next, whatever the time.
bool Scheduler::allowed(const Step& step) const {
  const CellSeam& seam = model_->seams[step.seam];
  const SeamState& state = seams_[step.seam];
  if (step.reversed && !seam.reversible) return false;
  if (state.passes_done > 0) return state.passes_done < seam.pass_count && state.robot == step.robot;
  if (!(seam.robot_mask >> step.robot & 1)) return false;
  for (int i = seam.first_after; i < seam.first_after + seam.after_count; ++i)
    if (!done(model_->after[i])) return false;
  return seam.pass_count > 0 && (balance_ == Balance::ignored || seam.group < 0 || alternates(seam));
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

bool Scheduler::passes_service(double arc_s) const {
  return model_->service_every_arc_s > 0 && arc_s > model_->service_every_arc_s + service_tolerance_s;
}

/// Right after a service another one is of no use, however long the run.
bool Scheduler::needs_service(double arc_s, double run_arc_s) const {
  return arc_s > 0 && passes_service(arc_s + run_arc_s);
}

bool Scheduler::holds_zones(const CellSeam& seam, int robot) const {
  for (int i = seam.first_zone; i < seam.first_zone + seam.zone_count; ++i)
    if (zones_[model_->zones_of[i]].robot != robot) return false;
  return true;
}

/// When a robot that is free at `from_s` has driven home.
double Scheduler::home_s(int robot, double from_s) const {
  const int home = model_->home_point(robot);
  return robots_[robot].point == home ? from_s : from_s + model_->air_s(robot, robots_[robot].point, home);
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
  if (departure.serviced) departure.ready_s += model_->service_s;
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
    double away_s = std::max(turned_s_, home_s(step.robot, departure.ready_s));
    for (int i = 0; i < model_->robot_count(); ++i)
      if (i != step.robot) away_s = std::max(away_s, home_s(i, robots_[i].free_s));
    departure.turn_start_s = away_s;
    leave_s = std::max(leave_s, away_s + model_->orientation_change_s);
  }
  departure.leave_s = leave_s;
  return departure;
}

/// Wire change and torch service, at the torch's position.
template <class Recorder>
void Scheduler::prepare(const Step& step, const Departure& departure, Recorder& recorder) {
  RobotState& robot = robots_[step.robot];
  const SeamState& state = seams_[step.seam];
  const Point_mm& at = model_->points[robot.point];
  double at_s = robot.free_s;
  if (departure.changes_wire) {
    const double end_s = at_s + model_->robots[step.robot].wire_change_s;
    if constexpr (Recorder::records)
      recorder.add({step.robot, step.seam, state.passes_done + 1, -1, step.reversed, MoveKind::wire_change,
                    at_s, end_s, at, at});
    robot.loaded =
        changed(robot.loaded, model_->passes[model_->seams[step.seam].first_pass + state.passes_done].need);
    at_s = end_s;
  }
  if (departure.serviced) {
    if constexpr (Recorder::records)
      recorder.add({step.robot, step.seam, state.passes_done + 1, -1, step.reversed, MoveKind::service, at_s,
                    departure.ready_s, at, at});
    robot.arc_s = 0;
  }
  robot.free_s = departure.ready_s;
}

/// All robots home, then the positioner turns: a bar of the robot that needs it.
template <class Recorder>
void Scheduler::turn(const Step& step, const Departure& departure, Recorder& recorder) {
  WaitReason reason;
  if constexpr (Recorder::records) reason = reason_to_turn_later(step, departure);
  for (int i = 0; i < model_->robot_count(); ++i) {
    RobotState& robot = robots_[i];
    const int home = model_->home_point(i);
    const double home_at_s = home_s(i, robot.free_s);
    if constexpr (Recorder::records)
      recorder.add({i, -1, 0, -1, false, MoveKind::air, robot.free_s, home_at_s, model_->points[robot.point],
                    model_->points[home]});
    robot.free_s = home_at_s;
    robot.point = home;
    robot.seam = -1;
  }
  RobotState& robot = robots_[step.robot];
  const double end_s = departure.turn_start_s + model_->orientation_change_s;
  if constexpr (Recorder::records) {
    const Point_mm& at = model_->points[robot.point];
    recorder.add(
        {step.robot, -1, 0, -1, false, MoveKind::wait, robot.free_s, departure.turn_start_s, at, at, reason});
    recorder.add({step.robot, step.seam, seams_[step.seam].passes_done + 1, -1, step.reversed,
                  MoveKind::orientation, departure.turn_start_s, end_s, at, at});
  }
  robot.free_s = end_s;
  turned_s_ = end_s;
}

/// Wait, air move, sensing, cooling: when the first arc may be struck.
template <class Recorder>
double Scheduler::arrive_s(const Step& step, const Departure& departure, Recorder& recorder) {
  const CellSeam& seam = model_->seams[step.seam];
  const SeamState& state = seams_[step.seam];
  RobotState& robot = robots_[step.robot];
  const int entry = model_->entry_point(step.seam, step.reversed);
  const Point_mm &from = model_->points[robot.point], &to = model_->points[entry];
  if constexpr (Recorder::records)
    recorder.add({step.robot, -1, 0, -1, false, MoveKind::wait, robot.free_s, departure.leave_s, from, from,
                  reason_to_leave_later(step)});
  double at_s = departure.leave_s;
  const auto record = [&](MoveKind kind, double end_s, const Point_mm& begin,
                          WaitCause cause = WaitCause::none) {
    if constexpr (Recorder::records)
      recorder.add({step.robot,
                    step.seam,
                    state.passes_done + 1,
                    -1,
                    step.reversed,
                    kind,
                    at_s,
                    end_s,
                    begin,
                    to,
                    {cause, step.seam}});
    at_s = end_s;
  };
  if (!departure.stays)
    record(MoveKind::air, at_s + model_->air_s(step.robot, robot.point, entry), from);
  else if (robot.point != entry)
    record(MoveKind::air, at_s + model_->back_s[per_robot(step.seam, step.robot)], from);
  if (state.passes_done == 0)
    record(MoveKind::sense, at_s + seam.sense_points * model_->robots[step.robot].sense_point_s, to);
  else
    record(MoveKind::wait,
           std::max(at_s, state.end_s + model_->passes[seam.first_pass + state.passes_done].interpass_wait_s),
           to, WaitCause::cooling);
  if (balance_ == Balance::kept && state.passes_done == 0 && seam.group >= 0) {
    GroupState& group = groups_[seam.group];
    record(MoveKind::wait, std::max(at_s, group.begun_s), to, WaitCause::balance);
    group = {at_s, seam.side};
  }
  return at_s;
}

/// One run, and what is between it and the run before: when its post-flow has ended. `index` counts in the
/// order of welding.
template <class Recorder>
double Scheduler::run_s(const Step& step, int index, double at_s, Recorder& recorder) {
  const CellSeam& seam = model_->seams[step.seam];
  const int pass = seam.first_pass + seams_[step.seam].passes_done;
  const int run = seam.first_run + (step.reversed ? seam.run_count - 1 - index : index);
  const CellRun& drawn = model_->runs[run];
  const Point_mm &from = step.reversed ? drawn.end : drawn.begin,
                 &to = step.reversed ? drawn.begin : drawn.end;
  const auto record = [&](MoveKind kind, double duration_s, const Point_mm& begin, const Point_mm& end,
                          bool welds) {
    if constexpr (Recorder::records)
      recorder.add({step.robot, step.seam, pass - seam.first_pass + 1, welds ? run : -1, step.reversed, kind,
                    at_s, at_s + duration_s, begin, end});
    at_s += duration_s;
  };
  RobotState& robot = robots_[step.robot];
  const double arc_s = model_->passes[pass].arc_s * drawn.share;
  if (index > 0) {
    const CellRun& before = model_->runs[step.reversed ? run + 1 : run - 1];
    const Point_mm& stands = step.reversed ? before.begin : before.end;
    if (needs_service(robot.arc_s, arc_s)) {
      record(MoveKind::service, model_->service_s, stands, stands, false);
      robot.arc_s = 0;
    }
    // The move between two runs takes the same time both ways.
    const int drawn_later = step.reversed ? run + 1 : run;
    record(MoveKind::air, model_->inner_air_s[per_robot(drawn_later, step.robot)], stands, from, false);
  }
  record(MoveKind::start, model_->start_s[per_robot(pass, step.robot)], from, from, true);
  record(MoveKind::arc, arc_s, from, to, true);
  record(MoveKind::end, model_->end_s[per_robot(pass, step.robot)], to, to, true);
  robot.arc_s += arc_s;
  return at_s;
}

/// The runs of one pass: when the last one's post-flow has ended.
template <class Recorder>
double Scheduler::weld_s(const Step& step, double at_s, Recorder& recorder) {
  const CellSeam& seam = model_->seams[step.seam];
  const int pass = seam.first_pass + seams_[step.seam].passes_done;
  RobotState& robot = robots_[step.robot];
  const double arc_after_s = robot.arc_s + model_->passes[pass].arc_s;
  const bool serviced_inside = seam.run_count > 1 && passes_service(arc_after_s);
  const double end_s = at_s + model_->weld_s[per_robot(pass, step.robot)];
  if (Recorder::records || serviced_inside)
    for (int i = 0; i < seam.run_count; ++i) at_s = run_s(step, i, at_s, recorder);
  if (serviced_inside) return at_s;
  // The sums of the model, so that the times with and without moves are the same to the last bit.
  robot.arc_s = arc_after_s;
  return end_s;
}

template <class Recorder>
bool Scheduler::place(const Step& step, Recorder& recorder) {
  const Departure departure = this->departure(step);
  if (!departure.possible) return false;
  const CellSeam& seam = model_->seams[step.seam];
  prepare(step, departure, recorder);
  if (departure.turns) turn(step, departure, recorder);
  if (seam.orientation >= 0) orientation_ = seam.orientation;
  const double end_s = weld_s(step, arrive_s(step, departure, recorder), recorder);
  RobotState& robot = robots_[step.robot];
  robot.free_s = end_s;
  robot.point = model_->exit_point(step.seam, step.reversed);
  robot.seam = step.seam;
  SeamState& state = seams_[step.seam];
  state.end_s = end_s;
  state.robot = step.robot;
  ++state.passes_done;
  flow_s_ += end_s;
  for (int i = seam.first_zone; i < seam.first_zone + seam.zone_count; ++i)
    zones_[model_->zones_of[i]] = {end_s, step.robot};
  return true;
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

bool Scheduler::append(const Step& step) {
  NoRecorder recorder;
  return place(step, recorder);
}

template <class Recorder>
double Scheduler::finish_s(Recorder& recorder) {
  double last_s = 0;
  for (int i = 0; i < model_->robot_count(); ++i) {
    const RobotState& robot = robots_[i];
    const int home = model_->home_point(i);
    if (robot.point == home) continue;  // it has been home since its last seam, or never left
    const double end_s = home_s(i, robot.free_s);
    if constexpr (Recorder::records)
      recorder.add({i, -1, 0, -1, false, MoveKind::air, robot.free_s, end_s, model_->points[robot.point],
                    model_->points[home]});
    last_s = std::max(last_s, end_s);
  }
  return last_s;
}

double Scheduler::makespan_so_far_s() const {
  double last_s = 0;
  for (int i = 0; i < model_->robot_count(); ++i) last_s = std::max(last_s, home_s(i, robots_[i].free_s));
  return last_s;
}

template <class Recorder>
double Scheduler::lay_out_s(const Sequence& sequence, Recorder& recorder) {
  if (sequence.size() != steps_needed_) return impossible;
  restart();
  for (const Step& step : sequence)
    if (!place(step, recorder)) return impossible;
  return finish_s(recorder);
}

double Scheduler::makespan_s(const Sequence& sequence) {
  NoRecorder recorder;
  return lay_out_s(sequence, recorder);
}

double Scheduler::makespan_s(const Sequence& sequence, std::vector<BareMove>& moves) {
  moves.clear();
  MoveRecorder recorder{moves};
  const double makespan = lay_out_s(sequence, recorder);
  std::stable_sort(moves.begin(), moves.end(),
                   [](const BareMove& a, const BareMove& b) { return a.robot < b.robot; });
  return makespan;
}

double Scheduler::makespan_s(const Sequence& sequence, std::vector<ArcTime>& arcs) {
  arcs.clear();
  ArcRecorder recorder{*model_, arcs};
  return lay_out_s(sequence, recorder);
}

}  // namespace seamtakt
