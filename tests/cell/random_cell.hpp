#pragma once

#include <algorithm>
#include <cmath>
#include <random>

#include "cell_plan.hpp"

namespace seamtakt::test {

/// A cell and weldment with everything in them that the cell's rules speak of, drawn from a seed.
class RandomCell {
 public:
  explicit RandomCell(unsigned seed) : random_(seed) {}

  Plan plan(int seams, int robots) {
    Plan plan = plain_plan();
    for (const char* id : {"W12", "W10"}) {
      plan.wires.resize(plan.wires.size() + 1);
      plan.wires.back().id = id;
    }
    plan.schedules = {schedule_named("A", "W12"), schedule_named("B", "W10"), schedule_named("C")};
    plan.schedules[1].travel_speed_mm_s = 6;
    plan.schedules[2].crater_fill_s = 0;
    Cell& cell = *plan.cell;
    cell.robots.clear();
    for (int i = 0; i < robots; ++i) cell.robots.push_back(robot(i));
    cell.orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}, {"left", {}, {}, {}}};
    cell.orientation_change_s = integer(0, 12);
    cell.stations = integer(1, 2);
    cell.index_s = integer(0, 5);
    if (chance(0.6))
      cell.torch_service = TorchService{double(integer(10, 200)), double(integer(1, 12)), {}, {}};
    Weldment& weldment = plan.weldments[0];
    weldment.load_s = integer(0, 300);
    weldment.unload_s = integer(0, 60);
    for (int i = 0; i < seams; ++i) weldment.seams.push_back(seam("S" + std::to_string(i), robots));
    add_after(weldment);
    for (const char* id : {"Z1", "Z2"}) {
      cell.zones.push_back({id, {}, {}, {}});
      for (const Seam& seam : weldment.seams)
        if (chance(0.25)) cell.zones.back().seams.push_back("W/" + seam.id);
    }
    return plan;
  }

  /// What robots share and how they travel: load orientation, axes, ways over a clearance, tracks, reach,
  /// wear, distance, boxes, seams begun together.
  void add_travel(Plan& plan) {
    Cell& cell = *plan.cell;
    if (chance(0.7)) add_positioner(cell);
    for (Robot& robot : cell.robots) add_travel(robot);
    const bool has_boxes = chance(0.3);
    if (has_boxes) {
      const Point_mm at = point();
      const double size = integer(200, 900);
      cell.zones.push_back({"box", {}, {at, {at[0] + size, at[1] + size, at[2] - size}}, {}});
    } else if (cell.torch_service && chance(0.5)) {
      cell.torch_service->place_mm = point();
    }
    if (chance(0.5)) cell.min_torch_distance_mm = integer(100, 900);
    if (chance(0.3))
      for (Seam& seam : plan.weldments[0].seams) seam.tracking = chance(0.3) ? "optical" : "none";
    else if (!has_boxes)
      add_pairs(plan.weldments[0]);
  }

  /// The times, with a wait before some passes.
  Evaluation evaluation(const Plan& plan) {
    Evaluation evaluation = evaluation_of(plan);
    for (SeamEvaluation& seam : evaluation.seams)
      for (double& wait_s : seam.interpass_waits_s) wait_s = chance(0.5) ? integer(1, 60) : 0;
    for (std::size_t i = 0; i < evaluation.passes.size(); ++i)
      evaluation.passes[i].wire_g = static_cast<double>(50 + 37 * i % 200);
    return evaluation;
  }

  int integer(int from, int to) { return std::uniform_int_distribution<int>(from, to)(random_); }
  bool chance(double probability) { return std::bernoulli_distribution(probability)(random_); }

 private:
  Point_mm point() { return {double(integer(0, 3000)), double(integer(0, 1500)), double(integer(0, 800))}; }

  Robot robot(int number) {
    Robot robot = robot_at("R" + std::to_string(number), point());
    if (chance(0.7)) robot.loaded = Loaded{chance(0.6) ? "W12" : "W10", "", "", {}};
    if (chance(0.4)) robot.wire_change_s = integer(0, 100);
    robot.air_speed_mm_s = integer(500, 2000);
    robot.wrist_s = chance(0.3) ? 0 : 0.2;
    if (chance(0.2)) robot.arc_start_s = 0;
    return robot;
  }

  void add_positioner(Cell& cell) {
    cell.positioner = Positioner{};
    Positioner& positioner = *cell.positioner;
    if (chance(0.8)) positioner.load_orientation = chance(0.5) ? "up" : chance(0.5) ? "down" : "left";
    if (chance(0.7)) positioner.axis_deg_s = {double(integer(10, 60)), double(integer(10, 60))};
    positioner.settle_s = integer(0, 3);
    for (Orientation& orientation : cell.orientations)
      if (chance(0.9)) orientation.axes_deg = {double(integer(-360, 360)), double(integer(-90, 90))};
    if (chance(0.4)) positioner.turns = {{"up", "down", double(integer(1, 30)), {}}};
    if (chance(0.2)) positioner.turns.push_back({"down", "up", double(integer(1, 30)), {}});
  }

  void add_travel(Robot& robot) {
    if (chance(0.4)) robot.approach_mm = integer(0, 80);
    if (chance(0.4)) robot.clearance_mm = integer(-100, 1200);
    if (chance(0.5)) robot.base_mm = point();
    if (chance(0.3)) robot.reach_mm = integer(1800, 4000);
    if (chance(0.3))
      robot.track = Track{"x",
                          double(integer(-1000, 0)),
                          double(integer(0, 2000)),
                          double(integer(100, 900)),
                          double(integer(100, 2000)),
                          {}};
    if (chance(0.3)) robot.tip_change = TipChange{double(integer(20, 200)), double(integer(5, 60)), {}};
    if (chance(0.3)) robot.spool_kg = integer(200, 900) / 1000.0;
    if (chance(0.7)) robot.spool_change_s = integer(20, 90);
    robot.tracking_s = integer(0, 3);
  }

  /// Without balance groups, which pairs may keep from their turns.
  void add_pairs(Weldment& weldment) {
    for (Seam& seam : weldment.seams) seam.balance.clear();
    for (std::size_t i = 1; i < weldment.seams.size(); i += 2)
      if (chance(0.4)) weldment.seams[i].with = weldment.seams[i - 1].id;
  }

  Seam seam(const std::string& id, int robots) {
    const Point_mm begin = point();
    Seam seam = seam_along(id, {begin, point()}, static_cast<std::size_t>(integer(1, 3)));
    for (std::string& schedule : seam.schedules) schedule = std::string(1, "ABCC"[integer(0, 3)]);
    if (chance(0.3)) seam.path_mm.push_back(point());
    if (chance(0.15)) {
      seam.path_mm = {begin, point(), point(), begin};
      seam.overlap_mm = chance(0.5) ? integer(1, 20) : 0;
    } else if (chance(0.25)) {
      seam.intermittent = Intermittent{double(integer(20, 90)), double(integer(10, 200)), {}};
    }
    if (chance(0.2)) seam.position = chance(0.5) ? "PF" : "PG";
    if (chance(0.2)) seam.direction = "as-drawn";
    if (chance(0.4)) seam.orientation = chance(0.5) ? "up" : chance(0.5) ? "down" : "left";
    if (chance(0.4)) seam.sense_points = integer(1, 3);
    if (chance(0.05)) seam.by = "manual";
    if (chance(0.4)) seam.balance = chance(0.5) ? "G1" : "G2";
    for (int i = 0; i < robots && !chance(0.3); ++i)
      seam.robots.push_back("R" + std::to_string(integer(0, robots - 1)));
    return seam;
  }

  /// Each seam after some of those before it in a hidden order, which isn't the file's.
  void add_after(Weldment& weldment) {
    std::vector<std::size_t> order(weldment.seams.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    if (chance(0.7)) std::shuffle(order.begin(), order.end(), random_);
    const double share = chance(0.5) ? 0.05 : 0.2;
    for (std::size_t i = 0; i < order.size(); ++i)
      for (std::size_t k = i > 6 ? i - 6 : 0; k < i; ++k)
        if (chance(share)) weldment.seams[order[i]].after.push_back(weldment.seams[order[k]].id);
  }

  std::mt19937 random_;
};

/// Whether the whole seam is within the sphere about the robot's base; its track runs along x.
inline bool is_in_reach(const Robot& robot, const Seam& seam) {
  if (!robot.base_mm || !robot.reach_mm) return true;
  return std::all_of(seam.path_mm.begin(), seam.path_mm.end(), [&](const Point_mm& point) {
    Point_mm off{point[0] - (*robot.base_mm)[0], point[1] - (*robot.base_mm)[1],
                 point[2] - (*robot.base_mm)[2]};
    if (robot.track) off[0] -= std::clamp(off[0], robot.track->from_mm, robot.track->to_mm);
    return std::hypot(off[0], off[1], off[2]) <= *robot.reach_mm;
  });
}

/// Seams that no robot reaches, has, or can have, the wire for, or that are shorter than one of their runs.
inline std::vector<std::string> seams_left_out(const Plan& plan) {
  std::vector<std::string> left_out;
  for (const Seam& seam : plan.weldments[0].seams) {
    bool weldable = false;
    for (const Robot& robot : plan.cell->robots) {
      if (!seam.robots.empty() && std::count(seam.robots.begin(), seam.robots.end(), robot.id) == 0) continue;
      if (!is_in_reach(robot, seam)) continue;
      bool fits = true;
      for (const std::string& schedule : seam.schedules) {
        const std::string& wire = find_by_id(plan.schedules, schedule)->wire;
        fits = fits && (wire.empty() || !robot.loaded || robot.loaded->wire == wire);
      }
      weldable = weldable || fits || robot.wire_change_s;
    }
    if (!weldable || weld_runs(seam).empty()) left_out.push_back(seam.id);
  }
  return left_out;
}

}  // namespace seamtakt::test
