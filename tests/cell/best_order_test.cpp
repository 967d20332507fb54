#include "cell/search/best_order.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cstdlib>

#include "cell/bound/lower_bound.hpp"
#include "random_cell.hpp"
#include "twin_plan.hpp"

namespace seamtakt::test {
namespace {

BestOptions steps(std::uint64_t count, std::uint64_t seed = 1) {
  BestOptions options;
  options.steps = count;
  options.seed = seed;
  return options;
}

struct DrawnModel {
  Plan plan;
  Evaluation evaluation;
  CompiledCell compiled;
};

DrawnModel drawn_cell(unsigned seed, int seams, int robots) {
  RandomCell random(seed);
  DrawnModel drawn;
  drawn.plan = random.plan(seams, robots);
  drawn.evaluation = random.evaluation(drawn.plan);
  drawn.compiled = compile_cell(drawn.plan, drawn.plan.weldments[0], drawn.evaluation);
  return drawn;
}

/// What the best order of a random cell breaks.
std::vector<std::string> broken_by_best(unsigned seed, int seams, int robots) {
  const DrawnModel drawn = drawn_cell(seed, seams, robots);
  const Weldment& weldment = drawn.plan.weldments[0];
  const auto left_out = seams_left_out(drawn.plan);
  const CycleResult best = cycle_best(drawn.plan, weldment, drawn.evaluation, steps(1500));
  std::vector<std::string> broken = check_timeline(drawn.plan, weldment, drawn.evaluation, best, left_out);
  for (auto& sentence : check_balance(weldment, best, left_out)) broken.push_back(std::move(sentence));
  for (const Finding& finding : findings_of(best.findings, "cycle.balance.broken"))
    broken.push_back(finding.text());
  const CycleResult given = cycle_given(drawn.plan, weldment, drawn.evaluation);
  const bool kept = findings_of(given.findings, "cycle.balance.broken").empty();
  if (kept != check_balance(weldment, given, left_out).empty())
    broken.push_back("the given order is judged otherwise by the checker");
  if (kept && best.cycle_time_s > given.cycle_time_s + 1e-9) broken.push_back("the given order is faster");
  return broken;
}

RC_GTEST_PROP(BestOrder, BreaksNoRuleAndIsNeverSlowerThanAGivenOrderThatKeepsBalance, ()) {
  const unsigned seed = *rc::gen::inRange<unsigned>(0u, 2000000000u);
  for (const auto& sentence : broken_by_best(seed, *rc::gen::inRange(1, 25), *rc::gen::inRange(1, 4)))
    RC_FAIL(sentence);
}

// Two seams of a group begun at the same moment, where only one way to count them alternates.
TEST(BestOrder, SeamsBegunTogetherCountInTheOrderThatAlternates) {
  EXPECT_EQ(broken_by_best(484859716u, 9, 2), std::vector<std::string>());
  EXPECT_EQ(broken_by_best(833687087u, 18, 2), std::vector<std::string>());
}

TEST(BestOrder, TheSameSeedAndStepsGiveTheSameOrder) {
  const DrawnModel drawn = drawn_cell(7, 30, 3);
  const BestOrder first = best_order(drawn.compiled.model, steps(5000)),
                  second = best_order(drawn.compiled.model, steps(5000));
  EXPECT_EQ(first.makespan_s, second.makespan_s);
  EXPECT_EQ(first.steps, second.steps);
  ASSERT_EQ(first.sequence.size(), second.sequence.size());
  for (std::size_t i = 0; i < first.sequence.size(); ++i) {
    EXPECT_EQ(first.sequence[i].seam, second.sequence[i].seam);
    EXPECT_EQ(first.sequence[i].robot, second.sequence[i].robot);
    EXPECT_EQ(first.sequence[i].reversed, second.sequence[i].reversed);
  }
}

TEST(BestOrder, MoreStepsAreNeverWorse) {
  const DrawnModel drawn = drawn_cell(11, 30, 2);
  double before_s = Scheduler::impossible;
  for (const std::uint64_t count : {20u, 200u, 2000u, 20000u}) {
    const BestOrder best = best_order(drawn.compiled.model, steps(count));
    EXPECT_LE(best.makespan_s, before_s);
    EXPECT_LE(best.steps, count + 200);
    before_s = best.makespan_s;
  }
}

TEST(BestOrder, AStopAtOnceLeavesAnOrderThatCanBeWelded) {
  const DrawnModel drawn = drawn_cell(3, 25, 2);
  BestOptions options;
  options.stop = [] { return true; };
  const BestOrder best = best_order(drawn.compiled.model, options);
  EXPECT_LT(Scheduler(drawn.compiled.model, Balance::kept).makespan_s(best.sequence), Scheduler::impossible);
}

TEST(BestOrder, ProgressOnlyGetsBetter) {
  const DrawnModel drawn = drawn_cell(5, 25, 2);
  double before_s = Scheduler::impossible;
  int reports = 0;
  BestOptions options = steps(3000);
  options.progress = [&](const BestProgress& progress) {
    EXPECT_LT(progress.best_s, before_s);
    EXPECT_LE(progress.bound_s, progress.best_s * (1 + 1e-12));
    before_s = progress.best_s;
    ++reports;
  };
  best_order(drawn.compiled.model, options);
  EXPECT_GT(reports, 1);
}

TEST(BestOrder, AWeldmentWithoutRobotSeamsTakesNoTime) {
  const Plan plan = plain_plan();
  const CycleResult best = cycle_best(plan, plan.weldments[0], evaluation_of(plan), steps(10));
  EXPECT_EQ(best.weld_s, 0);
  EXPECT_EQ(best.gap_pct, 0);
}

/// The fastest of all orders, directions and robots of single-pass seams, by trying every one.
class Exhaustive {
 public:
  explicit Exhaustive(const CellModel& model) : model_(model), scheduler_(model, Balance::kept) {}

  double least_s() {
    extend();
    return least_s_;
  }

 private:
  void extend() {
    if (sequence_.size() == model_.passes.size()) {
      least_s_ = std::min(least_s_, scheduler_.makespan_s(sequence_));
      return;
    }
    for (int seam = 0; seam < static_cast<int>(model_.seams.size()); ++seam)
      for (int robot = 0; robot < model_.robot_count(); ++robot)
        for (const bool reversed : {false, true}) {
          const Step step{seam, static_cast<std::int16_t>(robot), reversed};
          scheduler_.restart();
          for (const Step& before : sequence_) scheduler_.append(before);
          if (!scheduler_.append(step)) continue;
          if (scheduler_.makespan_so_far_s() > least_s_) continue;
          sequence_.push_back(step);
          extend();
          sequence_.pop_back();
        }
  }

  const CellModel& model_;
  Scheduler scheduler_;
  Sequence sequence_;
  double least_s_ = Scheduler::impossible;
};

TEST(BestOrder, FindsTheFastestOfAllOrdersOfSmallCells) {
  int proven = 0;
  for (unsigned seed = 100; seed < 140; ++seed) {
    const DrawnModel drawn = drawn_cell(seed, 4, 1 + static_cast<int>(seed % 2));
    if (drawn.compiled.model.passes.size() > 6) continue;
    const double least_s = Exhaustive(drawn.compiled.model).least_s();
    const BestOrder best = best_order(drawn.compiled.model, steps(100000));
    EXPECT_NEAR(best.makespan_s, least_s, 1e-9) << "seed " << seed;
    EXPECT_LE(best.bound_s, least_s * (1 + 1e-12)) << "seed " << seed;
    proven += best.proven;
  }
  EXPECT_GT(proven, 0);
}

TEST(BestOrder, TheBoundIsNeverAboveTheBestOfTenThousandRandomCells) {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  const unsigned cells = length && std::string(length) == "long" ? 100000 : 10000;
  for (unsigned seed = 0; seed < cells; ++seed) {
    const DrawnModel drawn =
        drawn_cell(seed + 50000, 1 + static_cast<int>(seed % 8), 1 + static_cast<int>(seed / 8 % 3));
    const BestOrder best = best_order(drawn.compiled.model, steps(150));
    ASSERT_LE(best.bound_s, best.makespan_s * (1 + 1e-12)) << "seed " << seed;
    double least_s = 0;
    for (std::size_t pass = 0; pass < drawn.compiled.model.passes.size(); ++pass)
      least_s += drawn.compiled.model.passes[pass].arc_s;
    ASSERT_GE(best.bound_s, least_s / drawn.compiled.model.robot_count() - 1e-9) << "seed " << seed;
  }
}

}  // namespace
}  // namespace seamtakt::test
