// Timelines on plates of finite size: what passes find where they begin, and how long they wait for it.
#include "cell/timeline/hot_timeline.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "cell/bound/lower_bound.hpp"
#include "cell/cell_plan.hpp"
#include "cell/search/best_order.hpp"
#include "cell/timeline/cycle_columns.hpp"

namespace seamtakt::test {
namespace {

/// A tee of two plates of 60 x 100 x 20 mm, passes of 100 mm in 10 s with 0.55 kJ/mm, interpass limit 120 C.
Plan hot_plan(std::size_t passes, const Point_mm& begin = {250, 0, 0}) {
  Plan plan = plain_plan();
  plan.schedules[0].limits = ScheduleLimits{};
  plan.schedules[0].limits->interpass_C = Interval{{}, 120};
  Seam seam = seam_along("S1", {begin, {begin[0] + 100, begin[1], begin[2]}}, passes);
  seam.thickness_mm = {20, 20};
  seam.plate_mm = {{60, 100}, {60, 100}};
  plan.weldments[0].seams = {seam};
  return plan;
}

Evaluation hot_evaluation(const Plan& plan) {
  Evaluation evaluation = evaluation_of(plan);
  for (PassEvaluation& pass : evaluation.passes) pass.heat_input_kJ_mm = 0.55;
  return evaluation;
}

CycleResult hot_cycle(const Plan& plan) {
  return cycle_given(plan, plan.weldments[0], hot_evaluation(plan));
}

/// The same seam on the other side of plate 2.
Seam other_side(const Seam& seam, const std::string& id, std::size_t passes) {
  Seam other = seam;
  other.id = id;
  for (Point_mm& point : other.path_mm) point[1] += 20;
  other.schedules.assign(passes, "A");
  return other;
}

TEST(HotTimeline, WaitsUntilEachPassFindsItsInterpassLimit) {
  const CycleResult cycle = hot_cycle(hot_plan(4));
  const std::vector<Move> arcs = moves_of(cycle, MoveKind::arc);
  ASSERT_EQ(arcs.size(), 4u);
  ASSERT_TRUE(arcs[0].start_temperature_C);
  EXPECT_EQ(*arcs[0].start_temperature_C, 20);
  // The torch waits at the seam until the place has cooled to 120 C; the start takes another 0.5 s.
  for (std::size_t i = 1; i < arcs.size(); ++i) {
    EXPECT_LE(*arcs[i].start_temperature_C, 120) << i;
    EXPECT_GT(*arcs[i].start_temperature_C, 117) << i;
  }
  // 25.7 s after the arc's end the place has cooled (computed by a script of its own); then the start.
  EXPECT_NEAR(arcs[1].start_s - arcs[0].end_s, 25.7 + 0.5, 0.3);
  // Before the last pass three passes' heat is in 240000 mm3: 20 + 156.25*exp(-3.106e-4*t) = 120 C where
  // t, counted from the middle of all heat, is 1437 s.
  double heat_K = 0;
  for (std::size_t i = 0; i < 3; ++i)
    heat_K += 52.0833 * std::exp(-3.10606e-4 * (arcs[3].start_s - (arcs[i].start_s + arcs[i].end_s) / 2));
  EXPECT_NEAR(heat_K, 100, 0.5);
  const std::vector<WaitSum> waits = wait_sums(cycle);
  ASSERT_EQ(waits.size(), 1u);
  EXPECT_EQ(waits[0].cause, WaitCause::cooling);
  EXPECT_NEAR(waits[0].time_s, cycle.wait_s, 1e-9);
  EXPECT_GT(cycle.wait_s, 1500);
}

TEST(HotTimeline, OfEndlessPlatesKeepsTheEvaluationsWaits) {
  Plan plan = hot_plan(2);
  plan.weldments[0].seams[0].plate_mm.clear();
  Evaluation evaluation = hot_evaluation(plan);
  evaluation.seams[0].interpass_waits_s = {60};
  const CycleResult cycle = cycle_given(plan, plan.weldments[0], evaluation);
  const std::vector<Move> arcs = moves_of(cycle, MoveKind::arc);
  ASSERT_EQ(arcs.size(), 2u);
  EXPECT_FALSE(arcs[0].start_temperature_C);
  EXPECT_FALSE(arcs[1].start_temperature_C);
  EXPECT_NEAR(arcs[1].start_s - arcs[0].end_s, 1 + 60 + 0.5, 1e-9);
  EXPECT_TRUE(findings_of(cycle.findings, "cycle.bound.heat").empty());
}

TEST(HotTimeline, WorkElsewhereCoolsASeamMeanwhile) {
  Plan plan = hot_plan(2);
  // Far away, on plates of its own.
  Seam far = seam_along("S2", {{250, 1000, 0}, {350, 1000, 0}});
  far.schedules = {"A"};
  plan.weldments[0].seams.push_back(far);
  plan.weldments[0].order = {
      {"S1", "R1", "as-drawn", {}}, {"S2", "R1", "as-drawn", {}}, {"S1", "R1", "reversed", {}}};
  const CycleResult cycle = hot_cycle(plan);
  const std::vector<Move> arcs = moves_of(cycle, MoveKind::arc, "S1");
  ASSERT_EQ(arcs.size(), 2u);
  // S2 takes 11.5 s and two ways: less of the 25.7 s is left to wait, and it begins at the limit again.
  EXPECT_NEAR(arcs[1].start_s - arcs[0].end_s, 25.7 + 0.5, 0.3);
  EXPECT_LT(cycle.wait_s, 25.7 - 11.5);
  EXPECT_FALSE(moves_of(cycle, MoveKind::arc, "S2").front().start_temperature_C);
}

TEST(HotTimeline, CountsTheHeatOfTheSeamOnTheOtherSide) {
  Plan plan = hot_plan(1);
  plan.schedules[0].limits.reset();
  plan.weldments[0].seams.push_back(other_side(plan.weldments[0].seams[0], "S2", 1));
  const CycleResult cycle = hot_cycle(plan);
  const std::vector<Move> second = moves_of(cycle, MoveKind::arc, "S2");
  ASSERT_EQ(second.size(), 1u);
  EXPECT_EQ(*moves_of(cycle, MoveKind::arc, "S1").front().start_temperature_C, 20);
  // At least what S1's 55 kJ leave in the lumped body, 52 K; not melted.
  EXPECT_GT(*second.front().start_temperature_C, 20 + 52);
  EXPECT_LT(*second.front().start_temperature_C, 500);
  EXPECT_EQ(cycle.wait_s, 0);
  // With a limit, the first pass waits for it too.
  plan.schedules[0].limits = ScheduleLimits{};
  plan.schedules[0].limits->interpass_C = Interval{{}, 120};
  const CycleResult limited = hot_cycle(plan);
  EXPECT_LE(*moves_of(limited, MoveKind::arc, "S2").front().start_temperature_C, 120);
  EXPECT_GT(limited.wait_s, 0);
  EXPECT_EQ(moves_of(limited, MoveKind::wait).front().why.english(), "cooling of S2 to 120 C before pass 1");
}

Plate upright_plate(const std::string& id, double face_y_mm) {
  Plate plate;
  plate.id = id;
  plate.origin_mm = {250, face_y_mm + 10, 0};
  plate.v = {0, 0, 1};  // u x v points to -y: its thickness ends at face_y_mm
  plate.outline_mm = {{0, 0}, {100, 0}, {100, 60}, {0, 60}};
  plate.thickness_mm = 10;
  return plate;
}

TEST(HotTimeline, CountsTheHeatOfTheNextJointOnTheSamePlate) {
  Plan plan = hot_plan(1);
  plan.schedules[0].limits.reset();
  Plate lying;
  lying.id = "lying";
  lying.origin_mm = {250, -80, -10};
  lying.outline_mm = {{0, 0}, {100, 0}, {100, 200}, {0, 200}};
  lying.thickness_mm = 10;
  plan.weldments[0].plates = {lying, upright_plate("A", 0), upright_plate("B", 30)};
  Seam& first = plan.weldments[0].seams[0];
  first.plate_mm.clear();
  first.thickness_mm = {10, 10};
  Seam next = first;
  next.id = "S2";
  for (Point_mm& point : next.path_mm) point[1] += 30;
  plan.weldments[0].seams.push_back(next);
  const CycleResult cycle = hot_cycle(plan);
  const Move before = moves_of(cycle, MoveKind::arc, "S1").front(),
             after = moves_of(cycle, MoveKind::arc, "S2").front();
  EXPECT_EQ(*before.start_temperature_C, 20);
  // 12.07 s after S1's arc was struck 30 mm away: 8.4 K, rising by 2 K/s (computed by a script of its own).
  EXPECT_NEAR(after.start_s - before.start_s, 12.07, 0.01);
  EXPECT_NEAR(*after.start_temperature_C, 28.4, 0.3);
}

TEST(HotTimeline, CountsTheHeatOfAnotherRobotWhicheverIsFirstInTheOrder) {
  // R2 begins its seam 10 s after R1, on the other side of the same plates, but is first in the order.
  Plan plan = hot_plan(1);
  plan.cell->robots.push_back(robot_at("R2", {250, 10000, 0}));
  plan.weldments[0].seams[0].robots = {"R1"};
  Seam other = other_side(plan.weldments[0].seams[0], "S2", 1);
  other.robots = {"R2"};
  plan.weldments[0].seams.push_back(other);
  plan.weldments[0].order = {{"S2", "R2", "as-drawn", {}}, {"S1", "R1", "as-drawn", {}}};
  const CycleResult cycle = hot_cycle(plan);
  const Move first = moves_of(cycle, MoveKind::arc, "S1").front(),
             second = moves_of(cycle, MoveKind::arc, "S2").front();
  EXPECT_LT(first.start_s, second.start_s);
  EXPECT_EQ(*first.start_temperature_C, 20);
  EXPECT_GT(*second.start_temperature_C, 60);
  EXPECT_LE(*second.start_temperature_C, 121);
  EXPECT_TRUE(findings_of(cycle.findings, "cycle.interpass.above").empty());
}

TEST(HotTimeline, TheBoundIsWithoutTheWaitsAndSaysSo) {
  const Plan plan = hot_plan(4);
  Evaluation evaluation = hot_evaluation(plan);
  evaluation.seams[0].interpass_waits_s = {30, 300, 3000};
  const CycleResult cycle = cycle_given(plan, plan.weldments[0], evaluation);
  ASSERT_EQ(findings_of(cycle.findings, "cycle.bound.heat").size(), 1u);
  EXPECT_EQ(findings_of(cycle.findings, "cycle.bound.heat").front().severity, Severity::note);
  Plan cold = plan;
  cold.weldments[0].seams[0].plate_mm.clear();
  const CycleResult bare = cycle_given(cold, cold.weldments[0], hot_evaluation(cold));
  EXPECT_NEAR(*cycle.lower_bound_s, *bare.lower_bound_s, 1e-9);
  EXPECT_LT(*cycle.lower_bound_s, cycle.cycle_time_s);
}

TEST(HotTimeline, OfTheBestOrderFollowsTheTemperaturesToo) {
  Plan plan = hot_plan(2);
  plan.weldments[0].seams.push_back(seam_along("S2", {{250, 300, 0}, {350, 300, 0}}));
  plan.weldments[0].seams.back().schedules = {"A"};
  Evaluation evaluation = hot_evaluation(plan);
  evaluation.seams[0].interpass_waits_s = {26};
  BestOptions options;
  options.steps = 40'000;  // the only robot's travel, which knows no waits, takes up to 25,600 of them
  const CycleResult best = cycle_best(plan, plan.weldments[0], evaluation, options);
  const std::vector<Move> arcs = moves_of(best, MoveKind::arc, "S1");
  ASSERT_EQ(arcs.size(), 2u);
  EXPECT_LE(*arcs[1].start_temperature_C, 120);
  // S2 is welded while S1 cools.
  EXPECT_EQ(arcs_of(best, "R1")[1].substr(0, 2), "S2");
}

TEST(HotTimeline, AWaitAboveAnHourFailsWhereTheEvaluationHasNone) {
  Plan plan = hot_plan(1);
  plan.schedules[0].limits->interpass_C->upper = 28;
  plan.weldments[0].seams.push_back(other_side(plan.weldments[0].seams[0], "S2", 1));
  const CycleResult cycle = hot_cycle(plan);
  const Findings never = findings_of(cycle.findings, "cycle.interpass.never");
  ASSERT_EQ(never.size(), 1u);
  EXPECT_EQ(never[0].where, "W/S2/pass 1");
  EXPECT_EQ(never[0].severity, Severity::fail);
  // 52.083 K fall to 8 K in 6031 s from the middle of S1's arc.
  EXPECT_NEAR(*never[0].value, 6026, 15);
  EXPECT_TRUE(findings_of(hot_cycle(hot_plan(4)).findings, "cycle.interpass.never").empty());
}

TEST(HotTimeline, ArcsAboveTheirLimitAreWarned) {
  // Runs of 45 mm with 10 mm between: the second run finds the first one's heat, and no run waits.
  Plan plan = hot_plan(2);
  plan.schedules[0].limits->interpass_C->upper = 60;
  plan.weldments[0].seams[0].intermittent = Intermittent{45, 10, {}};
  const CycleResult cycle = hot_cycle(plan);
  const Findings above = findings_of(cycle.findings, "cycle.interpass.above");
  ASSERT_FALSE(above.empty());
  EXPECT_EQ(above[0].severity, Severity::warn);
  EXPECT_EQ(above[0].where.substr(0, 5), "W/S1/");
  EXPECT_GT(*above[0].value, 61);
}

}  // namespace
}  // namespace seamtakt::test
