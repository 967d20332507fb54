#include <algorithm>
#include <cmath>
#include <sstream>

#include "timeline_check.hpp"

namespace seamtakt::test {

namespace {

/// Where a torch is at a time of its move, at constant speed along its points.
Point_mm torch_at(const Move& move, double time_s) {
  double length_mm = 0;
  const auto way_mm = [&](std::size_t i) {
    return std::hypot(move.points[i][0] - move.points[i - 1][0], move.points[i][1] - move.points[i - 1][1],
                      move.points[i][2] - move.points[i - 1][2]);
  };
  for (std::size_t i = 1; i < move.points.size(); ++i) length_mm += way_mm(i);
  double left_mm = length_mm * (time_s - move.start_s) / (move.end_s - move.start_s);
  for (std::size_t i = 1; i < move.points.size(); ++i) {
    const double piece_mm = way_mm(i);
    if (left_mm > piece_mm && i + 1 < move.points.size()) {
      left_mm -= piece_mm;
      continue;
    }
    const double share = piece_mm > 0 ? left_mm / piece_mm : 0;
    Point_mm at;
    for (std::size_t axis = 0; axis < 3; ++axis)
      at[axis] = move.points[i - 1][axis] + share * (move.points[i][axis] - move.points[i - 1][axis]);
    return at;
  }
  return move.points.front();
}

class SharedChecker {
 public:
  SharedChecker(const Plan& plan, const Weldment& weldment, const CycleResult& cycle)
      : plan_(plan), weldment_(weldment), cycle_(cycle) {}

  std::vector<std::string> check() {
    check_torches();
    check_pairs();
    for (const Zone& zone : plan_.cell->zones)
      if (zone.box_mm.size() == 2) check_box(zone);
    for (const Robot& robot : plan_.cell->robots)
      if (robot.tip_change) check_tips(robot);
    return std::move(broken_);
  }

 private:
  template <class... Parts>
  void say(const Parts&... parts) {
    std::ostringstream text;
    (text << ... << parts);
    broken_.push_back(text.str());
  }

  bool is_pair(const std::string& a, const std::string& b) const {
    return find_by_id(weldment_.seams, a)->with == b || find_by_id(weldment_.seams, b)->with == a;
  }

  /// Sampled, so that nothing of the scheduler's own sums is used.
  void check_torches() {
    if (!plan_.cell->min_torch_distance_mm) return;
    std::vector<const Move*> arcs;
    for (const Move& move : cycle_.moves)
      if (move.kind == MoveKind::arc && move.end_s > move.start_s) arcs.push_back(&move);
    for (const Move* a : arcs)
      for (const Move* b : arcs) {
        if (a->robot >= b->robot || is_pair(a->seam, b->seam)) continue;
        const double begin_s = std::max(a->start_s, b->start_s), end_s = std::min(a->end_s, b->end_s);
        // An arc that begins as another one ends isn't at once with it, whatever the rounding.
        for (int i = 0; begin_s + slack_s < end_s && i <= 100; ++i) {
          const double time_s = begin_s + (end_s - begin_s) * i / 100;
          const Point_mm x = torch_at(*a, time_s), y = torch_at(*b, time_s);
          const double apart_mm = std::hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);
          if (apart_mm >= *plan_.cell->min_torch_distance_mm - 1e-3) continue;
          say(a->robot, " at ", a->seam, " and ", b->robot, " at ", b->seam, " are ", apart_mm, " mm apart");
          break;
        }
      }
  }

  /// When a seam's first pass begins, and which robot welds it.
  std::pair<double, std::string> begun(const std::string& seam) const {
    std::pair<double, std::string> first{INFINITY, ""};
    for (const Move& move : cycle_.moves)
      if (move.seam == seam && move.pass == 1 && (move.kind == MoveKind::start || move.kind == MoveKind::arc))
        first = std::min(first, {move.start_s, move.robot});
    return first;
  }

  /// Arc starts may differ by the times to start an arc, where those are 0, and by tracking.
  void check_pairs() {
    for (const Finding& finding : cycle_.findings) {
      if (finding.rule != "cycle.with") continue;
      const Seam& seam = *find_by_id(weldment_.seams, finding.where.substr(weldment_.id.size() + 1));
      const auto a = begun(seam.id), b = begun(seam.with);
      if (a.second == b.second) say(seam.id, " and ", seam.with, " are both welded by ", a.second);
      if (std::abs(a.first - b.first) > slack_s)
        say(seam.id, " begins at ", a.first, " s, ", seam.with, " at ", b.first);
    }
  }

  static bool is_inside(const Point_mm& at, const std::vector<Point_mm>& box) {
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (at[axis] <= std::min(box[0][axis], box[1][axis]) + 1e-3 ||
          at[axis] >= std::max(box[0][axis], box[1][axis]) - 1e-3)
        return false;
    return true;
  }

  /// No two robots' torches are inside the box at once, be it on an arc or on an air move.
  void check_box(const Zone& zone) {
    struct Stay {
      std::string robot;
      double start_s, end_s;
    };
    std::vector<Stay> stays;
    for (const Move& move : cycle_.moves) {
      const bool goes = move.kind == MoveKind::arc || move.kind == MoveKind::air;
      if (!goes || move.points.size() < 2 || move.end_s <= move.start_s) continue;
      constexpr int samples = 400;
      double first_s = INFINITY, last_s = -INFINITY;
      for (int i = 0; i <= samples; ++i) {
        const double time_s = move.start_s + (move.end_s - move.start_s) * i / samples;
        if (!is_inside(torch_at(move, time_s), zone.box_mm)) continue;
        first_s = std::min(first_s, time_s);
        last_s = std::max(last_s, time_s);
      }
      if (first_s < last_s) stays.push_back({move.robot, first_s, last_s});
    }
    for (const Stay& a : stays)
      for (const Stay& b : stays)
        if (a.robot < b.robot && a.start_s < b.end_s - slack_s && b.start_s < a.end_s - slack_s)
          say(a.robot, " and ", b.robot, " are in the box of ", zone.id, " at once, at ", a.start_s, " and ",
              b.start_s, " s");
  }

  void check_tips(const Robot& robot) {
    double since_s = 0;
    for (const Move& move : cycle_.moves) {
      if (move.robot != robot.id) continue;
      const double duration_s = move.end_s - move.start_s;
      if (move.kind == MoveKind::tip_change) {
        if (std::abs(duration_s - robot.tip_change->time_s) > slack_s)
          say(robot.id, ": a tip change of ", duration_s, " s");
        since_s = 0;
      }
      if (move.kind != MoveKind::arc) continue;
      if (since_s > 0 && since_s + duration_s > robot.tip_change->every_arc_s + slack_s)
        say(robot.id, ": ", since_s + duration_s, " s of arc with one tip");
      since_s += duration_s;
    }
  }

  const Plan& plan_;
  const Weldment& weldment_;
  const CycleResult& cycle_;
  std::vector<std::string> broken_;
};

}  // namespace

double turn_s(const Cell& cell, const std::string& from, const std::string& to) {
  if (!cell.positioner) return cell.orientation_change_s;
  for (const seamtakt::Turn& turn : cell.positioner->turns)
    if (turn.from == from && turn.to == to) return turn.time_s;
  for (const seamtakt::Turn& turn : cell.positioner->turns)
    if (turn.from == to && turn.to == from) return turn.time_s;
  const std::vector<double> speeds = cell.positioner->axis_deg_s;
  const auto *a = find_by_id(cell.orientations, from), *b = find_by_id(cell.orientations, to);
  if (speeds.empty() || !a || !b || a->axes_deg.size() != speeds.size() ||
      b->axes_deg.size() != speeds.size())
    return cell.orientation_change_s;
  double slowest_s = 0;
  for (std::size_t i = 0; i < speeds.size(); ++i) {
    const double turned_deg = std::abs(std::remainder(a->axes_deg[i] - b->axes_deg[i], 360));
    slowest_s = std::max(slowest_s, turned_deg / speeds[i]);
  }
  return slowest_s + cell.positioner->settle_s;
}

std::string asked_orientation(const Weldment& weldment, const std::string& seam) {
  const Seam& asking = *find_by_id(weldment.seams, seam);
  std::string asked = asking.orientation;
  for (const Seam& other : weldment.seams)
    if (asked.empty() && (other.with == seam || asking.with == other.id)) asked = other.orientation;
  return asked;
}

std::vector<std::string> check_shared(const Plan& plan, const Weldment& weldment, const CycleResult& cycle) {
  return SharedChecker(plan, weldment, cycle).check();
}

}  // namespace seamtakt::test
