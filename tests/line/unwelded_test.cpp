// Seams that nobody welds: the weldment fails, the line doesn't run it, and no figure gets better for it.
#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>

#include <algorithm>

#include "cell/random_cell.hpp"
#include "cell/timeline/without_robot.hpp"
#include "line_plan.hpp"

namespace seamtakt::test {
namespace {

/// A of R1 alone, B of R2 alone, C of both; the cell takes as long as the request says.
Plan plan_of_two_robots() {
  Plan plan = line_plan({timed_stage("tack", 100, 1, 1), named_stage("cell")});
  plan.schedules = {schedule_named("A")};
  plan.cell->robots = {robot_at("R1", {0, 0, 0}), robot_at("R2", {0, 500, 0})};
  plan.weldments.push_back(weldment_of("C", 0, 0));
  const std::vector<std::string> robots[] = {{"R1"}, {"R2"}, {"R1", "R2"}};
  for (std::size_t i = 0; i < 3; ++i)
    for (const char* id : {"S1", "S2"}) {
      Seam seam = seam_along(id, {{100, 0, 0}, {400.0 + 1000.0 * static_cast<double>(i), 0, 0}});
      seam.robots = robots[i];
      plan.weldments[i].seams.push_back(seam);
    }
  return plan;
}

LineResult line_of_plan(const Plan& plan, const Evaluation& evaluation, const std::string& letters,
                        LineRequest request = {}) {
  request.cycle_of = [&](const Weldment& weldment) { return cycle_given(plan, weldment, evaluation); };
  return simulate_line(plan, evaluation, release_all(orders_of(letters)), request);
}

LineResult without(const Plan& plan, const Evaluation& evaluation, const std::string& robot,
                   const std::string& letters, LineRequest request = {}) {
  request.with_all_robots = [&] {
    return WholeCell{&plan, evaluation,
                     [&](const Weldment& weldment) { return cycle_given(plan, weldment, evaluation); }};
  };
  return line_of_plan(without_robot(plan, robot).plan, evaluation, letters, request);
}

TEST(Unwelded, ItsUnitsWaitAndTheOthersRun) {
  const Plan plan = plan_of_two_robots();
  const LineResult line = without(plan, evaluation_of(plan), "R2", "ABCB");
  ASSERT_EQ(line.units.size(), 2u);
  EXPECT_EQ(line.units[0].serial, "U1");
  EXPECT_EQ(line.units[1].serial, "U3");
  EXPECT_EQ(line.not_run, 2u);
  ASSERT_EQ(line.waiting.size(), 2u);
  EXPECT_EQ(line.waiting[0].order.serial, "U2");
  EXPECT_EQ(line.waiting[0].sentence.english(), "nobody welds 2 of its 2 robot seams");
  EXPECT_EQ(line.waiting[0].released_instead, "U3");
  EXPECT_EQ(line.waiting[1].released_instead, "");
  const Finding* failed = finding_of(line.findings, "line.weldment.unwelded");
  ASSERT_TRUE(failed);
  EXPECT_EQ(failed->severity, Severity::fail);
  EXPECT_EQ(failed->where, "B");
  EXPECT_EQ(failed->value, 2);
  EXPECT_FALSE(finding_of(line.findings, "line.cart.incomplete"));
  EXPECT_FALSE(line.with_all_carts) << "no cart is missing";
  EXPECT_TRUE(line.cures.empty());
}

TEST(Unwelded, ThroughputIsOfFinishedUnitsOverTheTimeThatAllTake) {
  const Plan plan = plan_of_two_robots();
  const Evaluation evaluation = evaluation_of(plan);
  const LineResult all = line_of_plan(plan, evaluation, "ABCB");
  const LineResult line = without(plan, evaluation, "R2", "ABCB");
  EXPECT_LT(line.makespan_s, all.makespan_s);
  EXPECT_DOUBLE_EQ(line.figures.throughput_per_h, 3600 * 2 / all.makespan_s);
  EXPECT_EQ(line.throughput_per_h, line.figures.throughput_per_h);
  // Two units that never come are two misses.
  EXPECT_EQ(line.figures.takt_misses, *line.takt_misses + 2.0);
}

TEST(Unwelded, WhereNoUnitCanBeFinishedNothingRuns) {
  const Plan plan = plan_of_two_robots();
  const LineResult line = without(plan, evaluation_of(plan), "R2", "BB");
  EXPECT_TRUE(line.units.empty());
  EXPECT_EQ(line.figures.throughput_per_h, 0);
  EXPECT_EQ(line.figures.takt_misses, 2);
  EXPECT_EQ(line.waiting.size(), 2u);
  EXPECT_TRUE(finding_of(line.findings, "line.weldment.unwelded"));
}

TEST(Unwelded, OrdersThatComeAgainLeaveTheirPlaceEmpty) {
  const Plan plan = plan_of_two_robots();
  LineRequest request;
  request.units = 7;
  const LineResult line = without(plan, evaluation_of(plan), "R2", "ABC", request);
  EXPECT_EQ(line.not_run, 2u);  // A B C, A B C, A
  ASSERT_EQ(line.units.size(), 5u);
  EXPECT_EQ(line.units[2].serial, "U1/2");
  EXPECT_EQ(line.waiting.size(), 1u);
}

TEST(Unwelded, AnIncompleteCartStaysAnIncompleteCart) {
  const Plan plan = plan_of_two_robots(), less = without_robot(plan, "R2").plan;
  const Evaluation evaluation = evaluation_of(plan);
  const std::vector<Order> orders = orders_of("ABCA");
  Release release{orders, {orders[1], orders[2], orders[3]}, {}};
  release.waiting.resize(1);
  release.waiting[0].order = orders[0];
  release.waiting[0].sentence = Sentence("line.cart.absent"_key);
  release.waiting[0].released_instead = "U2";
  LineRequest request;
  request.cycle_of = [&](const Weldment& weldment) { return cycle_given(less, weldment, evaluation); };
  const LineResult line = simulate_line(less, evaluation, release, request);
  ASSERT_EQ(line.waiting.size(), 2u);
  EXPECT_EQ(line.waiting[0].order.serial, "U1");
  EXPECT_EQ(line.waiting[0].unwelded_seams, 0);
  EXPECT_EQ(line.waiting[0].released_instead, "U3") << "U2 isn't run either";
  EXPECT_EQ(line.waiting[1].order.serial, "U2");
  EXPECT_EQ(line.not_run, 1u);
  EXPECT_TRUE(finding_of(line.findings, "line.cart.incomplete"));
  ASSERT_TRUE(line.with_all_carts);
  EXPECT_GT(line.with_all_carts->makespan_s, line.makespan_s);
}

TEST(Unwelded, ALineWithoutAStageForTheCellDoesNotRunItEither) {
  Plan plan = plan_of_two_robots();
  plan.line->stages = {timed_stage("weld", 500)};
  const LineResult line = without(plan, evaluation_of(plan), "R2", "ABCB");
  EXPECT_EQ(line.units.size(), 2u);
  EXPECT_EQ(line.not_run, 2u);
}

TEST(Unwelded, WithAllSeamsWeldedNothingChanges) {
  const Plan plan = plan_of_two_robots();
  const LineResult line = line_of_plan(plan, evaluation_of(plan), "ABCB");
  EXPECT_EQ(line.not_run, 0u);
  EXPECT_EQ(line.units.size(), 4u);
  EXPECT_TRUE(line.waiting.empty());
}

/// Two or three weldments with the seams of a random cell between them.
Plan random_day(RandomCell& random, int robots) {
  Plan plan = random.plan(random.integer(4, 9), robots);
  const int weldments = random.integer(2, 3);
  std::vector<Seam> seams = std::move(plan.weldments[0].seams);
  plan.weldments.clear();
  for (int i = 0; i < weldments; ++i)
    plan.weldments.push_back(weldment_of(std::string(1, static_cast<char>('A' + i)), random.integer(0, 90),
                                         random.integer(0, 40)));
  for (Seam& seam : seams) {
    seam.after.clear();
    plan.weldments[static_cast<std::size_t>(random.integer(0, weldments - 1))].seams.push_back(seam);
  }
  plan.cell->zones.clear();
  plan.line = Line{};
  plan.line->takt_s = random.integer(50, 400);
  plan.line->stages = {timed_stage("tack", random.integer(5, 120), 1, random.integer(0, 2)),
                       named_stage("cell", 1, random.integer(0, 2)),
                       timed_stage("check", random.integer(5, 60))};
  for (Stage& stage : plan.line->stages)
    if (random.chance(0.4)) {
      stage.availability = 0.9;
      stage.repair_s = random.integer(1, 60);
    }
  return plan;
}

RC_GTEST_PROP(Unwelded, TakingARobotAwayNeverRaisesThroughputByLeavingSeamsUnwelded, ()) {
  RandomCell random(*rc::gen::inRange<unsigned>(0u, 2000000000u));
  const int robots = *rc::gen::inRange(2, 4);
  const Plan plan = random_day(random, robots);
  const Evaluation evaluation = random.evaluation(plan);
  std::string letters;
  for (int i = random.integer(3, 9); i > 0; --i)
    letters += plan.weldments[static_cast<std::size_t>(
                                  random.integer(0, static_cast<int>(plan.weldments.size()) - 1))]
                   .id;
  LineRequest request;
  request.runs = 8;
  const LineResult with = line_of_plan(plan, evaluation, letters, request);
  for (const Robot& robot : plan.cell->robots) {
    const LineResult less = without(plan, evaluation, robot.id, letters, request);
    RC_ASSERT(less.units.size() + less.not_run == letters.size());
    RC_ASSERT(less.not_run >= with.not_run);
    RC_CLASSIFY(less.not_run > 0 && !less.units.empty(), "a part of the day is run");
    RC_CLASSIFY(3600 * static_cast<double>(less.units.size()) / std::max(1.0, less.makespan_s) >
                    with.figures.throughput_overall_per_h,
                "the part that is run goes quicker than the whole did");
    if (less.not_run == 0) continue;  // all is welded: list schedules may be quicker with fewer robots
    RC_ASSERT(finding_of(less.findings, "line.weldment.unwelded"));
    RC_ASSERT(less.figures.throughput_per_h <= with.figures.throughput_per_h * (1 + 1e-12));
    RC_ASSERT(less.figures.throughput_overall_per_h <= with.figures.throughput_overall_per_h * (1 + 1e-12));
    RC_ASSERT(less.figures.takt_misses >= static_cast<double>(less.not_run));
  }
}

}  // namespace
}  // namespace seamtakt::test
