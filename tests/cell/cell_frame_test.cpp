#include <gtest/gtest.h>

#include "base/error.hpp"
#include "twin_plan.hpp"

// What surrounds the robots' timeline: stations, takt, and plans that leave nothing to weld.

namespace seamtakt::test {
namespace {

TEST(Cell, OneStationLoadsBetweenTheCycles) {
  Plan plan = twin_plan();
  plan.weldments[0].load_s = 40;
  plan.weldments[0].unload_s = 20;
  plan.cell->index_s = 5;  // there is nothing to index
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.cycle_time_s, 73.1, 1e-9);
  EXPECT_EQ(cycle.load_unload_s, 60);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, TwoStationsLoadWhileTheOtherIsWelded) {
  Plan plan = twin_plan();
  plan.cell->stations = 2;
  plan.cell->index_s = 5;
  plan.weldments[0].load_s = 2;
  plan.weldments[0].unload_s = 1;
  EXPECT_NEAR(cycle_of_plan(plan).cycle_time_s, 18.1, 1e-9);
  plan.weldments[0].load_s = 40;
  plan.weldments[0].unload_s = 20;
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.cycle_time_s, 65, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, TheTaktIsJudgedAtItsPlannedShare) {
  Plan plan = twin_plan();
  plan.line = Line{};
  plan.line->takt_s = 15;
  CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.takt_s, 15);
  EXPECT_NEAR(*cycle.takt_margin_s, 1.9, 1e-9);
  EXPECT_TRUE(cycle.findings.empty());
  plan.line->planning_pct = 80;
  cycle = cycle_of_plan(plan);
  EXPECT_NEAR(*cycle.takt_margin_s, -1.1, 1e-9);
  const Findings findings = findings_of(cycle.findings, "cycle.takt.missed");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::fail);
  EXPECT_NEAR(*findings[0].limit, 12, 1e-9);
}

TEST(Cell, AWeldmentWithUnweldedSeamsFailsAndHasNoMargin) {
  Plan plan = twin_plan();
  plan.line = Line{};
  plan.line->takt_s = 15;
  plan.weldments[0].seams[1].robots = {"R9"};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.robot_seams, 2);
  EXPECT_EQ(cycle.unwelded, std::vector<std::string>{plan.weldments[0].seams[1].id});
  EXPECT_EQ(cycle.takt_s, 15);
  EXPECT_LT(cycle.cycle_time_s, 15);
  EXPECT_FALSE(cycle.takt_margin_s) << "a short time for a part of the seams is no margin";
  const Findings findings = findings_of(cycle.findings, "cycle.weldment.unwelded");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].severity, Severity::fail);
  EXPECT_EQ(findings[0].where, "W");
  EXPECT_EQ(findings[0].value, 1);
}

TEST(Cell, AWeldmentWhoseWireCannotBeChangedFailsToo) {
  Plan plan = twin_plan();
  plan.line = Line{};
  plan.line->takt_s = 15;
  plan.wires.resize(2);
  plan.wires[0].id = "W12";
  plan.wires[1].id = "W10";
  plan.schedules[0].wire = "W12";
  for (Robot& robot : plan.cell->robots) robot.loaded = Loaded{"W10", "", "", {}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.unwelded.size(), 2u);
  EXPECT_FALSE(cycle.takt_margin_s);
}

TEST(Cell, AWeldmentWithoutRobotSeamsHasOnlyItsLoading) {
  Plan plan = plain_plan();
  plan.weldments[0].load_s = 40;
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.cycle_time_s, 40);
  EXPECT_EQ(cycle.weld_s, 0);
  EXPECT_EQ(cycle.gap_pct, 0);
  plan.weldments[0].load_s = 0;
  EXPECT_EQ(cycle_of_plan(plan).gap_pct, 0);
  EXPECT_EQ(cycle_of_plan(plan).arc_on_ratio, 0);
}

TEST(Cell, APlanWithoutACellFailsSeamBySeam) {
  Plan plan = twin_plan();
  plan.cell.reset();
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(findings_of(cycle.findings, "cycle.robot.none").size(), 2u);
  EXPECT_EQ(cycle.cycle_time_s, 0);
}

TEST(Cell, AnIntermittentSeamShorterThanItsRunIsLeftOut) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}})};
  plan.weldments[0].seams[0].intermittent = Intermittent{200, 10, {}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(findings_of(cycle.findings, "cycle.seam.nothing-to-weld").size(), 1u);
  EXPECT_EQ(cycle.weld_s, 0);
}

TEST(Cell, ARobotThatCannotMoveIsRefused) {
  Plan plan = twin_plan();
  plan.cell->robots[0].air_speed_mm_s = 0;
  EXPECT_THROW(cycle_of_plan(plan), InputError);
}

TEST(Cell, AnEvaluationOfAnotherPlanIsAProgrammingError) {
  const Plan plan = twin_plan();
  EXPECT_THROW(cycle_given(plan, plan.weldments[0], Evaluation{}), std::invalid_argument);
}

}  // namespace
}  // namespace seamtakt::test
