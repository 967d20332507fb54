// Seams that nobody reaches go to hand work: hours by the arc share, and a plan that says so.
#include "cell/timeline/to_manual.hpp"

#include <gtest/gtest.h>

#include "base/error.hpp"
#include "cell/timeline/without_robot.hpp"
#include "cell_plan.hpp"
#include "plan/manual_time.hpp"

namespace seamtakt::test {
namespace {

/// Two robots; R2 alone reaches S2 (200 mm, two passes, by hand with M at 4 mm/s) and S3 (80 mm, no manual
/// schedule, its robot's at 10 mm/s).
Plan shop() {
  Plan plan = plain_plan();
  plan.cell->robots.push_back(robot_at("R2", {0, 1000, 0}));
  plan.cell->manual = ManualWork{0.25, 60, {}};
  plan.schedules.push_back(schedule_named("M"));
  plan.schedules.back().travel_speed_mm_s = 4;
  auto& seams = plan.weldments[0].seams;
  seams = {seam_along("S1", {{0, 0, 0}, {100, 0, 0}}), seam_along("S2", {{0, 0, 0}, {200, 0, 0}}, 2),
           seam_along("S3", {{0, 0, 0}, {80, 0, 0}})};
  seams[0].robots = {"R1"};
  seams[1].robots = seams[2].robots = {"R2"};
  seams[1].manual_schedule = "M";
  plan.weldments[0].order = {{"S2", "R2", "as-drawn", {}}, {"S1", "R1", "as-drawn", {}}};
  return plan;
}

PlanToManual without_r2(const Plan& plan) {
  const Plan left = without_robot(plan, "R2").plan;
  return to_manual(left, evaluation_of(left));
}

TEST(ToManual, MovesWhatNobodyReachesWithItsHours) {
  const PlanToManual moved = without_r2(shop());
  ASSERT_EQ(moved.moved.size(), 2u);
  EXPECT_EQ(moved.moved[0].seam, "S2");
  EXPECT_EQ(moved.moved[0].schedule, "M");
  // Two passes of 200 mm at 4 mm/s: 100 s of arc, a quarter of the time at the seam, and 60 s to set up.
  EXPECT_DOUBLE_EQ(moved.moved[0].hand_time_s, 100 / 0.25 + 60);
  EXPECT_EQ(moved.moved[1].seam, "S3");
  EXPECT_EQ(moved.moved[1].schedule, "");
  EXPECT_DOUBLE_EQ(moved.moved[1].hand_time_s, 8 / 0.25 + 60);
  const auto& seams = moved.plan.weldments[0].seams;
  EXPECT_EQ(seams[0].by, "robot");
  EXPECT_EQ(seams[1].by, "manual");
  EXPECT_EQ(seams[1].schedules, (std::vector<std::string>{"M", "M"}));
  EXPECT_TRUE(seams[1].robots.empty());
  EXPECT_EQ(seams[2].by, "manual");
  EXPECT_EQ(seams[2].schedules, (std::vector<std::string>{"A"}));
  ASSERT_EQ(moved.plan.weldments[0].order.size(), 1u);
  EXPECT_EQ(moved.plan.weldments[0].order[0].seam, "S1");
}

TEST(ToManual, ARobotsScheduleIsNoManualOne) {
  const PlanToManual moved = without_r2(shop());
  ASSERT_EQ(moved.findings.size(), 2u);
  EXPECT_EQ(moved.findings[0].rule, "cell.to-manual");
  EXPECT_EQ(moved.findings[0].severity, Severity::note);
  EXPECT_EQ(moved.findings[0].where, "W/S2");
  EXPECT_DOUBLE_EQ(*moved.findings[0].value, 460.0 / 60);
  EXPECT_EQ(moved.findings[1].rule, "cell.to-manual.no-schedule");
  EXPECT_EQ(moved.findings[1].severity, Severity::fail);
  EXPECT_EQ(moved.findings[1].where, "W/S3");
  EXPECT_DOUBLE_EQ(*moved.findings[1].value, 92.0 / 3600);
}

TEST(ToManual, NobodyIsLeftUnweldedInTheCell) {
  const Plan plan = without_r2(shop()).plan;
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_TRUE(cycle.unwelded.empty());
  EXPECT_EQ(cycle.robot_seams, 1);
  EXPECT_EQ(arcs_of(cycle, "R1"), (std::vector<std::string>{"S1/1"}));
}

TEST(ToManual, AStatedManualTimeGrowsAndAnAbsentOneFollowsFromTheSeams) {
  Plan plan = shop();
  EXPECT_EQ(manual_stage_s(plan, plan.weldments[0]), 0);
  const Plan absent = without_r2(plan).plan;
  EXPECT_FALSE(absent.weldments[0].manual_s.has_value());
  EXPECT_DOUBLE_EQ(manual_stage_s(absent, absent.weldments[0]), 460 + 92);
  plan.weldments[0].manual_s = 30;
  EXPECT_EQ(manual_stage_s(plan, plan.weldments[0]), 30);
  const Plan stated = without_r2(plan).plan;
  EXPECT_DOUBLE_EQ(manual_stage_s(stated, stated.weldments[0]), 30 + 460 + 92);
}

TEST(ToManual, AManualSeamOfThePlanIsWeldedByItsOwnSchedules) {
  Plan plan = shop();
  plan.weldments[0].seams[0].by = "manual";
  EXPECT_DOUBLE_EQ(manual_stage_s(plan, plan.weldments[0]), 10 / 0.25 + 60);
  plan.weldments[0].seams[0].manual_schedule = "M";
  EXPECT_DOUBLE_EQ(manual_stage_s(plan, plan.weldments[0]), 25 / 0.25 + 60);
  plan.cell->manual.reset();
  EXPECT_EQ(manual_stage_s(plan, plan.weldments[0]), 0);
}

TEST(ToManual, WithoutAnArcShareNothingIsMoved) {
  Plan plan = shop();
  plan.cell->manual.reset();
  EXPECT_TRUE(to_manual(plan, evaluation_of(plan)).moved.empty()) << "each seam has a robot";
  try {
    without_r2(plan);
    FAIL();
  } catch (const InputError& error) {
    EXPECT_STREQ(error.what(),
                 "--to-manual: found a cell without hand welding, expected the arc share and the set-up of a "
                 "seam under cell.manual");
  }
}

TEST(ToManual, ASeamWithNothingToWeldIsNoWork) {
  Plan plan = shop();
  plan.weldments[0].seams[1].schedules.clear();
  const PlanToManual moved = without_r2(plan);
  ASSERT_EQ(moved.moved.size(), 1u);
  EXPECT_EQ(moved.moved[0].seam, "S3");
}

TEST(ToManual, APlanOfItsOwnNamesNoAbsentRobot) {
  Plan plan = shop();
  plan.weldments[0].seams[1].schedules.clear();
  plan.instruments.resize(2);
  plan.instruments[0].robot = "R1";
  plan.instruments[1].robot = "R2";
  const Plan file = without_absent_robots(without_r2(plan).plan);
  EXPECT_TRUE(file.weldments[0].seams[1].robots.empty());
  EXPECT_EQ(file.weldments[0].seams[0].robots, (std::vector<std::string>{"R1"}));
  ASSERT_EQ(file.instruments.size(), 1u);
  EXPECT_EQ(file.instruments[0].robot, "R1");
}

}  // namespace
}  // namespace seamtakt::test
