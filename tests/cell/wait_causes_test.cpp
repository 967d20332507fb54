// Why robots wait: each wait names what it ends with, and the causes add up to the waits.
#include <gtest/gtest.h>

#include "cell/cell_plan.hpp"
#include "cell/timeline/cycle_columns.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

std::vector<Move> waits_of(const CycleResult& cycle) {
  std::vector<Move> waits;
  for (const Move& move : cycle.moves)
    if (move.kind == MoveKind::wait) waits.push_back(move);
  return waits;
}

Seam seam_of_robot(const std::string& id, double x_mm, const std::string& robot, std::size_t passes = 1) {
  Seam seam = seam_along(id, {{x_mm, 500, 0}, {x_mm + 100, 500, 0}}, passes);
  seam.robots = {robot};
  return seam;
}

Plan plan_of_two_robots() {
  Plan plan = plain_plan();
  plan.cell->robots.push_back(robot_at("R2", {2000, 0, 0}));
  return plan;
}

TEST(WaitCauses, ASeamThatCoolsBetweenItsPasses) {
  Plan plan = plain_plan();
  plan.schedules[0].limits = ScheduleLimits{};
  plan.schedules[0].limits->interpass_C = Interval{{}, 180};
  plan.weldments[0].seams = {seam_of_robot("S1", 0, "R1", 2)};
  Evaluation evaluation = evaluation_of(plan);
  evaluation.seams[0].interpass_waits_s = {40};
  const auto waits = waits_of(cycle_given(plan, plan.weldments[0], evaluation));
  ASSERT_EQ(waits.size(), 1u);
  EXPECT_EQ(waits[0].cause, WaitCause::cooling);
  EXPECT_EQ(waits[0].why.english(), "cooling of S1 to 180 C before pass 2");
}

TEST(WaitCauses, AZoneThatAnotherRobotHolds) {
  Plan plan = plan_of_two_robots();
  plan.weldments[0].seams = {seam_of_robot("S1", 0, "R1"), seam_of_robot("S2", 300, "R2")};
  plan.cell->zones = {Zone{"other", {"W/S1"}, {}, {}}, Zone{"middle", {"W/S1", "W/S2"}, {}, {}}};
  const auto waits = waits_of(cycle_of_plan(plan));
  ASSERT_EQ(waits.size(), 1u);
  EXPECT_EQ(waits[0].robot, "R2");
  EXPECT_EQ(waits[0].cause, WaitCause::zone);
  EXPECT_EQ(waits[0].why.english(), "zone middle held by R1");
}

TEST(WaitCauses, ASeamThatComesBefore) {
  Plan plan = plan_of_two_robots();
  plan.weldments[0].seams = {seam_of_robot("S1", 0, "R1"), seam_of_robot("S2", 300, "R2")};
  plan.weldments[0].seams[1].after = {"S1"};
  const auto waits = waits_of(cycle_of_plan(plan));
  ASSERT_EQ(waits.size(), 1u);
  EXPECT_EQ(waits[0].cause, WaitCause::after);
  EXPECT_EQ(waits[0].why.english(), "after S1");
}

TEST(WaitCauses, APositionerThatHasToTurnAndARobotThatKeepsItFromTurning) {
  Plan plan = plan_of_two_robots();
  plan.cell->orientations = {Orientation{"up", {0, 0, 0}, {}, {}}, Orientation{"down", {180, 0, 0}, {}, {}}};
  plan.cell->orientation_change_s = 12;
  Seam first = seam_of_robot("S1", 0, "R1"), longer = seam_of_robot("S2", 300, "R2"),
       turned = seam_of_robot("S3", 0, "R1"), last = seam_of_robot("S4", 300, "R2");
  longer.path_mm[1][0] += 400;
  first.orientation = longer.orientation = "up";
  turned.orientation = last.orientation = "down";
  plan.weldments[0].seams = {first, longer, turned, last};
  const auto waits = waits_of(cycle_of_plan(plan));
  ASSERT_EQ(waits.size(), 2u);
  EXPECT_EQ(waits[0].robot, "R1");
  EXPECT_EQ(waits[0].cause, WaitCause::others);
  EXPECT_EQ(waits[0].why.english(), "R2 still at work before the positioner turns");
  EXPECT_EQ(waits[1].robot, "R2");
  EXPECT_EQ(waits[1].cause, WaitCause::positioner);
  EXPECT_DOUBLE_EQ(waits[1].end_s - waits[1].start_s, 12);
}

TEST(WaitCauses, OfTheDemoAddUpToItsWaits) {
  const Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  const Evaluation evaluation = evaluate(plan);
  for (const Weldment& weldment : plan.weldments) {
    const CycleResult cycle = cycle_given(plan, weldment, evaluation);
    double waited_s = 0;
    for (const Move& wait : waits_of(cycle)) {
      EXPECT_NE(wait.cause, WaitCause::none) << weldment.id << " at " << wait.start_s;
      EXPECT_FALSE(wait.why.is_empty());
      waited_s += wait.end_s - wait.start_s;
    }
    double summed_s = 0;
    for (const WaitSum& sum : wait_sums(cycle)) summed_s += sum.time_s;
    EXPECT_GT(summed_s, 0);
    EXPECT_NEAR(summed_s, cycle.wait_s, 1e-9 * cycle.wait_s);
    EXPECT_NEAR(waited_s, cycle.wait_s, 1e-9 * cycle.wait_s);
    for (const Move& move : cycle.moves)
      EXPECT_EQ(move.why.is_empty(), move.kind != MoveKind::wait) << "what isn't a wait needs no cause";
  }
}

}  // namespace
}  // namespace seamtakt::test
