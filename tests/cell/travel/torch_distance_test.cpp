// Torches apart: exact distances of moving points, and the scheduler that keeps them.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "cell/cell_plan.hpp"
#include "cell/timeline_check.hpp"
#include "cell/travel/torch_distance.hpp"

namespace seamtakt::test {
namespace {

TEST(TorchDistance, IsLeastWhereTheyPassEachOther) {
  const TorchPiece a{{0, 0, 0}, {100, 0, 0}, 0, 10};
  EXPECT_NEAR(least_distance_mm(a, {{100, 50, 0}, {0, 50, 0}, 0, 10}), 50, 1e-12);
  EXPECT_NEAR(least_distance_mm(a, {{0, 30, 40}, {100, 30, 40}, 0, 10}), 50, 1e-12);
  // The other is where this one ends, but begins 5 s later: 50 mm ahead, and stays so until 10 s.
  EXPECT_NEAR(least_distance_mm(a, {{100, 0, 0}, {200, 0, 0}, 5, 15}), 50, 1e-12);
  EXPECT_TRUE(std::isinf(least_distance_mm(a, {{0, 0, 0}, {100, 0, 0}, 11, 12})));
}

void expect_delays(const TorchPiece& a, const TorchPiece& b, double distance_mm, double from_s, double to_s) {
  const auto delays = delays_too_near(a, b, distance_mm);
  ASSERT_TRUE(delays);
  EXPECT_NEAR(delays->from_s, from_s, 1e-9);
  EXPECT_NEAR(delays->to_s, to_s, 1e-9);
}

TEST(TorchDistance, SaysByHowMuchAStepMustBeDelayed) {
  const TorchPiece a{{0, 0, 0}, {100, 0, 0}, 0, 10};
  // Side by side at 50 mm, 10 mm/s: nearer than 60 mm while less than sqrt(3600 - 2500) mm apart along the
  // seam.
  expect_delays(a, {{0, 50, 0}, {100, 50, 0}, 0, 10}, 60, -std::sqrt(1100) / 10, std::sqrt(1100) / 10);
  // Towards each other they always meet, unless one has ended.
  expect_delays(a, {{100, 50, 0}, {0, 50, 0}, 0, 10}, 60, -10, 10);
  // Across each other: |a - b|^2 is least half-way between their times at the crossing, 50 s^2 mm^2.
  expect_delays({{-100, 0, 0}, {100, 0, 0}, 0, 20}, {{0, -100, 0}, {0, 100, 0}, 0, 20}, 30, -std::sqrt(18),
                std::sqrt(18));
  EXPECT_FALSE(delays_too_near(a, {{0, 50, 0}, {100, 50, 0}, 0, 10}, 49));
}

/// Two seams side by side, 50 mm apart; both robots are 250 mm away (0.75 s) and begin to weld at once.
Plan plan_side_by_side() {
  Plan plan = plain_plan();
  plan.cell->robots = {robot_at("R1", {-250, 0, 0}), robot_at("R2", {-250, 50, 0})};
  plan.weldments[0].seams = {seam_along("S1", {{0, 0, 0}, {100, 0, 0}}),
                             seam_along("S2", {{0, 50, 0}, {100, 50, 0}})};
  plan.weldments[0].seams[0].robots = {"R1"};
  plan.weldments[0].seams[1].robots = {"R2"};
  return plan;
}

TEST(TorchesApart, TheLaterOneWaitsAsLongAsNeeded) {
  Plan plan = plan_side_by_side();
  EXPECT_EQ(cycle_of_plan(plan).wait_s, 0);
  plan.cell->min_torch_distance_mm = 60;
  const CycleResult cycle = cycle_of_plan(plan);
  const auto waits = moves_of(cycle, MoveKind::wait);
  ASSERT_EQ(waits.size(), 1u);
  EXPECT_EQ(waits[0].robot, "R2");
  EXPECT_NEAR(waits[0].end_s - waits[0].start_s, std::sqrt(1100) / 10, 1e-9);
  EXPECT_EQ(waits[0].cause, WaitCause::apart);
  EXPECT_EQ(waits[0].why.english(), "torch of R1 at S1 too near");
  EXPECT_NEAR(cycle.weld_s, 0.75 + std::sqrt(1100) / 10 + 11.5 + 0.85, 1e-9);
  plan.cell->min_torch_distance_mm = 50;  // as far as they are
  EXPECT_EQ(cycle_of_plan(plan).wait_s, 0);
}

TEST(TorchesApart, PairsAreExempt) {
  Plan plan = plan_side_by_side();
  plan.cell->min_torch_distance_mm = 60;
  plan.weldments[0].seams[1].with = "S1";
  EXPECT_EQ(cycle_of_plan(plan).wait_s, 0);
}

TEST(BegunTogether, TheFirstRobotWaitsForTheOther) {
  Plan plan = plan_side_by_side();
  plan.weldments[0].seams[0].with = "S2";
  plan.cell->robots[1].home_mm = {-1250, 50, 0};  // 1.25 + 0.25 + 0.25 = 1.75 s away
  const CycleResult cycle = cycle_of_plan(plan);
  const auto waits = moves_of(cycle, MoveKind::wait);
  ASSERT_EQ(waits.size(), 1u);
  EXPECT_EQ(waits[0].robot, "R1");
  EXPECT_NEAR(waits[0].end_s - waits[0].start_s, 1.0, 1e-9);
  EXPECT_EQ(waits[0].cause, WaitCause::together);
  EXPECT_EQ(waits[0].why.english(), "S2 is begun at the same time");
  for (const Move& start : moves_of(cycle, MoveKind::start)) EXPECT_NEAR(start.start_s, 1.75, 1e-9);
  const Findings found = findings_of(cycle.findings, "cycle.with");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_TRUE(findings_of(cycle_of_plan(plan_side_by_side()).findings, "cycle.with").empty());
}

TEST(BegunTogether, TwoRobotsAreTakenWhereOneCouldWeldBoth) {
  Plan plan = plan_side_by_side();
  for (Seam& seam : plan.weldments[0].seams) seam.robots.clear();
  plan.weldments[0].seams[0].with = "S2";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_EQ(arcs_of(cycle, "R1").size(), 1u);
  EXPECT_EQ(arcs_of(cycle, "R2").size(), 1u);
}

TEST(BegunTogether, APairWaitsForWhatEitherComesAfter) {
  Plan plan = plan_side_by_side();
  plan.weldments[0].seams.push_back(seam_along("S3", {{1000, 0, 0}, {1100, 0, 0}}));
  plan.weldments[0].seams[2].robots = {"R2"};
  plan.weldments[0].seams[1].after = {"S3"};
  plan.weldments[0].seams[0].with = "S2";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_TRUE(cycle.unwelded.empty());
  const auto starts = moves_of(cycle, MoveKind::start, "S1"), others = moves_of(cycle, MoveKind::start, "S2");
  ASSERT_EQ(starts.size(), 1u);
  ASSERT_EQ(others.size(), 1u);
  EXPECT_NEAR(starts[0].start_s, others[0].start_s, 1e-9);
  EXPECT_GE(starts[0].start_s, moves_of(cycle, MoveKind::end, "S3")[0].end_s);
}

TEST(BegunTogether, WhatCannotBeIsFoundAndWeldedAlone) {
  const auto sentence_of = [](const std::function<void(Plan&)>& change, std::size_t pairs = 0) {
    Plan plan = plan_side_by_side();
    plan.weldments[0].seams[0].with = "S2";
    change(plan);
    const CycleResult cycle = cycle_of_plan(plan);
    const Findings found = findings_of(cycle.findings, "cycle.with.impossible");
    EXPECT_EQ(found.size(), 1u);
    EXPECT_EQ(findings_of(cycle.findings, "cycle.with").size(), pairs);
    if (found.empty()) return std::string();
    EXPECT_EQ(found[0].severity, Severity::fail);
    EXPECT_FALSE(arcs_of(cycle, "R1").empty());
    return found[0].sentence.english();
  };
  const auto expect = [](const std::string& text, const char* part) {
    EXPECT_NE(text.find(part), std::string::npos) << text;
  };
  expect(sentence_of([](Plan& plan) { plan.weldments[0].seams[1].robots = {"R1"}; }), "one robot alone");
  expect(sentence_of([](Plan& plan) { plan.weldments[0].seams[1].by = "manual"; }), "no robot of the cell");
  expect(sentence_of([](Plan& plan) { plan.weldments[0].seams[1].after = {"S1"}; }), "before the other");
  expect(sentence_of([](Plan& plan) { plan.weldments[0].seams[0].with = "S1"; }), "the seam itself");
  expect(sentence_of([](Plan& plan) {
           plan.cell->zones.resize(1);
           plan.cell->zones[0].id = "Z";
           plan.cell->zones[0].seams = {"W/S1", "W/S2"};
         }),
         "one zone");
  expect(sentence_of([](Plan& plan) {
           plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
           plan.weldments[0].seams[0].orientation = "up";
           plan.weldments[0].seams[1].orientation = "down";
         }),
         "different orientations");
  expect(sentence_of(
             [](Plan& plan) {
               plan.weldments[0].seams.push_back(seam_along("S3", {{1000, 0, 0}, {1100, 0, 0}}));
               plan.weldments[0].seams[2].with = "S2";
             },
             1),
         "another seam");
}

TEST(Boxes, AnAirMoveThroughABoxWaitsForTheRobotInIt) {
  Plan plan = plain_plan();
  plan.cell->robots = {robot_at("R1", {1000, -250, 0}), robot_at("R2", {0, 0, 0})};
  plan.weldments[0].seams = {seam_along("S1", {{1000, 0, 0}, {1100, 0, 0}}),
                             seam_along("S2", {{2000, 0, 0}, {2100, 0, 0}})};
  plan.weldments[0].seams[0].robots = {"R1"};
  plan.weldments[0].seams[1].robots = {"R2"};
  EXPECT_NEAR(cycle_of_plan(plan).weld_s, 2.5 + 11.5 + 2.6, 1e-9);
  plan.cell->zones.resize(1);
  plan.cell->zones[0].id = "middle";
  plan.cell->zones[0].box_mm = {{1200, 50, 50}, {900, -50, -50}};
  // R1 is in the box until 0.75 + 11.5; only then R2 drives through it, and home again after R1 has left it.
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.weld_s, 12.25 + 2.5 + 11.5 + 2.6, 1e-9);
  const auto waits = moves_of(cycle, MoveKind::wait);
  ASSERT_EQ(waits.size(), 2u);
  EXPECT_EQ(waits[0].robot, "R1");  // its way home leads out of the box, which R2 has until it arrives
  EXPECT_NEAR(waits[0].start_s, 12.25, 1e-9);
  EXPECT_NEAR(waits[0].end_s, 14.75, 1e-9);
  EXPECT_EQ(waits[1].robot, "R2");
  EXPECT_NEAR(waits[1].end_s, 12.25, 1e-9);
  EXPECT_EQ(waits[1].why.english(), "zone middle held by R1");
  plan.cell->robots[1].clearance_mm = 300;  // over the box
  EXPECT_EQ(moves_of(cycle_of_plan(plan), MoveKind::wait).size(), 0u);
}

/// Two seams of 10 s arc each, by one robot.
Plan plan_in_a_row() {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}),
                             seam_along("S2", {{350, 0, 0}, {450, 0, 0}})};
  return plan;
}

TEST(Upkeep, TheWayToTheCleanerAndBack) {
  Plan plan = plan_in_a_row();
  const CycleResult before = cycle_of_plan(plan);
  plan.cell->torch_service = TorchService{};
  plan.cell->torch_service->every_arc_s = 15;
  plan.cell->torch_service->time_s = 7;
  plan.cell->torch_service->place_mm = Point_mm{350, 1000, 0};
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.service_s, 7, 1e-9);
  EXPECT_NEAR(cycle.air_s, before.air_s + 2 * 1.5, 1e-9);  // 1000 mm each way: 1.25 + 0.25
  EXPECT_NEAR(cycle.weld_s, before.weld_s + 10, 1e-9);
  for (const auto& sentence : check_timeline(plan, plan.weldments[0], evaluation_of(plan), cycle))
    ADD_FAILURE() << sentence;
}

TEST(Upkeep, TipsAndSpoolsAreMovesOfTheirOwn) {
  Plan plan = plan_in_a_row();
  const double plain_s = cycle_of_plan(plan).weld_s;
  plan.cell->robots[0].tip_change = TipChange{15, 30, {}};
  CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.tip_change_s, 30, 1e-9);
  EXPECT_NEAR(cycle.weld_s, plain_s + 30, 1e-9);
  ASSERT_EQ(moves_of(cycle, MoveKind::tip_change, "S2").size(), 1u);
  plan.cell->robots[0].tip_change = TipChange{20, 30, {}};  // both seams together
  EXPECT_EQ(cycle_of_plan(plan).tip_change_s, 0);
  plan.cell->robots[0].spool_kg = 1;
  plan.cell->robots[0].spool_change_s = 90;
  Evaluation evaluation = evaluation_of(plan);
  for (PassEvaluation& pass : evaluation.passes) pass.wire_g = 500;
  EXPECT_EQ(cycle_given(plan, plan.weldments[0], evaluation).spool_change_s, 0);
  for (PassEvaluation& pass : evaluation.passes) pass.wire_g = 600;
  cycle = cycle_given(plan, plan.weldments[0], evaluation);
  EXPECT_NEAR(cycle.spool_change_s, 90, 1e-9);
  EXPECT_NEAR(cycle.weld_s, plain_s + 90, 1e-9);
}

TEST(Upkeep, ATipIsChangedBetweenTheRunsOfASeam) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {550, 0, 0}})};
  plan.weldments[0].seams[0].intermittent = Intermittent{100, 100, {}};  // two runs of 10 s
  const double plain_s = cycle_of_plan(plan).weld_s;
  plan.cell->robots[0].tip_change = TipChange{15, 30, {}};
  EXPECT_NEAR(cycle_of_plan(plan).weld_s, plain_s + 30, 1e-9);
}

TEST(Tracking, TakesItsTimeInEachTrackedPass) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, 2)};
  const double plain_s = cycle_of_plan(plan).weld_s;
  plan.cell->robots[0].tracking_s = 1.5;
  EXPECT_EQ(cycle_of_plan(plan).weld_s, plain_s);
  plan.weldments[0].seams[0].tracking = "none";
  EXPECT_EQ(cycle_of_plan(plan).weld_s, plain_s);
  plan.weldments[0].seams[0].tracking = "optical";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(cycle.weld_s, plain_s + 3, 1e-9);
  EXPECT_NEAR(cycle.sense_s, 3, 1e-9);
}

}  // namespace
}  // namespace seamtakt::test
