#include "cell/timeline/scheduler.hpp"

#include <algorithm>

#include "cell/timeline/scheduler_moves.hpp"

namespace seamtakt {

Scheduler::Scheduler(const CellModel& model, Balance balance)
    : model_(&model),
      robots_(model.robots.size()),
      seams_(model.seams.size()),
      zones_(static_cast<std::size_t>(model.zone_count)),
      groups_(model.groups.size()),
      balance_(balance),
      arc_start_s_(static_cast<std::size_t>(model.arc_count)),
      pass_reversed_(model.torch_distance_mm > 0 ? model.passes.size() : 0),
      steps_needed_(model.passes.size()) {
  restart();
}

void Scheduler::restart() {
  for (int i = 0; i < model_->robot_count(); ++i)
    robots_[i] = {0, 0, model_->home_point(i), -1, model_->robots[i].loaded};
  std::fill(seams_.begin(), seams_.end(), SeamState{});
  std::fill(zones_.begin(), zones_.end(), ZoneState{});
  std::fill(groups_.begin(), groups_.end(), GroupState{});
  orientation_ = model_->load_orientation;
  held_ = {};
  turned_s_ = 0;
  flow_s_ = 0;
}

/// Wire change, torch service, tip and spool, at the torch's position.
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
  const BareMove pattern{
      step.robot, step.seam, state.passes_done + 1, -1, step.reversed, MoveKind::service, at_s, at_s, at, at};
  if (departure.serviced) {
    if constexpr (Recorder::records) {
      const double from_s = serve_from_s(at_s);
      recorder.add(
          {step.robot, -1, 0, -1, false, MoveKind::wait, at_s, from_s, at, at, {WaitCause::positioner}});
      at_s = from_s;
      serve(pattern, model_->place(robot.point), at_s, recorder);
    }
    robot.arc_s = 0;
  }
  if (model_->has_wear) change_worn(pattern, departure.wear, at_s, recorder);
  robot.free_s = departure.ready_s;
}

/// All robots home, then the positioner turns: a bar of the robot that needs it.
template <class Recorder>
void Scheduler::turn(const Step& step, const Departure& departure, Recorder& recorder) {
  WaitReason reason;
  if constexpr (Recorder::records) reason = reason_to_turn_later(step, departure);
  for (int i = 0; i < model_->robot_count(); ++i) drive_home(i, recorder);
  RobotState& robot = robots_[step.robot];
  const double end_s =
      departure.turn_start_s + model_->turn_time_s(orientation_, model_->seams[step.seam].orientation);
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
  const auto record_way = [&](double end_s, const auto& way) {
    if constexpr (Recorder::records)
      add_way({step.robot, step.seam, state.passes_done + 1, -1, step.reversed, MoveKind::air, at_s, end_s},
              way(), recorder);
    at_s = end_s;
  };
  if (!departure.stays) {
    record_way(at_s + model_->air_s(step.robot, robot.point, entry),
               [&] { return model_->air_way_between(step.robot, robot.point, entry); });
    if (!model_->boxes.empty()) take_boxes(step.robot, robot.point, entry, at_s, zones_);
  } else if (robot.point != entry) {
    record_way(at_s + model_->back_s[per_robot(step.seam, step.robot)], [&] {
      return air_way_within_seam(model_->motions[model_->robots[step.robot].motion], from, to);
    });
  }
  if (state.passes_done == 0)
    record(MoveKind::sense, at_s + seam.sense_points * model_->robots[step.robot].sense_point_s, to);
  if (Recorder::records && heat_ && heat_->covers(step.seam))
    record(MoveKind::wait, heat_->cooled_s(step.seam, state.passes_done + 1, step.reversed, at_s), to,
           WaitCause::cooling);
  else if (state.passes_done > 0)
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
  if (index == 0 && model_->passes[pass].tracked)
    record(MoveKind::sense, model_->robots[step.robot].tracking_s, from, from, false);
  if (index > 0) {
    const CellRun& before = model_->runs[step.reversed ? run + 1 : run - 1];
    const Point_mm& stands = step.reversed ? before.begin : before.end;
    const BareMove pattern{
        step.robot, step.seam, pass - seam.first_pass + 1, -1, step.reversed, MoveKind::service, at_s, at_s,
        stands,     stands};
    if (needs_service(robot.arc_s, arc_s)) {
      serve(pattern, {stands, true}, at_s, recorder);
      robot.arc_s = 0;
    }
    if (model_->has_wear) change_worn(pattern, wear_change(step.robot, pass, drawn.share), at_s, recorder);
    // The move between two runs takes the same time both ways.
    const int drawn_later = step.reversed ? run + 1 : run;
    const double air_end_s = at_s + model_->inner_air_s[per_robot(drawn_later, step.robot)];
    if constexpr (Recorder::records)
      add_way({step.robot, step.seam, pass - seam.first_pass + 1, -1, step.reversed, MoveKind::air, at_s,
               air_end_s},
              air_way_within_seam(model_->motions[model_->robots[step.robot].motion], stands, from),
              recorder);
    at_s = air_end_s;
  }
  record(MoveKind::start, model_->start_s[per_robot(pass, step.robot)], from, from, true);
  if (model_->torch_distance_mm > 0)
    arc_start_s_[seam.first_arc + (pass - seam.first_pass) * seam.run_count + run - seam.first_run] = at_s;
  record(MoveKind::arc, arc_s, from, to, true);
  record(MoveKind::end, model_->end_s[per_robot(pass, step.robot)], to, to, true);
  robot.arc_s += arc_s;
  if (model_->has_wear) {
    robot.tip_arc_s += arc_s;
    robot.spool_g += model_->passes[pass].wire_g * drawn.share;
  }
  return at_s;
}

/// The runs of one pass: when the last one's post-flow has ended.
template <class Recorder>
double Scheduler::weld_s(const Step& step, double at_s, Recorder& recorder) {
  const CellSeam& seam = model_->seams[step.seam];
  const int pass = seam.first_pass + seams_[step.seam].passes_done;
  RobotState& robot = robots_[step.robot];
  const double arc_after_s = robot.arc_s + model_->passes[pass].arc_s;
  const double tip_after_s = robot.tip_arc_s + model_->passes[pass].arc_s;
  const double spool_after_g = robot.spool_g + model_->passes[pass].wire_g;
  bool stops_inside = seam.run_count > 1 && passes_service(arc_after_s);
  if (model_->has_wear && seam.run_count > 1) stops_inside = stops_inside || wears_out(step.robot, pass);
  const double end_s = at_s + model_->weld_s[per_robot(pass, step.robot)];
  if (Recorder::records || stops_inside || model_->torch_distance_mm > 0)
    for (int i = 0; i < seam.run_count; ++i) at_s = run_s(step, i, at_s, recorder);
  if (stops_inside) return at_s;
  // The sums of the model, so that the times with and without moves are the same to the last bit.
  robot.arc_s = arc_after_s;
  robot.tip_arc_s = tip_after_s;
  robot.spool_g = spool_after_g;
  return end_s;
}

/// Writes when the arcs of the step's pass would burn, counted from its own beginning.
void Scheduler::time_arcs(const Step& step) {
  NoRecorder recorder;
  const RobotState state = robots_[step.robot];
  weld_s(step, 0, recorder);
  robots_[step.robot] = state;
}

/// Welds a pass that begins at `at_s`, and keeps what it takes.
template <class Recorder>
void Scheduler::weld(const Step& step, double at_s, Recorder& recorder) {
  const CellSeam& seam = model_->seams[step.seam];
  const double end_s = weld_s(step, at_s, recorder);
  RobotState& robot = robots_[step.robot];
  robot.free_s = end_s;
  robot.point = model_->exit_point(step.seam, step.reversed);
  robot.seam = step.seam;
  SeamState& state = seams_[step.seam];
  if (model_->torch_distance_mm > 0) pass_reversed_[seam.first_pass + state.passes_done] = step.reversed;
  state.end_s = end_s;
  state.robot = step.robot;
  ++state.passes_done;
  flow_s_ += end_s;
  for (int i = seam.first_zone; i < seam.first_zone + seam.zone_count; ++i)
    zones_[model_->zones_of[i]] = {end_s, step.robot};
}

/// Both passes of a pair begin when both robots are there and neither comes too near to another torch.
template <class Recorder>
void Scheduler::begin_pair(const Step& step, double arrive_s, Recorder& recorder) {
  const Step first{held_.seam, static_cast<std::int16_t>(held_.robot), held_.reversed};
  const double both_s = std::max(held_.arrive_s, arrive_s);
  double begin_s = both_s;
  WaitReason reason;
  if (model_->torch_distance_mm > 0) {
    time_arcs(first);
    time_arcs(step);
    for (double before_s = -1; before_s != begin_s;) {
      before_s = begin_s;
      begin_s = apart_s(step, apart_s(first, begin_s, reason), reason);
    }
  }
  const auto wait = [&](const Step& of, double from_s, int other) {
    if constexpr (Recorder::records) {
      const Point_mm& at = model_->points[model_->entry_point(of.seam, of.reversed)];
      BareMove move{of.robot,
                    of.seam,
                    1,
                    -1,
                    of.reversed,
                    MoveKind::wait,
                    from_s,
                    both_s,
                    at,
                    at,
                    {WaitCause::together, other, -1, -1}};
      recorder.add(move);
      move.start_s = both_s;
      move.end_s = begin_s;
      move.reason = reason;
      recorder.add(move);
    }
  };
  wait(first, held_.arrive_s, step.seam);
  wait(step, arrive_s, first.seam);
  for (const int seam : {first.seam, step.seam})
    if (const int group = model_->seams[seam].group; group >= 0) groups_[group].begun_s = begin_s;
  held_ = {};
  weld(first, begin_s, recorder);
  weld(step, begin_s, recorder);
}

template <class Recorder>
bool Scheduler::place(const Step& step, Recorder& recorder) {
  const Departure departure = this->departure(step);
  if (!departure.possible) return false;
  const CellSeam& seam = model_->seams[step.seam];
  prepare(step, departure, recorder);
  if (departure.turns) turn(step, departure, recorder);
  if (seam.orientation >= 0) orientation_ = seam.orientation;
  double at_s = arrive_s(step, departure, recorder);
  if (held_.seam >= 0) {
    begin_pair(step, at_s, recorder);
    return true;
  }
  if (seam.partner >= 0 && seams_[step.seam].passes_done == 0) {
    held_ = {step.seam, step.robot, step.reversed, at_s};
    return true;
  }
  if (model_->torch_distance_mm > 0) {
    time_arcs(step);
    WaitReason reason;
    const double begin_s = apart_s(step, at_s, reason);
    if constexpr (Recorder::records) {
      const Point_mm& at = model_->points[model_->entry_point(step.seam, step.reversed)];
      recorder.add({step.robot, step.seam, seams_[step.seam].passes_done + 1, -1, step.reversed,
                    MoveKind::wait, at_s, begin_s, at, at, reason});
    }
    at_s = begin_s;
    if (balance_ == Balance::kept && seams_[step.seam].passes_done == 0 && seam.group >= 0)
      groups_[seam.group].begun_s = begin_s;
  }
  weld(step, at_s, recorder);
  return true;
}

bool Scheduler::append(const Step& step) {
  NoRecorder recorder;
  return place(step, recorder);
}

/// All robots home, and the positioner back: a bar of the robot that comes home last.
template <class Recorder>
double Scheduler::finish_s(Recorder& recorder) {
  double last_s = 0;
  int last = 0;
  for (int i = 0; i < model_->robot_count(); ++i) {
    const RobotState& robot = robots_[i];
    if (robot.point == model_->home_point(i))
      continue;  // it has been home since its last seam, or never left
    drive_home(i, recorder);
    if (robot.free_s > last_s) last = i;
    last_s = std::max(last_s, robot.free_s);
  }
  if (model_->load_orientation < 0 || orientation_ == model_->load_orientation) return last_s;
  const double end_s = last_s + model_->turn_time_s(orientation_, model_->load_orientation);
  if constexpr (Recorder::records) {
    const Point_mm& at = model_->points[model_->home_point(last)];
    recorder.add({last, -1, 0, -1, false, MoveKind::orientation, last_s, end_s, at, at});
  }
  return end_s;
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
  return held_.seam >= 0 ? impossible : finish_s(recorder);
}

double Scheduler::makespan_s(const Sequence& sequence) {
  NoRecorder recorder;
  return lay_out_s(sequence, recorder);
}

double Scheduler::makespan_s(const Sequence& sequence, std::vector<BareMove>& moves) {
  moves.clear();
  if (heat_) heat_->clear();
  MoveRecorder recorder{moves, heat_};
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
