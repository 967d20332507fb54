// Scheduler: what its templates record, and the moves between runs. For scheduler.cpp alone.
#pragma once

#include "cell/timeline/heat_history.hpp"
#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

struct NoRecorder {
  static constexpr bool records = false;
  void add(const BareMove&) {}
};

struct MoveRecorder {
  static constexpr bool records = true;
  std::vector<BareMove>& moves;
  HeatHistory* heat = nullptr;
  void add(const BareMove& move) {
    if (heat && move.kind == MoveKind::arc && heat->covers(move.seam))
      heat->add(move.seam, move.pass, move.run, move.reversed, move.start_s, move.end_s);
    // Moves that take no time are left out, except for what is welded, wires and orientations.
    if (move.end_s > move.start_s || move.kind == MoveKind::arc || move.kind == MoveKind::orientation ||
        move.kind == MoveKind::wire_change || move.kind == MoveKind::tip_change ||
        move.kind == MoveKind::spool_change)
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

/// An air move, leg by leg where it isn't one straight line.
template <class Recorder>
void Scheduler::add_way(BareMove move, const AirWay& way, Recorder& recorder) const {
  const double end_s = move.end_s;
  for (int i = 0; i < way.count; ++i) {
    const AirLeg& leg = way.legs[static_cast<std::size_t>(i)];
    move.end_s = i + 1 < way.count ? move.start_s + leg.time_s : end_s;
    move.from = leg.from;
    move.to = leg.to;
    recorder.add(move);
    move.start_s = move.end_s;
  }
}

/// A torch service, with the way to its place and back. The ways belong to no seam: the robot isn't there
/// meanwhile.
template <class Recorder>
void Scheduler::serve(const BareMove& pattern, const AirPlace& place, double& at_s,
                      Recorder& recorder) const {
  const double end_s = at_s + service_s(pattern.robot, place);
  if constexpr (Recorder::records) {
    BareMove service = pattern;
    service.start_s = at_s;
    service.end_s = end_s;
    service.from = service.to = place.at;
    if (model_->service_point >= 0) {
      const Motion& motion = model_->motions[model_->robots[pattern.robot].motion];
      const AirPlace cleaner = model_->place(model_->service_point);
      const AirWay there = air_way(motion, place, cleaner), back = air_way(motion, cleaner, place);
      service.start_s = at_s + there.time_s;
      service.end_s = service.start_s + model_->service_s;
      service.from = service.to = cleaner.at;
      add_way({pattern.robot, -1, 0, -1, false, MoveKind::air, at_s, service.start_s}, there, recorder);
      recorder.add(service);
      add_way({pattern.robot, -1, 0, -1, false, MoveKind::air, service.end_s, end_s}, back, recorder);
    } else {
      recorder.add(service);
    }
  }
  at_s = end_s;
}

/// Changes of the tip and the spool, at the torch's position.
template <class Recorder>
void Scheduler::change_worn(const BareMove& pattern, const WearChange& wear, double& at_s,
                            Recorder& recorder) {
  const CellRobot& worn = model_->robots[pattern.robot];
  const auto change = [&](MoveKind kind, double duration_s, double& used) {
    if constexpr (Recorder::records) {
      BareMove move = pattern;
      move.kind = kind;
      move.start_s = at_s;
      move.end_s = at_s + duration_s;
      recorder.add(move);
    }
    at_s += duration_s;
    used = 0;
  };
  RobotState& robot = robots_[pattern.robot];
  if (wear.tip) change(MoveKind::tip_change, worn.tip_change_s, robot.tip_arc_s);
  if (wear.spool) change(MoveKind::spool_change, worn.spool_change_s, robot.spool_g);
}

template <class Recorder>
void Scheduler::drive_home(int index, Recorder& recorder) {
  RobotState& robot = robots_[index];
  const int home = model_->home_point(index);
  HomeWay way{robot.free_s, 0, {}};
  if (model_->boxes.empty())
    way.arrive_s = home_s(index, robot.free_s);
  else
    way = home_way(index, robot.free_s, zones_);
  if constexpr (Recorder::records) {
    const Point_mm& at = model_->points[robot.point];
    recorder.add({index, -1, 0, -1, false, MoveKind::wait, robot.free_s, way.leave_s, at, at, way.reason});
    if (robot.point != home)
      add_way({index, -1, 0, -1, false, MoveKind::air, way.leave_s, way.arrive_s},
              model_->air_way_between(index, robot.point, home), recorder);
  }
  robot.free_s = way.arrive_s;
  robot.point = home;
  robot.seam = -1;
}

}  // namespace seamtakt
