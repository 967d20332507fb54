// Air moves up, over and down, robots on tracks, and what a robot reaches. Air moves of at least 250 mm take
// d/1000 + 0.25 s, shorter ones 2*sqrt(d/4000); the wrist adds 0.25 s (cell_plan.hpp).
#include <gtest/gtest.h>

#include <cmath>

#include "cell/cell_plan.hpp"
#include "cell/timeline/without_robot.hpp"
#include "cell/timeline_check.hpp"
#include "cell/travel/box_crossing.hpp"
#include "cell/travel/changeover.hpp"
#include "cell/travel/reach.hpp"

namespace seamtakt::test {
namespace {

Plan plan_of_one_seam(const Point_mm& home_mm, std::size_t passes = 1) {
  Plan plan = plain_plan();
  plan.cell->robots = {robot_at("R1", home_mm)};
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, passes)};
  plan.weldments[0].seams[0].direction = "as-drawn";
  return plan;
}

TEST(AirWay, GoesUpToTheClearanceOverAndDown) {
  Plan plan = plan_of_one_seam({0, 0, 500});
  plan.cell->robots[0].clearance_mm = 500;
  const CycleResult cycle = cycle_of_plan(plan);
  // Over 250 mm with the wrist 0.75, down 500 mm 0.75; 11.5; up 0.75, over 350 mm 0.85 to home, which is that
  // high.
  EXPECT_NEAR(cycle.weld_s, 1.5 + 11.5 + 1.6, 1e-9);
  EXPECT_NEAR(cycle.air_s, 3.1, 1e-9);
  const auto air = moves_of(cycle, MoveKind::air);
  ASSERT_EQ(air.size(), 4u);
  EXPECT_EQ(air[0].points, (std::vector<Point_mm>{{0, 0, 500}, {250, 0, 500}}));
  EXPECT_EQ(air[1].points, (std::vector<Point_mm>{{250, 0, 500}, {250, 0, 0}}));
  EXPECT_EQ(air[2].points, (std::vector<Point_mm>{{350, 0, 0}, {350, 0, 500}}));
  EXPECT_NEAR(air[1].start_s, 0.75, 1e-12);
  EXPECT_NEAR(*cycle.lower_bound_s, 14.6, 1e-9);
}

TEST(AirWay, LeavesASeamByTheApproachAndNoneWithinIt) {
  Plan plan = plan_of_one_seam({0, 0, 40}, 2);
  plan.cell->robots[0].approach_mm = 40;
  // 40 mm take 0.2 s. In: over 250 mm 0.75, down 0.2; back over 100 mm: 0.2 + sqrt(0.1) + 0.25 + 0.2; home:
  // up 0.2, over 350 mm 0.85.
  EXPECT_NEAR(cycle_of_plan(plan).weld_s, 0.95 + 11.5 + 0.65 + std::sqrt(0.1) + 11.5 + 1.05, 1e-9);
  // The clearance doesn't count within the seam: the way back stays the same.
  plan.cell->robots[0].clearance_mm = 500;
  plan.cell->robots[0].home_mm = {0, 0, 500};
  EXPECT_NEAR(cycle_of_plan(plan).weld_s, 1.5 + 11.5 + 0.65 + std::sqrt(0.1) + 11.5 + 1.6, 1e-9);
}

TEST(AirWay, PlacesThatCoincideTakeTheWristAlone) {
  Motion motion{1000, 4000, 0.25, {}, 40.0, 500.0, {}};
  const Point_mm at{100, 0, 0};
  EXPECT_DOUBLE_EQ(air_way(motion, {at, true}, {at, true}).time_s, 0.25);
  EXPECT_EQ(air_way(motion, {at, true}, {{100, 0, 900}, true}).legs[0].to, (Point_mm{100, 0, 500}));
}

TEST(AirWay, KeysThatChangeNothingGiveTheSameFigures) {
  Plan plan = plan_of_one_seam({0, 0, 500}, 2);
  const CycleResult plain = cycle_of_plan(plan);
  plan.cell->robots[0].approach_mm = 0;
  plan.cell->robots[0].clearance_mm = -1000;
  plan.cell->robots[0].base_mm = Point_mm{0, 0, 0};
  plan.cell->robots[0].reach_mm = 9000;
  plan.cell->min_torch_distance_mm = 1000;
  plan.cell->zones.resize(1);
  plan.cell->zones[0].id = "elsewhere";
  plan.cell->zones[0].box_mm = {{8000, 8000, 8000}, {9000, 9000, 9000}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.weld_s, plain.weld_s);
  EXPECT_EQ(cycle.air_s, plain.air_s);
  EXPECT_EQ(*cycle.lower_bound_s, *plain.lower_bound_s);
  EXPECT_EQ(cycle.moves.size(), plain.moves.size());
}

TEST(AirWay, ADetourNeverTakesLessTime) {
  const Motion motions[]{{1000, 4000, 0.25, {}, 40.0, 500.0, {}},
                         {1000, 4000, 0, {}, {}, 300.0, CellTrack{0, 0, 2000, 400, 300}},
                         {500, 9000, 0.1, {}, 60.0, {}, CellTrack{1, -100, 900, 200, 900}}};
  unsigned state = 1;
  const auto next = [&] { return double((state = state * 1664525u + 1013904223u) >> 20) / 2; };
  for (const Motion& motion : motions)
    for (int i = 0; i < 3000; ++i) {
      const AirPlace a{{next(), next(), next()}, true}, b{{next(), next(), next()}, false},
          c{{next(), next(), next()}, i % 2 == 0};
      ASSERT_LE(air_way(motion, a, b).time_s,
                air_way(motion, a, c).time_s + air_way(motion, c, b).time_s + 1e-9);
    }
}

Plan plan_on_track() {
  Plan plan = plain_plan();
  Robot& robot = plan.cell->robots[0];
  robot.base_mm = Point_mm{0, -1000, 0};
  robot.reach_mm = 1200;
  robot.track = Track{"x", 0, 5000, 500, 500, {}};
  plan.weldments[0].seams = {seam_along("S1", {{4000, 0, 0}, {4100, 0, 0}})};
  plan.weldments[0].seams[0].direction = "as-drawn";
  return plan;
}

TEST(Track, TravelsAtTheSameTimeAsTheTorch) {
  // The torch would need 4.5 s for 4000 mm, the base 4000/500 + 1 = 9 s; home from 4100 mm 9.2 s.
  const CycleResult cycle = cycle_of_plan(plan_on_track());
  EXPECT_NEAR(cycle.weld_s, 9 + 11.5 + 9.2, 1e-9);
  EXPECT_EQ(moves_of(cycle, MoveKind::air).size(), 2u);
  Plan quick = plan_on_track();
  quick.cell->robots[0].track->speed_mm_s = quick.cell->robots[0].track->acceleration_mm_s2 = 1e6;
  EXPECT_NEAR(cycle_of_plan(quick).weld_s, 4.5 + 11.5 + 4.6, 1e-9);
}

TEST(Reach, ANamedRobotThatCannotReachIsFoundAndNotUsed) {
  Plan plan = plan_on_track();
  EXPECT_TRUE(cycle_of_plan(plan).findings.empty());
  plan.cell->robots[0].track.reset();
  Robot other = robot_at("R2", {4000, -500, 0});
  other.base_mm = Point_mm{4000, -1000, 0};
  other.reach_mm = 1200;
  plan.cell->robots.push_back(other);
  // Not named: whoever reaches it welds it, and nothing is said.
  CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(arcs_of(cycle, "R2"), (std::vector<std::string>{"S1/1"}));
  EXPECT_TRUE(cycle.findings.empty());
  plan.weldments[0].seams[0].robots = {"R1", "R2"};
  cycle = cycle_of_plan(plan);
  EXPECT_EQ(arcs_of(cycle, "R2").size(), 1u);
  const Findings found = findings_of(cycle.findings, "cycle.robot.reach");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::fail);
  EXPECT_EQ(found[0].where, "W/S1");
  EXPECT_NEAR(*found[0].value, std::hypot(4100, 1000) - 1200, 1e-9);  // of the farther end
  EXPECT_TRUE(cycle.unwelded.empty());
}

TEST(Reach, ASeamThatNobodyReachesIsNotWelded) {
  Plan plan = plan_on_track();
  plan.cell->robots[0].track->to_mm = 1000;  // the base stays at 1000: hypot(3100, 1000) to the farther end
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.unwelded, (std::vector<std::string>{"S1"}));
  ASSERT_EQ(findings_of(cycle.findings, "cycle.robot.none").size(), 1u);
  EXPECT_EQ(findings_of(cycle.findings, "cycle.weldment.unwelded").size(), 1u);
  EXPECT_NEAR(*beyond_reach_mm(plan.cell->robots[0], plan.weldments[0].seams[0]),
              std::hypot(3100, 1000) - 1200, 1e-9);
  EXPECT_FALSE(beyond_reach_mm(robot_at("R3", {0, 0, 0}), plan.weldments[0].seams[0]));
}

TEST(Reach, ARobotOutLeavesWhatOnlyItReaches) {
  Plan plan = plan_on_track();
  Robot other = robot_at("R2", {0, 0, 0});  // as R1, but without its track
  other.base_mm = Point_mm{0, -1000, 0};
  other.reach_mm = 1200;
  plan.cell->robots.push_back(other);
  const PlanWithoutRobot without = without_robot(plan, "R1", "--without-robot");
  EXPECT_EQ(without.unreached, (std::vector<std::string>{"W/S1"}));
  EXPECT_TRUE(without.taken_over.empty());
  EXPECT_TRUE(without_robot(plan, "R2", "--without-robot").findings.empty());
  plan.cell->robots[1].track = plan.cell->robots[0].track;
  EXPECT_EQ(without_robot(plan, "R1", "--without-robot").taken_over, (std::vector<std::string>{"W/S1"}));
}

TEST(Reach, ATrackCountsFromTheBase) {
  Robot robot = robot_at("R1", {0, 0, 0});
  robot.base_mm = Point_mm{500, 0, 0};
  robot.track = Track{"x", 300, -200, 500, 500, {}};
  const CellTrack track = *track_of(robot);
  EXPECT_EQ(track.from_mm, 300);
  EXPECT_EQ(track.to_mm, 800);
  EXPECT_EQ(base_along_mm(track, {0, 0, 0}), 300);
  EXPECT_EQ(base_along_mm(track, {555, 0, 0}), 555);
}

TEST(BoxCrossing, ALineThroughTheInsideOnly) {
  const Point_mm low{0, 0, 0}, high{100, 100, 100};
  EXPECT_TRUE(passes_through({-50, 50, 50}, {150, 50, 50}, low, high));
  EXPECT_TRUE(passes_through({50, 50, 50}, {60, 50, 50}, low, high));
  EXPECT_TRUE(
      passes_through({-10, 80, 50}, {80, 170, 50}, low, high));  // enters at (0, 90), leaves at (10, 100)
  EXPECT_FALSE(passes_through({-10, 95, 50}, {80, 185, 50}, low, high));    // is at y = 105 when x = 0
  EXPECT_FALSE(passes_through({-50, 100, 50}, {150, 100, 50}, low, high));  // along a face
  EXPECT_FALSE(passes_through({-50, 50, 50}, {-10, 50, 50}, low, high));
}

TEST(Changeover, APairGoesBeforeTheCellsTime) {
  Plan plan = plain_plan();
  EXPECT_EQ(changeover_s(plan, "A", "B"), 0);
  plan.cell->changeover_s = 600;
  plan.cell->changeovers = {{"A", "B", 240, {}}, {"B", "B", 30, {}}};
  EXPECT_EQ(changeover_s(plan, "A", "B"), 240);
  EXPECT_EQ(changeover_s(plan, "B", "A"), 600);
  EXPECT_EQ(changeover_s(plan, "A", "A"), 0);
  EXPECT_EQ(changeover_s(plan, "B", "B"), 30);
  plan.cell.reset();
  EXPECT_EQ(changeover_s(plan, "A", "B"), 0);
}

}  // namespace
}  // namespace seamtakt::test
