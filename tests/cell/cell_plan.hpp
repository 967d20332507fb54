#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt::test {

/// A cell with round numbers, so that a test can add up its cycle by hand. Travel 10 mm/s; air 1000 mm/s and
/// 4000 mm/s2; wrist 0.25 s; start 0.5 s; crater 0.75 s; post-flow 0.25 s: a run takes 1.5 s in addition to
/// its arc.
inline Robot robot_at(const std::string& id, const Point_mm& home_mm) {
  Robot robot;
  robot.id = id;
  robot.home_mm = home_mm;
  robot.wrist_s = 0.25;
  robot.sense_point_s = 2;
  robot.arc_start_s = 0.5;
  robot.crater_fill_s = 0.75;
  robot.post_flow_s = 0.25;
  return robot;
}

inline Schedule schedule_named(const std::string& id, const std::string& wire = "") {
  Schedule schedule;
  schedule.id = id;
  schedule.process = "135";
  schedule.wire = wire;
  schedule.travel_speed_mm_s = 10;
  schedule.wire_feed_speed_m_min = 9;
  schedule.arc_voltage_V = 28;
  schedule.contact_tip_distance_mm = 18;
  return schedule;
}

inline Seam seam_along(const std::string& id, std::vector<Point_mm> path_mm, std::size_t passes = 1) {
  Seam seam;
  seam.id = id;
  seam.joint = "tee";
  seam.thickness_mm = {10, 8};
  seam.position = "PB";
  seam.schedules.assign(passes, "A");
  seam.path_mm = std::move(path_mm);
  return seam;
}

/// One robot "R1" with its home at the origin, one station, no load time, a weldment "W" without seams.
inline Plan plain_plan() {
  Plan plan;
  plan.schedules = {schedule_named("A")};
  plan.weldments.resize(1);
  plan.weldments[0].id = "W";
  plan.cell = Cell{};
  plan.cell->robots = {robot_at("R1", {0, 0, 0})};
  return plan;
}

/// The evaluation's times, computed from the definitions: welded length over travel speed.
inline Evaluation evaluation_of(const Plan& plan) {
  Evaluation evaluation;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      for (std::size_t i = 0; i < seam.schedules.size(); ++i) {
        const Schedule* schedule = find_by_id(plan.schedules, seam.schedules[i]);
        PassEvaluation pass;
        pass.weldment = weldment.id;
        pass.seam = seam.id;
        pass.pass = static_cast<int>(i) + 1;
        pass.schedule = seam.schedules[i];
        pass.current_A = schedule ? schedule->current_A.value_or(250) : 250;
        pass.length_mm = welded_length_mm(seam);
        pass.arc_time_s = schedule ? pass.length_mm / schedule->travel_speed_mm_s : 0;
        evaluation.passes.push_back(pass);
      }
      SeamEvaluation of_seam;
      of_seam.weldment = weldment.id;
      of_seam.seam = seam.id;
      if (seam.schedules.size() > 1) of_seam.interpass_waits_s.assign(seam.schedules.size() - 1, 0);
      evaluation.seams.push_back(of_seam);
    }
  return evaluation;
}

inline CycleResult cycle_of_plan(const Plan& plan) {
  return cycle_given(plan, plan.weldments[0], evaluation_of(plan));
}

/// The findings of one rule.
inline Findings findings_of(const Findings& findings, const std::string& rule) {
  Findings found;
  for (const Finding& finding : findings)
    if (finding.rule == rule) found.push_back(finding);
  return found;
}

/// Where a robot's arcs begin, "SEAM/PASS", in the order of time.
inline std::vector<std::string> arcs_of(const CycleResult& cycle, const std::string& robot) {
  std::vector<std::string> arcs;
  for (const Move& move : cycle.moves)
    if (move.robot == robot && move.kind == MoveKind::arc)
      arcs.push_back(move.seam + "/" + std::to_string(move.pass) + (move.reversed ? " reversed" : ""));
  return arcs;
}

inline std::vector<Move> moves_of(const CycleResult& cycle, MoveKind kind, const std::string& seam = "") {
  std::vector<Move> moves;
  for (const Move& move : cycle.moves)
    if (move.kind == kind && (seam.empty() || move.seam == seam)) moves.push_back(move);
  return moves;
}

}  // namespace seamtakt::test
