// The positioner: its own times of turns, and cycles that begin and end in the load orientation.
#include <gtest/gtest.h>

#include "cell/bound/turn_bound.hpp"
#include "cell/cell_plan.hpp"
#include "cell/timeline_check.hpp"
#include "cell/travel/turn_times.hpp"

namespace seamtakt::test {
namespace {

Orientation at_angles(const std::string& id, std::vector<double> axes_deg) {
  Orientation orientation;
  orientation.id = id;
  orientation.axes_deg = std::move(axes_deg);
  return orientation;
}

/// One axis of 30 deg/s that settles for 1.5 s: a quarter turn takes 3 + 1.5 = 4.5 s, half a turn 6 + 1.5
/// = 7.5.
Cell cell_with_axis() {
  Cell cell;
  cell.orientation_change_s = 20;
  cell.orientations = {at_angles("up", {0}), at_angles("side", {90}), at_angles("down", {180}),
                       at_angles("back", {270}), at_angles("unknown", {})};
  cell.positioner = Positioner{};
  cell.positioner->axis_deg_s = {30};
  cell.positioner->settle_s = 1.5;
  return cell;
}

double time_between(const Cell& cell, const std::string& from, const std::string& to) {
  return turn_time_s(cell, *find_by_id(cell.orientations, from), *find_by_id(cell.orientations, to));
}

TEST(TurnTimes, AQuarterAndHalfATurnDifferAndTheShorterWayIsTaken) {
  const Cell cell = cell_with_axis();
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "side"), 4.5);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "down"), 7.5);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "back"), 4.5);  // 270 degrees are 90 the other way
  EXPECT_DOUBLE_EQ(time_between(cell, "side", "back"), 7.5);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "up"), 0);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "unknown"), 20);  // no angle: orientation_change_s
}

TEST(TurnTimes, TheSlowestAxisDecidesAndAnEntryGoesFirst) {
  Cell cell = cell_with_axis();
  cell.positioner->axis_deg_s = {30, 15};
  cell.orientations = {at_angles("up", {0, 0}), at_angles("side", {90, 90}), at_angles("low", {-350, 0})};
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "side"), 90.0 / 15 + 1.5);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "low"), 10.0 / 30 + 1.5);  // -350 is 10 degrees away
  cell.positioner->turns = {{"side", "up", 9, {}}};
  EXPECT_DOUBLE_EQ(time_between(cell, "side", "up"), 9);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "side"), 9);
  cell.positioner->turns.push_back({"up", "side", 11, {}});
  EXPECT_DOUBLE_EQ(time_between(cell, "side", "up"), 9);
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "side"), 11);
  cell.positioner.reset();
  EXPECT_DOUBLE_EQ(time_between(cell, "up", "side"), 20);
}

Plan plan_with_load_pose(const std::vector<std::string>& orientations) {
  Plan plan = plain_plan();
  const std::vector<Robot> robots = plan.cell->robots;
  plan.cell = cell_with_axis();
  plan.cell->robots = robots;
  plan.cell->positioner->load_orientation = "up";
  for (const std::string& orientation : orientations) {
    auto& seams = plan.weldments[0].seams;
    seams.push_back(seam_along("S" + std::to_string(seams.size() + 1), {{250, 0, 0}, {350, 0, 0}}));
    seams.back().direction = "as-drawn";
    seams.back().orientation = orientation;
  }
  return plan;
}

// A seam takes 0.75 s in, 11.5 s and 0.85 s home (350 mm): 13.1 s.
TEST(LoadPose, ACycleBeginsAndEndsInIt) {
  const CycleResult there = cycle_of_plan(plan_with_load_pose({"up"}));
  EXPECT_NEAR(there.weld_s, 13.1, 1e-9);
  EXPECT_EQ(there.orientation_s, 0);
  const Plan plan = plan_with_load_pose({"side"});
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.weld_s, 4.5 + 13.1 + 4.5, 1e-9);
  EXPECT_NEAR(cycle.orientation_s, 9, 1e-9);
  const auto turns = moves_of(cycle, MoveKind::orientation);
  ASSERT_EQ(turns.size(), 2u);
  EXPECT_EQ(turns[0].start_s, 0);
  EXPECT_EQ(turns[0].seam, "S1");
  EXPECT_EQ(turns[1].seam, "");
  EXPECT_NEAR(turns[1].start_s, 17.6, 1e-9);
  EXPECT_NEAR(*cycle.lower_bound_s, 22.1, 1e-9);  // nothing of it can be saved
  for (const auto& sentence : check_timeline(plan, plan.weldments[0], evaluation_of(plan), cycle))
    ADD_FAILURE() << sentence;
}

TEST(LoadPose, HalfATurnCostsMoreThanAQuarter) {
  // up -> side 4.5, side -> down 4.5, down -> up 7.5.
  const CycleResult cycle = cycle_of_plan(plan_with_load_pose({"side", "down"}));
  EXPECT_NEAR(cycle.weld_s, 4.5 + 13.1 + 4.5 + 13.1 + 7.5, 1e-9);
  EXPECT_NEAR(*cycle.lower_bound_s, 42.7, 1e-9);
}

TEST(LoadPose, TheBoundTakesTheShortestWayThroughTheOrientations) {
  // up, side, down, back: round by quarters, 4 * 4.5; without a load orientation the last one is saved.
  Plan plan = plan_with_load_pose({"down", "up", "back", "side"});
  const auto model = [&] { return compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model; };
  EXPECT_NEAR(least_turns_s(model()), 18, 1e-9);
  EXPECT_NEAR(least_return_s(model()), 4.5, 1e-9);  // five turns at least
  plan.cell->positioner->load_orientation.clear();
  EXPECT_NEAR(least_turns_s(model()), 13.5, 1e-9);
  plan.cell->positioner.reset();
  EXPECT_NEAR(least_turns_s(model()), 60, 1e-9);
}

TEST(LoadPose, AnOrientationWithoutAnglesIsFound) {
  const CycleResult cycle = cycle_of_plan(plan_with_load_pose({"unknown"}));
  const Findings found = findings_of(cycle.findings, "cycle.positioner.axes");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_NEAR(cycle.orientation_s, 40, 1e-9);
  Plan named = plan_with_load_pose({"unknown"});
  named.cell->positioner->turns = {{"up", "unknown", 5, {}}};
  EXPECT_TRUE(findings_of(cycle_of_plan(named).findings, "cycle.positioner.axes").empty());
  EXPECT_TRUE(
      findings_of(cycle_of_plan(plan_with_load_pose({"side"})).findings, "cycle.positioner.axes").empty());
}

}  // namespace
}  // namespace seamtakt::test
