// The line's headline: the mean of the runs and its spread; a single draw is one.
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "base/error.hpp"
#include "line/flow_recurrence.hpp"
#include "line_plan.hpp"
#include "small_line.hpp"

namespace seamtakt::test {
namespace {

TEST(Quantile, IsBetweenTheValuesInOrder) {
  // Definition 7 on five values: at p = 0.1 it is x1 + 0.4 (x2 - x1).
  EXPECT_DOUBLE_EQ(quantile({50, 10, 30, 20, 40}, 0.1), 14);
  EXPECT_DOUBLE_EQ(quantile({50, 10, 30, 20, 40}, 0.9), 46);
  EXPECT_DOUBLE_EQ(quantile({50, 10, 30, 20, 40}, 0.5), 30);
  EXPECT_EQ(quantile({7}, 0.1), 7);
  EXPECT_EQ(quantile({1, 2}, 0), 1);
  EXPECT_EQ(quantile({1, 2}, 1), 2);
}

LineModel uncertain_line() {
  LineModel model = steady_line({stage_of(1, 1), stage_of(1, 0)}, {500, 600}, 24);
  model.stages[1].availability = 0.85;
  model.stages[1].repair_s = 900;
  return model;
}

TEST(LineFigures, AreOfTheRunsOneByOne) {
  const LineModel model = uncertain_line();
  constexpr int runs = 41;
  std::vector<double> rates;
  for (std::uint64_t seed = 3; seed < 3 + runs; ++seed)
    rates.push_back(throughput_per_h(run_line(model, seed)));
  const LineFigures figures = line_figures(model, std::nullopt, 3, runs);
  double sum = 0;
  for (const double rate : rates) sum += rate;
  EXPECT_EQ(figures.runs, runs);
  EXPECT_NEAR(figures.throughput_per_h, sum / runs, 1e-12);
  std::vector<double> sorted = rates;
  std::sort(sorted.begin(), sorted.end());
  EXPECT_DOUBLE_EQ(*figures.throughput_p10_per_h, sorted[4]);
  EXPECT_DOUBLE_EQ(*figures.throughput_p90_per_h, sorted[36]);
  EXPECT_EQ(rates[figures.median_seed - 3], sorted[20]);
}

TEST(LineFigures, OneDrawOfManySaysNothingAboutTheOthers) {
  const LineFigures one = line_figures(uncertain_line(), std::nullopt, 5, 1);
  EXPECT_EQ(one.runs, 1);
  EXPECT_EQ(one.median_seed, 5u);
  EXPECT_FALSE(one.throughput_p10_per_h);
  EXPECT_FALSE(one.throughput_p90_per_h);
}

TEST(LineFigures, WithoutChanceOneRunSaysAll) {
  const LineModel model = steady_line({stage_of(1, 0)}, {1200}, 10);
  const LineFigures figures = line_figures(model, std::nullopt, 1, 200);
  EXPECT_EQ(figures.runs, 1);
  EXPECT_EQ(figures.throughput_per_h, 3);
  EXPECT_EQ(figures.throughput_p10_per_h, 3);
  EXPECT_EQ(figures.throughput_p90_per_h, 3);
}

TEST(LineOfPlan, UnitsAndStagesAreOfTheDrawInTheMiddle) {
  Plan plan = line_plan({timed_stage("a", 700, 1, 1), timed_stage("b", 800)});
  plan.line->stages[1].availability = 0.9;
  plan.line->stages[1].repair_s = 600;
  LineRequest request = request_with({});
  request.seed = 11;
  const LineResult line = line_of(plan, "ABABABABABAB", request);
  EXPECT_FALSE(line.certain);
  EXPECT_EQ(line.figures.runs, 200);
  EXPECT_GE(line.throughput_per_h, *line.figures.throughput_p10_per_h);
  EXPECT_LE(line.throughput_per_h, *line.figures.throughput_p90_per_h);
  LineRequest alone = request;
  alone.seed = line.draw_seed;
  alone.runs = 1;
  const LineResult draw = line_of(plan, "ABABABABABAB", alone);
  EXPECT_EQ(draw.figures.throughput_per_h, line.throughput_per_h);
  EXPECT_EQ(draw.draw_seed, line.draw_seed);
  EXPECT_EQ(ends_of(draw), ends_of(line));
}

TEST(LineOfPlan, TaktIsJudgedOnTheMean) {
  // 950 s of work and 10 % of stops: on the mean above the takt of 1000 s, in a lucky draw below.
  Plan plan = line_plan({timed_stage("weld", 950)});
  plan.line->stages[0].availability = 0.9;
  plan.line->stages[0].repair_s = 1800;
  LineRequest request = request_with({});
  std::set<Severity> severities;
  for (request.seed = 1; request.seed <= 40; ++request.seed)
    for (const Finding& finding : line_of(plan, "AAAAAAAAAA", request).findings)
      if (finding.rule.starts_with("line.takt")) {
        severities.insert(finding.severity);
        EXPECT_EQ(finding.rule, "line.takt.rate") << request.seed;
      }
  EXPECT_EQ(severities, std::set<Severity>{Severity::fail});
}

TEST(LineModel, MoreStopsThanAPersonPlansWithAreRefused) {
  LineModel model = uncertain_line();
  model.stages[1].repair_s = 0.05;  // one each 0.28 s of work
  try {
    check_line_model(model, "plan");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "plan: stage stage 2/repair_s");
  }
  model.stages[1].repair_s = 900;
  model.stages[1].availability = 1e-9;
  EXPECT_THROW(check_line_model(model, "plan"), InputError);
}

}  // namespace
}  // namespace seamtakt::test
