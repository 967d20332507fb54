#include <gtest/gtest.h>

#include <cmath>

#include "base/error.hpp"
#include "cell/bound/lower_bound.hpp"
#include "cell/timeline/cycle_result.hpp"
#include "cell_plan.hpp"

namespace seamtakt::test {
namespace {

Plan two_seams() {
  Plan plan = plain_plan();
  plan.cell->robots.push_back(robot_at("R2", {0, 1000, 0}));
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, 2),
                             seam_along("S2", {{250, 1000, 0}, {350, 1000, 0}})};
  plan.weldments[0].seams[1].robots = {"R2"};
  return plan;
}

CellModel plan_model(const Plan& plan) {
  return compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model;
}

TEST(Scheduler, RefusesSequencesThatCannotBeWelded) {
  Plan plan = two_seams();
  plan.weldments[0].seams[1].after = {"S1"};
  plan.weldments[0].seams[1].direction = "as-drawn";
  const CellModel model = plan_model(plan);
  Scheduler scheduler(model);
  EXPECT_LT(scheduler.makespan_s({{0, 0, false}, {0, 0, true}, {1, 1, false}}), Scheduler::impossible);
  const std::vector<std::pair<const char*, Sequence>> refused{
      {"empty", {}},
      {"a pass missing", {{0, 0, false}, {1, 1, false}}},
      {"a pass too many", {{0, 0, false}, {0, 0, false}, {0, 0, false}}},
      {"after not kept", {{0, 0, false}, {1, 1, false}, {0, 0, false}}},
      {"two robots on one seam", {{0, 0, false}, {0, 1, false}, {1, 1, false}}},
      {"a robot that doesn't reach it", {{0, 0, false}, {0, 0, false}, {1, 0, false}}},
      {"against the direction", {{0, 0, false}, {0, 0, false}, {1, 1, true}}},
  };
  for (const auto& [name, sequence] : refused)
    EXPECT_EQ(scheduler.makespan_s(sequence), Scheduler::impossible) << name;
  EXPECT_THROW(
      cycle_of(plan, plan.weldments[0], compile_cell(plan, plan.weldments[0], evaluation_of(plan)), {}),
      InputError);
}

TEST(Scheduler, ARobotWeldsAnotherSeamWhileOneCools) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, 2),
                             seam_along("S2", {{350, 0, 0}, {450, 0, 0}})};
  Evaluation evaluation = evaluation_of(plan);
  evaluation.seams[0].interpass_waits_s = {60};
  const CellModel model = compile_cell(plan, plan.weldments[0], evaluation).model;
  Scheduler scheduler(model);
  // In a row: 0.75 + 11.5 + 60 + 11.5, S2 from S1's beginning (100 mm), home from 450 mm.
  const double row_s = scheduler.makespan_s({{0, 0, false}, {0, 0, true}, {1, 0, false}});
  EXPECT_NEAR(row_s, 0.75 + 11.5 + 60 + 11.5 + std::sqrt(0.1) + 0.25 + 11.5 + 0.95, 1e-9);
  // S2 meanwhile: pass 2 begins 60 s after pass 1 all the same, and ends at home's side.
  const double meanwhile_s = scheduler.makespan_s({{0, 0, false}, {1, 0, false}, {0, 0, true}});
  EXPECT_NEAR(meanwhile_s, 0.75 + 11.5 + 60 + 11.5 + 0.75, 1e-9);
}

TEST(Scheduler, AZoneLostBetweenTwoPassesIsEnteredAgain) {
  Plan plan = two_seams();
  plan.cell->zones = {{"Z", {"W/S1", "W/S2"}, {}, {}}};
  const CellModel model = plan_model(plan);
  // R1 ends pass 1 at 12.25; R2 goes in, 0.75 + 11.5; then R1 again with the wrist's time, and home.
  EXPECT_NEAR(Scheduler(model).makespan_s({{0, 0, false}, {1, 1, false}, {0, 0, true}}),
              12.25 + 12.25 + 0.25 + 11.5 + 0.75, 1e-9);
}

TEST(Scheduler, AppendsStepByStepAsItLaysOutAWhole) {
  const Plan plan = two_seams();
  const CellModel model = plan_model(plan);
  Scheduler scheduler(model);
  const Sequence sequence{{0, 1, false}, {1, 1, false}, {0, 1, true}};
  const double whole_s = scheduler.makespan_s(sequence);
  scheduler.restart();
  EXPECT_EQ(scheduler.makespan_so_far_s(), 0);
  EXPECT_EQ(scheduler.departure_s({0, 1, false}), 0);
  EXPECT_EQ(scheduler.departure_s({1, 0, false}), Scheduler::impossible);
  EXPECT_FALSE(scheduler.append({1, 0, false}));
  for (const Step& step : sequence) EXPECT_TRUE(scheduler.append(step));
  EXPECT_TRUE(scheduler.done(0));
  EXPECT_EQ(scheduler.makespan_so_far_s(), whole_s);
}

TEST(Scheduler, ATurnTakesEveryRobotHomeAndBack) {
  Plan plan = two_seams();
  plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  plan.cell->orientation_change_s = 8;
  plan.weldments[0].seams[0].orientation = "up";
  plan.weldments[0].seams[1].orientation = "down";
  const CellModel model = plan_model(plan);
  // Pass 1 and home at 13.1, turn, S2 by R2 and home at 34.2, turn, R1 in again: pass 2 from the far end (350
  // mm).
  EXPECT_NEAR(Scheduler(model).makespan_s({{0, 0, false}, {1, 1, false}, {0, 0, true}}),
              13.1 + 8 + 13.1 + 8 + 0.85 + 11.5 + 0.75, 1e-9);
}

TEST(LowerBound, IsReachedByASingleSeam) {
  Plan plan = plain_plan();
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {250, 100, 0}})};
  plan.weldments[0].seams[0].direction = "as-drawn";
  const CycleResult cycle = cycle_of_plan(plan);
  EXPECT_NEAR(*cycle.lower_bound_s, cycle.cycle_time_s, 1e-9);
  EXPECT_NEAR(*cycle.gap_pct, 0, 1e-9);
}

TEST(LowerBound, CountsTheSeamsThatOnlyOneRobotReaches) {
  Plan plan = two_seams();
  plan.weldments[0].seams[0].robots = {"R2"};
  // Three passes of 11.5 s on R2 alone, two ways in (nearest: its own home 250 mm, S2's end) and the way
  // home.
  const double bound_s = makespan_bound_s(plan_model(plan));
  EXPECT_GE(bound_s, 34.5 + 3 * 0.75 - 1e-9);
  plan.weldments[0].seams[0].robots = {};
  EXPECT_LT(makespan_bound_s(plan_model(plan)), 34.5);
}

TEST(LowerBound, CountsChainsZonesTurnsAndServices) {
  Plan plan = two_seams();
  const double plain_s = makespan_bound_s(plan_model(plan));
  Plan chained = plan;
  chained.weldments[0].seams[1].after = {"S1"};
  EXPECT_GE(makespan_bound_s(plan_model(chained)), 34.5);
  Plan zoned = plan;
  zoned.cell->zones = {{"Z", {"W/S1", "W/S2"}, {}, {}}};
  EXPECT_GE(makespan_bound_s(plan_model(zoned)), 34.5);
  Plan turned = plan;
  turned.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  turned.cell->orientation_change_s = 100;
  turned.weldments[0].seams[0].orientation = "up";
  turned.weldments[0].seams[1].orientation = "down";
  EXPECT_GE(makespan_bound_s(plan_model(turned)), 100 + 34.5 / 2);
  Plan served = plan;
  served.cell->torch_service =
      TorchService{10, 100, {}, {}};  // three passes of 10 s, two robots: one service
  EXPECT_GE(makespan_bound_s(plan_model(served)), 50 + 34.5 / 2);
  EXPECT_LT(plain_s, 34.5);
}

TEST(LowerBound, HoldsForTheWholeCycle) {
  EXPECT_EQ(station_cycle_s(1, 100, 60, 30, 4), 190);
  EXPECT_EQ(station_cycle_s(2, 100, 60, 30, 4), 104);
  EXPECT_EQ(station_cycle_s(2, 50, 60, 30, 4), 94);
}

TEST(PathBetween, CutsCornersInAndGoesRoundAClosedSeam) {
  const Seam corner = seam_along("S", {{0, 0, 0}, {100, 0, 0}, {100, 50, 0}});
  EXPECT_EQ(path_between(corner, 60, 130), (std::vector<Point_mm>{{60, 0, 0}, {100, 0, 0}, {100, 30, 0}}));
  EXPECT_EQ(path_between(corner, 130, 60), (std::vector<Point_mm>{{100, 30, 0}, {100, 0, 0}, {60, 0, 0}}));
  EXPECT_EQ(path_between(corner, 10, 60), (std::vector<Point_mm>{{10, 0, 0}, {60, 0, 0}}));
  const Seam ring = seam_along("S", {{0, 0, 0}, {100, 0, 0}, {100, 50, 0}, {0, 0, 0}});
  const double round_mm = path_length_mm(ring);
  const auto path = path_between(ring, 0, round_mm + 10);
  ASSERT_EQ(path.size(), 5u);
  EXPECT_NEAR(path.back()[0], 10, 1e-9);
}

}  // namespace
}  // namespace seamtakt::test
