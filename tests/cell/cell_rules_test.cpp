#include <gtest/gtest.h>

#include "base/error.hpp"
#include "twin_plan.hpp"

namespace seamtakt::test {
namespace {

// The sums in the comments: way in + sensing + (1.5 + arc) a run + way home, as robot_at() has it.
// An air move of 250 mm takes 0.5 + 0.25 s, 350 mm 0.85 s, 100 mm (sqrt) 0.31623 + 0.25 s.

TEST(Cell, RobotsWeldSideBySide) {
  const Plan plan = twin_plan();
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.weld_s, 13.1, 1e-9);
  EXPECT_NEAR(cycle.arc_on_s, 20, 1e-9);
  EXPECT_NEAR(cycle.air_s, 3.2, 1e-9);
  EXPECT_NEAR(cycle.wait_s, 0, 1e-9);
  EXPECT_NEAR(cycle.arc_on_ratio, 20 / 26.2, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, RobotsTakeTurnsInAZone) {
  Plan plan = twin_plan();
  plan.cell->zones = {{"Z", {"W/S1", "W/S2"}, {}, {}}};
  const CycleResult cycle = cycle_of_plan(plan);
  // R2 leaves when R1 has ended S1, at 0.75 + 11.5.
  EXPECT_NEAR(cycle.wait_s, 12.25, 1e-9);
  EXPECT_NEAR(cycle.weld_s, 12.25 + 13.1, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, AZoneOfAnotherWeldmentBindsNobody) {
  Plan plan = twin_plan();
  plan.cell->zones = {{"Z", {"V/S1", "W/S2"}, {}, {}}};
  EXPECT_NEAR(cycle_of_plan(plan).weld_s, 13.1, 1e-9);
}

TEST(Cell, ASeamWaitsForTheOneItComesAfterOnAnotherRobot) {
  Plan plan = twin_plan();
  plan.weldments[0].seams[0].after = {"S2"};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.weld_s, 12.25 + 13.1, 1e-9);
  EXPECT_TRUE(findings_of(cycle.findings, "cycle.order.after").empty());
  expect_rules_kept(plan, cycle);
}

TEST(Cell, AFileOrderAgainstAfterIsBentAndSaidSo) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}),
                             seam_along("S2", {{250, 0, 0}, {250, 100, 0}}),
                             seam_along("S3", {{250, 0, 0}, {250, 0, 100}})};
  plan.weldments[0].seams[0].after = {"S3"};
  const CycleResult cycle = cycle_of_plan(plan);
  const std::vector<std::string> order{"S2/1", "S3/1", "S1/1"};
  EXPECT_EQ(arcs_of(cycle, "R1"), order);
  const Findings findings = findings_of(cycle.findings, "cycle.order.after");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].where, "W/S1");
  expect_rules_kept(plan, cycle);
}

TEST(Cell, RobotsThatWaitForEachOtherAreSetFree) {
  // R1: S1 (after S4), S3; R2: S2 (after S3), S4. Each head comes after the seam behind the other robot's
  // head.
  Plan plan = twin_plan();
  auto& seams = plan.weldments[0].seams;
  seams.push_back(seam_along("S3", {{250, 0, 0}, {350, 0, 0}}));
  seams.push_back(seam_along("S4", {{250, 1000, 0}, {350, 1000, 0}}));
  seams[2].robots = {"R1"};
  seams[3].robots = {"R2"};
  seams[0].after = {"S4"};
  seams[1].after = {"S3"};
  plan.cell->zones = {{"Z", {"W/S1", "W/S2", "W/S3", "W/S4"}, {}, {}}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.arc_on_s, 40, 1e-9);
  EXPECT_FALSE(findings_of(cycle.findings, "cycle.order.after").empty());
  expect_rules_kept(plan, cycle);
}

TEST(Cell, ACircleOfAfterIsRefused) {
  Plan plan = twin_plan();
  plan.weldments[0].seams[0].after = {"S2"};
  plan.weldments[0].seams[1].after = {"S1"};
  EXPECT_THROW(cycle_of_plan(plan), InputError);
  plan.weldments[0].seams[1].after = {"S2"};
  EXPECT_THROW(cycle_of_plan(plan), InputError);
  plan.weldments[0].seams[1].after = {"S9"};
  EXPECT_THROW(cycle_of_plan(plan), InputError);
}

TEST(Cell, ThePositionerTurnsOnlyWhenAllRobotsAreHome) {
  Plan plan = twin_plan();
  auto& seams = plan.weldments[0].seams;
  plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  plan.cell->orientation_change_s = 8;
  seams.push_back(seam_along("S3", {{250, 0, 0}, {350, 0, 0}}));
  seams[0].orientation = "down";
  seams[1].orientation = "down";
  seams[2].orientation = "up";
  seams[2].robots = {"R1"};
  seams[1].path_mm[1] = {450, 1000, 0};  // 20 s of arc: R2 is home at 0.75 + 21.5 + 0.95 = 23.2
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.orientation_s, 8, 1e-9);
  EXPECT_NEAR(cycle.wait_s, 23.2 - 13.1, 1e-9);
  EXPECT_NEAR(cycle.weld_s, 23.2 + 8 + 13.1, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, TheFirstOrientationIsThereAtTheBeginning) {
  Plan plan = twin_plan();
  plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  plan.cell->orientation_change_s = 8;
  plan.weldments[0].seams[1].orientation = "down";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(cycle.orientation_s, 0);
  EXPECT_NEAR(cycle.weld_s, 13.1, 1e-9);
}

TEST(Cell, APassWaitsUntilTheOneBeforeHasCooled) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, 3)};
  Evaluation evaluation = evaluation_of(plan);
  evaluation.seams[0].interpass_waits_s = {30, 0};
  const CycleResult cycle = cycle_given(plan, plan.weldments[0], evaluation);
  // Three passes to and fro, no air move between them; it ends at the far end.
  EXPECT_NEAR(cycle.wait_s, 30, 1e-9);
  EXPECT_NEAR(cycle.weld_s, 0.75 + 3 * 11.5 + 30 + 0.85, 1e-9);
  expect_rules_kept(plan, evaluation, cycle);
}

TEST(Cell, TheWayBackIsPartOfTheCooling) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {500, 0, 0}}, 2)};
  plan.weldments[0].seams[0].direction = "as-drawn";
  Evaluation evaluation = evaluation_of(plan);
  evaluation.seams[0].interpass_waits_s = {30};
  const CycleResult cycle = cycle_given(plan, plan.weldments[0], evaluation);
  EXPECT_NEAR(cycle.wait_s, 30 - 0.75, 1e-9);
  EXPECT_NEAR(cycle.weld_s, 0.75 + 2 * 26.5 + 30 + 1.0, 1e-9);
  expect_rules_kept(plan, evaluation, cycle);
}

TEST(Cell, VerticalSeamsAreWeldedAsDrawnWithAWayBack) {
  for (const char* position : {"PF", "PG"}) {
    Plan plan = plain_plan();
    plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {500, 0, 0}}, 2)};
    plan.weldments[0].seams[0].position = position;
    const CycleResult cycle = cycle_of_plan(plan);
    const std::vector<std::string> order{"S1/1", "S1/2"};
    EXPECT_EQ(arcs_of(cycle, "R1"), order);
    EXPECT_NEAR(cycle.air_s, 0.75 + 0.75 + 1.0, 1e-9) << position;  // in, back 250 mm, home 500 mm
    expect_rules_kept(plan, cycle);
  }
}

TEST(Cell, EvenPassesRunBackWhereTheSeamAllowsIt) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {500, 0, 0}}, 2)};
  const CycleResult cycle = cycle_of_plan(plan);
  const std::vector<std::string> order{"S1/1", "S1/2 reversed"};
  EXPECT_EQ(arcs_of(cycle, "R1"), order);
  EXPECT_NEAR(cycle.air_s, 1.5, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, EachRunOfAnIntermittentSeamHasItsStartAndEnd) {
  Plan plan = plain_plan();
  // 10 + 90 gap: runs at 0, 100, 200 of 210 mm; ends at 460 mm from home.
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {460, 0, 0}}, 2)};
  plan.weldments[0].seams[0].intermittent = Intermittent{10, 90, {}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.arc_on_s, 6, 1e-9);
  EXPECT_NEAR(cycle.start_end_s, 6 * 1.5, 1e-9);
  // In 0.75; four inner moves of 90 mm, 0.3 + 0.25; home 250 mm, 0.75.
  EXPECT_NEAR(cycle.air_s, 0.75 + 4 * 0.55 + 0.75, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, AClosedSeamOverlapsItsBeginning) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {
      seam_along("S1", {{250, 0, 0}, {350, 0, 0}, {350, 100, 0}, {250, 100, 0}, {250, 0, 0}}, 2)};
  plan.weldments[0].seams[0].overlap_mm = 10;
  plan.weldments[0].seams[0].direction = "as-drawn";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.arc_on_s, 82, 1e-9);
  // In 250 mm; back over the overlap of 10 mm, 0.1 + 0.25; home from 260 mm.
  EXPECT_NEAR(cycle.air_s, 0.75 + 0.35 + 0.76, 1e-9);
  const auto arcs = moves_of(cycle, MoveKind::arc);
  ASSERT_EQ(arcs.size(), 2u);
  EXPECT_EQ(arcs[0].points.size(), 6u);
  EXPECT_EQ(arcs[0].points.back(), (Point_mm{260, 0, 0}));
  expect_rules_kept(plan, cycle);
}

TEST(Cell, AClosedSeamWithoutOverlapNeedsNoWayBack) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {
      seam_along("S1", {{250, 0, 0}, {350, 0, 0}, {350, 100, 0}, {250, 100, 0}, {250, 0, 0}}, 2)};
  plan.weldments[0].seams[0].direction = "as-drawn";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.air_s, 0.75 + 0.75, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, TorchServiceFallsBeforeTheRunThatWouldPassIt) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, 5)};
  plan.cell->torch_service = TorchService{20, 7, {}, {}};
  const CycleResult cycle = cycle_of_plan(plan);
  // Passes of 10 s: two fill the 20 s exactly; services before passes 3 and 5.
  const auto services = moves_of(cycle, MoveKind::service);
  ASSERT_EQ(services.size(), 2u);
  EXPECT_EQ(services[0].pass, 3);
  EXPECT_EQ(services[1].pass, 5);
  EXPECT_NEAR(cycle.weld_s, 0.75 + 5 * 11.5 + 14 + 0.85, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, TorchServiceFallsBetweenTwoRunsToo) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {460, 0, 0}}, 2)};
  plan.weldments[0].seams[0].intermittent = Intermittent{10, 90, {}};
  plan.cell->torch_service = TorchService{2, 7, {}, {}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.service_s, 14, 1e-9);  // before runs 3 and 5 of the six
  EXPECT_NEAR(cycle.weld_s, 0.75 + 6 * 2.5 + 4 * 0.55 + 14 + 0.75, 1e-9);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, ARunThatNoServiceIntervalHoldsIsWeldedAndWarnedOf) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}),
                             seam_along("S2", {{250, 0, 0}, {270, 0, 0}})};
  plan.cell->torch_service = TorchService{5, 7, {}, {}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.service_s, 7, 1e-9);  // none before S1: the torch is fresh
  const Findings findings = findings_of(cycle.findings, "cycle.service.run-too-long");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].where, "W/S1/pass 1");
  EXPECT_EQ(findings[0].severity, Severity::warn);
  expect_rules_kept(plan, cycle);
}

Plan two_wire_plan() {
  Plan plan = plain_plan();
  plan.wires.resize(2);
  plan.wires[0].id = "W12";
  plan.wires[1].id = "W10";
  plan.schedules = {schedule_named("A", "W12"), schedule_named("B", "W10")};
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}),
                             seam_along("S2", {{250, 0, 0}, {350, 0, 0}})};
  plan.weldments[0].seams[1].schedules = {"B"};
  plan.cell->robots[0].loaded = Loaded{"W12", "", "", {}};
  return plan;
}

TEST(Cell, ARobotChangesItsWireWhereItCan) {
  Plan plan = two_wire_plan();
  plan.cell->robots[0].wire_change_s = 300;
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.wire_change_s, 300, 1e-9);
  const Findings back = findings_of(cycle.findings, "cycle.wire-change.back");
  ASSERT_EQ(back.size(), 1u);
  EXPECT_EQ(back[0].where, "W/R1");
  expect_rules_kept(plan, cycle);
}

TEST(Cell, AWireChangeThatTakesNoTimeIsStillAMove) {
  Plan plan = two_wire_plan();
  plan.cell->robots[0].wire_change_s = 0;
  const CycleResult cycle = cycle_of_plan(plan);
  ASSERT_EQ(moves_of(cycle, MoveKind::wire_change).size(), 1u);
  EXPECT_EQ(moves_of(cycle, MoveKind::wire_change)[0].seam, "S2");
  expect_rules_kept(plan, cycle);
}

TEST(Cell, ASeamGoesToTheNextRobotOfItsListThatHasTheWire) {
  Plan plan = two_wire_plan();
  plan.cell->robots.push_back(robot_at("R2", {0, 0, 500}));
  plan.cell->robots[1].loaded = Loaded{"W10", "", "", {}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(arcs_of(cycle, "R2"), std::vector<std::string>{"S2/1"});
  ASSERT_EQ(findings_of(cycle.findings, "cycle.robot.next").size(), 1u);
  EXPECT_EQ(cycle.wire_change_s, 0);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, ASeamThatNoRobotCanWeldFailsAndIsLeftOut) {
  Plan plan = two_wire_plan();
  plan.weldments[0].seams[0].after = {"S2"};
  const CycleResult cycle = cycle_of_plan(plan);
  const Findings findings = findings_of(cycle.findings, "cycle.robot.none");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].where, "W/S2");
  EXPECT_EQ(findings[0].severity, Severity::fail);
  EXPECT_NEAR(cycle.weld_s, 13.1, 1e-9);
  expect_rules_kept(plan, evaluation_of(plan), cycle, {"S2"});
}

TEST(Cell, TheScheduleOverridesTheRobotsStartAndCrater) {
  Plan plan = plain_plan();
  plan.schedules[0].arc_start_s = 2;
  plan.schedules[0].crater_fill_s = 3;
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}})};
  EXPECT_NEAR(cycle_of_plan(plan).start_end_s, 2 + 3 + 0.25, 1e-9);
}

TEST(Cell, ManualSeamsDontCountAndComeFirst) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}),
                             seam_along("S2", {{250, 0, 0}, {350, 0, 0}})};
  plan.weldments[0].seams[0].by = "manual";
  plan.weldments[0].seams[1].after = {"S1"};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.weld_s, 13.1, 1e-9);
  const Findings findings = findings_of(cycle.findings, "cycle.after.manual");
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].where, "W/S2");
  EXPECT_EQ(findings[0].severity, Severity::note);
  expect_rules_kept(plan, cycle);
}

TEST(Cell, ARobotLeavesForASeamThatNoticesNoOtherAsSoonAsItIsFree) {
  // R1: S1 then S3 in the zone; R2: S2, long and free, then S4 in the zone: first come, first served.
  Plan plan = twin_plan();
  auto& seams = plan.weldments[0].seams;
  seams.push_back(seam_along("S3", {{250, 0, 0}, {350, 0, 0}}));
  seams.push_back(seam_along("S4", {{250, 1000, 0}, {350, 1000, 0}}));
  seams[2].robots = {"R1"};
  seams[3].robots = {"R2"};
  seams[0].path_mm[1] = {650, 0, 0};  // 40 s of arc
  plan.cell->zones = {{"Z", {"W/S3", "W/S4"}, {}, {}}};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.wait_s, 0, 1e-9);
  EXPECT_LT(moves_of(cycle, MoveKind::arc, "S4")[0].start_s, moves_of(cycle, MoveKind::arc, "S3")[0].start_s);
  expect_rules_kept(plan, cycle);
}

}  // namespace
}  // namespace seamtakt::test
