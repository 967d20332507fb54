#pragma once

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "records/actual/cycle_actual.hpp"
#include "records/audit_fixture.hpp"

namespace seamtakt::test {

/// An arc as a test welds it.
struct TestArc {
  std::string robot, seam;
  int pass = 1;
  double begin_s = 0, end_s = 0;
};

/// small_plan() with what an evaluation needs.
inline Plan weldable_plan() {
  Plan plan = small_plan();
  plan.wires[0].alpha_mm_s_A = 0.30;
  plan.wires[0].beta_per_s_A2 = 5e-5;
  plan.wires[0].density_g_cm3 = 7.85;
  plan.wires[0].deposition_efficiency = 0.98;
  plan.base_metals[0].composition_pct = {{"C", 0.17}, {"Mn", 1.4}};
  return plan;
}

inline Robot test_robot(const std::string& id, double x_mm) {
  Robot robot;
  robot.id = id;
  robot.home_mm = {x_mm, -800, 500};
  robot.wrist_s = 0.25;
  robot.sense_point_s = 2;
  robot.arc_start_s = 0.5;
  robot.crater_fill_s = 0.75;
  robot.post_flow_s = 0.25;
  return robot;
}

/// Two robots, each with four seams of different lengths: A1 to A4 by R1, B1 to B4 by R2. A2 is sensed.
inline Plan two_robot_plan() {
  Plan plan = weldable_plan();
  plan.cell = Cell{};
  plan.cell->robots = {test_robot("R1", 0), test_robot("R2", 2000)};
  const Seam like = plan.weldments[0].seams[0];
  plan.weldments[0].seams.clear();
  for (int i = 0; i < 8; ++i) {
    Seam seam = like;
    const bool second = i >= 4;
    const double x = second ? 1500 : 0, y = 250.0 * (i % 4);
    seam.id = (second ? "B" : "A") + std::to_string(i % 4 + 1);
    seam.robots = {second ? "R2" : "R1"};
    seam.path_mm = {{x, y, 0}, {x + 120 + 110 * (i % 4) + 40 * (i / 4), y, 0}};
    seam.sense_points = seam.id == "A2" ? 3 : 0;
    plan.weldments[0].seams.push_back(seam);
  }
  return plan;
}

inline CycleResult planned_cycle(const Plan& plan) {
  return cycle_given(plan, plan.weldments[0], evaluate(plan));
}

/// The plan's arcs, each later by what has been added up for its robot: before_s and longer_s by seam.
inline std::vector<TestArc> welded_later(const CycleResult& cycle,
                                         const std::map<std::string, double>& before_s,
                                         const std::map<std::string, double>& longer_s = {}) {
  std::vector<TestArc> arcs;
  std::map<std::string, double> late_s;
  const auto added = [](const std::map<std::string, double>& by_seam, const std::string& seam) {
    const auto at = by_seam.find(seam);
    return at == by_seam.end() ? 0 : at->second;
  };
  for (const Move& move : cycle.moves) {
    if (move.kind != MoveKind::arc) continue;
    double& late = late_s[move.robot];
    late += added(before_s, move.seam);
    TestArc arc{move.robot, move.seam, move.pass, move.start_s + late, 0};
    late += added(longer_s, move.seam);
    arc.end_s = move.end_s + late;
    arcs.push_back(arc);
  }
  return arcs;
}

inline constexpr double sample_s = 0.1;

/// Rows of those arcs every tenth of a second from 100 s on, in the order of time: the arc is on from its
/// begin to its end, and one row after it is off. `names`: with seam and pass.
inline std::string log_of_arcs(const std::vector<TestArc>& arcs, bool names = true,
                          const std::string& only_robot = "") {
  std::multimap<long, std::string> rows;
  for (const TestArc& arc : arcs) {
    if (!only_robot.empty() && arc.robot != only_robot) continue;
    const auto tick = [](double time_s) { return static_cast<long>(std::ceil(time_s / sample_s - 1e-9)); };
    const std::string identity = ",U1,W," +
                                 (names ? arc.seam + "," + std::to_string(arc.pass) + "," : std::string()) +
                                 arc.robot + ",";
    for (long i = tick(arc.begin_s); i <= tick(arc.end_s); ++i) {
      const bool on = i < tick(arc.end_s);
      rows.emplace(i, identity + (on ? "20" + std::to_string(i % 7) + ",25." + std::to_string(i % 5)
                                     : std::string("0,0")));
    }
  }
  std::string text = std::string("time_s,unit_serial,weldment,") + (names ? "seam,pass," : "") +
                     "robot,current_A,voltage_V\n";
  for (const auto& [tick, row] : rows)
    text += fixed(100 + static_cast<double>(tick) * sample_s, 1) + row + "\n";
  return text;
}

/// The gap that ends at a pass, or the pass's arc (its first part); nullptr where there is none.
inline const CycleStep* find_step(const UnitActual& unit, CycleStep::Kind kind, const std::string& seam,
                                  int part = 1) {
  for (const RobotActual& robot : unit.robots)
    for (const CycleStep& step : robot.steps)
      if (step.kind == kind && step.to.seam == seam && step.to.part == part) return &step;
  return nullptr;
}

}  // namespace seamtakt::test
