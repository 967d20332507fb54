#include "cell/timeline/balance.hpp"

#include <gtest/gtest.h>

#include "cell/search/best_order.hpp"
#include "twin_plan.hpp"

namespace seamtakt::test {
namespace {

/// Four seams along x, two on each side of y = 50; the file has one side first.
Plan beam() {
  Plan plan = plain_plan();
  for (int i = 0; i < 4; ++i) {
    const double x = i % 2 * 300.0, y = i / 2 * 100.0;
    plan.weldments[0].seams.push_back(seam_along("S" + std::to_string(i + 1), {{x, y, 0}, {x + 200, y, 0}}));
    plan.weldments[0].seams.back().balance = "G";
  }
  return plan;
}

CycleResult best_cycle_of(const Plan& plan) {
  BestOptions options;
  options.steps = 3000;
  return cycle_best(plan, plan.weldments[0], evaluation_of(plan), options);
}

TEST(Balance, ABestOrderAlternatesTheSides) {
  const Plan plan = beam();
  const CycleResult best = best_cycle_of(plan);
  EXPECT_TRUE(findings_of(best.findings, "cycle.balance.broken").empty());
  EXPECT_TRUE(check_balance(plan.weldments[0], best).empty());
  expect_rules_kept(plan, best);
}

TEST(Balance, TheGivenOrderIsLeftAsItIsAndJudged) {
  const Plan plan = beam();
  const CycleResult given = cycle_of_plan(plan);
  EXPECT_EQ(arcs_of(given, "R1"), (std::vector<std::string>{"S1/1", "S2/1", "S3/1", "S4/1"}));
  const Findings found = findings_of(given.findings, "cycle.balance.broken");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].where, "W/S2");
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_FALSE(check_balance(plan.weldments[0], given).empty());
}

TEST(Balance, AnOrderThatAlternatesHasNoFinding) {
  Plan plan = beam();
  std::swap(plan.weldments[0].seams[1], plan.weldments[0].seams[2]);
  EXPECT_TRUE(findings_of(cycle_of_plan(plan).findings, "cycle.balance.broken").empty());
}

TEST(Balance, TheLargerSideEndsInARow) {
  Plan plan = beam();
  for (int i = 0; i < 3; ++i) {
    const double y = i * 0.2;
    plan.weldments[0].seams.push_back(seam_along("T" + std::to_string(i), {{600, y, 0}, {800, y, 0}}));
    plan.weldments[0].seams.back().balance = "G";
  }
  const CycleResult best = best_cycle_of(plan);
  EXPECT_TRUE(check_balance(plan.weldments[0], best).empty());
  EXPECT_EQ(arcs_of(best, "R1").size(), 7u);
}

TEST(Balance, TwoRobotsOfOneGroupTakeTurnsToo) {
  Plan plan = beam();
  plan.cell->robots.push_back(robot_at("R2", {500, 0, 0}));
  for (int i = 0; i < 4; ++i) plan.weldments[0].seams[i].robots = {i % 2 == 0 ? "R1" : "R2"};
  EXPECT_FALSE(findings_of(cycle_of_plan(plan).findings, "cycle.balance.broken").empty());
  const CycleResult best = best_cycle_of(plan);
  EXPECT_TRUE(check_balance(plan.weldments[0], best).empty());
  expect_rules_kept(plan, best);
}

TEST(Balance, PrecedenceGoesBeforeIt) {
  Plan plan = beam();
  plan.weldments[0].seams[2].after = {"S1", "S2"};
  plan.weldments[0].seams[3].after = {"S1", "S2"};
  const CycleResult best = best_cycle_of(plan);
  EXPECT_TRUE(findings_of(best.findings, "cycle.balance.broken").empty());
  EXPECT_TRUE(check_balance(plan.weldments[0], best).empty());
  expect_rules_kept(plan, best);
}

// S1 and S2 begin together on one side, S3 of the other side comes after S1: only S2, S1, S3 alternates.
Plan begun_together() {
  Plan plan = twin_plan();
  plan.cell->robots[1].home_mm = {0, 200, 0};
  std::vector<Seam>& seams = plan.weldments[0].seams;
  seams[1].path_mm = {{250, 200, 0}, {350, 200, 0}};
  seams.push_back(seam_along("S3", {{250, 1000, 0}, {350, 1000, 0}}));
  seams[2].robots = {"R1"};
  seams[2].after = {"S1"};
  for (Seam& seam : seams) seam.balance = "G";
  return plan;
}

TEST(Balance, SeamsBegunTogetherCountInTheOrderThatAlternates) {
  const Plan plan = begun_together();
  const CycleResult given = cycle_of_plan(plan);
  EXPECT_TRUE(findings_of(given.findings, "cycle.balance.broken").empty());
  EXPECT_TRUE(check_balance(plan.weldments[0], given).empty());
  const CellModel model = compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model;
  std::vector<BareMove> moves;
  ASSERT_LT(Scheduler(model).makespan_s({{0, 0, false}, {1, 1, false}, {2, 0, false}}, moves),
            Scheduler::impossible);
  ASSERT_EQ(model.groups.size(), 1u);
  EXPECT_EQ(begun_by_turns(model, model.groups[0], moves), (std::vector<int>{1, 0, 2}));
}

// S2 begins a tenth of a second after S1: then S3 could have been begun in its place.
TEST(Balance, SeamsBegunApartCountInTheOrderOfTime) {
  Plan plan = begun_together();
  plan.weldments[0].seams[1].path_mm = {{350, 200, 0}, {450, 200, 0}};
  const CycleResult given = cycle_of_plan(plan);
  EXPECT_EQ(findings_of(given.findings, "cycle.balance.broken").size(), 1u);
  EXPECT_EQ(check_balance(plan.weldments[0], given).size(), 1u);
}

TEST(Balance, SeamsInOnePlaceHaveNoSides) {
  Plan plan = plain_plan();
  for (const char* id : {"S1", "S2"}) {
    plan.weldments[0].seams.push_back(seam_along(id, {{0, 0, 0}, {200, 0, 0}}));
    plan.weldments[0].seams.back().balance = "G";
  }
  EXPECT_EQ(findings_of(cycle_of_plan(plan).findings, "cycle.balance.no-sides").size(), 1u);
}

TEST(Balance, SeamsInLineAreBalancedAlongIt) {
  Plan plan = plain_plan();
  for (int i = 0; i < 4; ++i) {
    plan.weldments[0].seams.push_back(
        seam_along("S" + std::to_string(i + 1), {{i * 300.0, 0, 0}, {i * 300.0 + 200, 0, 0}}));
    plan.weldments[0].seams.back().balance = "G";
  }
  EXPECT_EQ(findings_of(cycle_of_plan(plan).findings, "cycle.balance.broken").size(), 1u);
  EXPECT_TRUE(check_balance(plan.weldments[0], best_cycle_of(plan)).empty());
}

TEST(Balance, GroupsThatBlockEachOtherAreGivenUpAloud) {
  Plan plan = plain_plan();
  const auto add = [&](const char* id, double y, const char* group, std::vector<std::string> after) {
    plan.weldments[0].seams.push_back(seam_along(id, {{0, y, 0}, {200, y, 0}}));
    plan.weldments[0].seams.back().balance = group;
    plan.weldments[0].seams.back().after = std::move(after);
  };
  // A1 first: A's other side waits for X1, and H needs Y before X1, which waits for A2.
  add("A1", 0, "A", {});
  add("A2", 0.1, "A", {});
  add("B1", 300, "A", {"X1"});
  add("X0", 0, "H", {});
  add("X1", 0.1, "H", {});
  add("Y1", 300, "H", {"A2"});
  const CycleResult best = best_cycle_of(plan);
  EXPECT_EQ(findings_of(best.findings, "cycle.balance.circular").size(), 2u);
  EXPECT_EQ(arcs_of(best, "R1").size(), 6u);
  expect_rules_kept(plan, best);
}

}  // namespace
}  // namespace seamtakt::test
