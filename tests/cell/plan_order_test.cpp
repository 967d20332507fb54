#include "cell/timeline/plan_order.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "base/error.hpp"
#include "cell/search/best_order.hpp"
#include "cell/timeline/without_robot.hpp"
#include "cell_plan.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "random_cell.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

Plan three_seams_two_robots() {
  Plan plan = plain_plan();
  plan.cell->robots.push_back(robot_at("R2", {1000, 0, 0}));
  plan.weldments[0].seams = {seam_along("S1", {{0, 0, 0}, {100, 0, 0}}),
                             seam_along("S2", {{200, 0, 0}, {300, 0, 0}}),
                             seam_along("S3", {{400, 0, 0}, {500, 0, 0}})};
  return plan;
}

std::vector<std::string> order_of(const Weldment& weldment) {
  std::vector<std::string> steps;
  for (const OrderStep& step : weldment.order)
    steps.push_back(step.robot + ":" + step.seam + (step.direction == "reversed" ? " back" : ""));
  return steps;
}

using Order = std::vector<std::string>;

bool has_rule(const CycleResult& cycle, const char* rule) {
  return std::any_of(cycle.findings.begin(), cycle.findings.end(),
                     [&](const Finding& finding) { return finding.rule == rule; });
}

TEST(PlanOrder, ACycleTellsTheOrderThatGivesItAgain) {
  Plan plan = three_seams_two_robots();
  Weldment& weldment = plan.weldments[0];
  weldment.seams[1].schedules = {"A", "A"};
  const Evaluation evaluation = evaluation_of(plan);
  const CycleResult before = cycle_given(plan, weldment, evaluation);
  take_order(weldment, before);
  EXPECT_EQ(order_of(weldment), (Order{"R1:S1", "R1:S2", "R1:S2 back", "R1:S3"}));
  const CycleResult after = cycle_given(plan, weldment, evaluation);
  EXPECT_EQ(after.cycle_time_s, before.cycle_time_s);
  EXPECT_FALSE(has_rule(after, "cycle.order.mended"));
}

TEST(PlanOrder, PassesOfASeamMayLieApart) {
  Plan plan = three_seams_two_robots();
  Weldment& weldment = plan.weldments[0];
  weldment.seams[0].schedules = {"A", "A"};
  for (const char* seam : {"S1", "S2", "S1", "S3"}) weldment.order.push_back({seam, "R1", "as-drawn", {}});
  const CycleResult cycle = cycle_given(plan, weldment, evaluation_of(plan));
  std::vector<std::string> arcs;
  for (const Move& move : cycle.moves)
    if (move.kind == MoveKind::arc) arcs.push_back(move.seam);
  EXPECT_EQ(arcs, (Order{"S1", "S2", "S1", "S3"}));
}

TEST(PlanOrder, PutsASeamBeforeAnotherAndToAnotherRobot) {
  Plan plan = three_seams_two_robots();
  Weldment& weldment = plan.weldments[0];
  const Evaluation evaluation = evaluation_of(plan);
  place_seam(*plan.cell, weldment, cycle_given(plan, weldment, evaluation), "S3", "R2", "S1");
  EXPECT_EQ(order_of(weldment), (Order{"R2:S3", "R1:S1", "R1:S2"}));
  CycleResult cycle = cycle_given(plan, weldment, evaluation);
  EXPECT_EQ(robot_of(cycle, "S3"), "R2");
  place_seam(*plan.cell, weldment, cycle, "S1", "R1", "");
  EXPECT_EQ(order_of(weldment), (Order{"R2:S3", "R1:S2", "R1:S1"}));
  cycle = cycle_given(plan, weldment, evaluation);
  ASSERT_EQ(visits_of(cycle, "R1").size(), 2u);
  EXPECT_EQ(visits_of(cycle, "R1")[1].seam, "S1");
  EXPECT_EQ(visit_after(cycle, "R1", 0, ""), "S2");
  EXPECT_EQ(visit_after(cycle, "R1", 0, "S2"), "S1");
  EXPECT_EQ(visit_after(cycle, "R1", 1e6, ""), "");
  EXPECT_EQ(robot_of(cycle, "S9"), "");
}

TEST(PlanOrder, RefusesARobotThatDoesNotReachTheSeamAndSeamsThatAreNotThere) {
  Plan plan = three_seams_two_robots();
  Weldment& weldment = plan.weldments[0];
  weldment.seams[0].robots = {"R1"};
  weldment.seams[1].by = "manual";
  const CycleResult now = cycle_given(plan, weldment, evaluation_of(plan));
  EXPECT_THROW(place_seam(*plan.cell, weldment, now, "S1", "R2", ""), InputError);
  EXPECT_THROW(place_seam(*plan.cell, weldment, now, "S2", "R1", ""), InputError);
  EXPECT_THROW(place_seam(*plan.cell, weldment, now, "S7", "R1", ""), InputError);
  EXPECT_THROW(place_seam(*plan.cell, weldment, now, "S3", "R1", "S7"), InputError);
  EXPECT_THROW(place_seam(*plan.cell, weldment, now, "S3", "R1", "S3"), InputError);
  EXPECT_TRUE(weldment.order.empty());
}

TEST(PlanOrder, AnOrderThatNoLongerFitsIsMendedAndSaysSo) {
  Plan plan = three_seams_two_robots();
  Weldment& weldment = plan.weldments[0];
  take_order(weldment, cycle_given(plan, weldment, evaluation_of(plan)));
  weldment.seams.push_back(seam_along("S4", {{600, 0, 0}, {700, 0, 0}}));
  weldment.seams[1].by = "manual";
  weldment.seams[0].after = {"S3"};
  const CycleResult cycle = cycle_given(plan, weldment, evaluation_of(plan));
  std::vector<std::string> seams;
  for (const OrderStep& step : cycle.order) seams.push_back(step.seam);
  EXPECT_EQ(seams, (Order{"S3", "S1", "S4"}));
  EXPECT_TRUE(has_rule(cycle, "cycle.order.mended"));
}

TEST(PlanOrder, OfSeamAndRobotThatArentThereIsRefusedByTheFile) {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  plan.weldments[0].order = {{"S01", "R1", "reversed", {}}};
  EXPECT_EQ(parse_plan(write_plan(plan), "again").weldments[0].order[0].direction, "reversed");
  for (const OrderStep& bad :
       {OrderStep{"S999", "R1", "as-drawn", {}}, OrderStep{"S01", "R9", "as-drawn", {}},
        OrderStep{"S01", "R1", "sideways", {}}}) {
    plan.weldments[0].order = {bad};
    EXPECT_THROW(check_plan(plan, "bad"), InputError);
  }
}

/// The adopted order is the one found, and a search that begins from it is never slower.
TEST(PlanOrder, OfTheDemosBestOrderIsExactlyItsCycle) {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  const Evaluation evaluation = evaluate(plan);
  for (Weldment& weldment : plan.weldments) {
    BestOptions options;
    options.steps = 3000;
    const CycleResult best = cycle_best(plan, weldment, evaluation, options);
    EXPECT_LT(best.cycle_time_s, cycle_given(plan, weldment, evaluation).cycle_time_s);
    take_order(weldment, best);
    EXPECT_NO_THROW(check_plan(plan, "taken"));
    const CycleResult taken = cycle_given(plan, weldment, evaluation);
    EXPECT_EQ(taken.cycle_time_s, best.cycle_time_s);
    EXPECT_EQ(taken.moves.size(), best.moves.size());
    options.steps = 200;
    options.seed = 7;
    EXPECT_LE(cycle_best(plan, weldment, evaluation, options).cycle_time_s, best.cycle_time_s);
  }
}

TEST(PlanOrder, WithoutARobotItsStepsAreGone) {
  Plan plan = three_seams_two_robots();
  Weldment& weldment = plan.weldments[0];
  for (const char* seam : {"S1", "S2", "S3"}) weldment.order.push_back({seam, "R2", "as-drawn", {}});
  const PlanWithoutRobot out = without_robot(plan, "R2");
  EXPECT_TRUE(out.plan.weldments[0].order.empty());
  EXPECT_NO_THROW(cycle_given(out.plan, out.plan.weldments[0], evaluation_of(out.plan)));
}

}  // namespace
}  // namespace seamtakt::test
