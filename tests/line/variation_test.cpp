// Work that varies: the distributions' moments, and draws that stay paired.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "line/flow_recurrence.hpp"
#include "line/line_calendar.hpp"
#include "line/random_stream.hpp"
#include "line_plan.hpp"
#include "small_line.hpp"

namespace seamtakt::test {
namespace {

TEST(NormalQuantile, IsTheInverseOfTheDistributionFunction) {
  // Python 3.11, statistics.NormalDist().inv_cdf
  EXPECT_NEAR(normal_quantile(0.975), 1.9599639845400536, 1e-15);
  EXPECT_NEAR(normal_quantile(0.1), -1.2815515655446008, 1e-15);
  EXPECT_NEAR(normal_quantile(0.001), -3.090232306167813, 4e-15);
  EXPECT_NEAR(normal_quantile(1e-12), -7.034483825301131, 8e-15);
  EXPECT_EQ(normal_quantile(0.5), 0);
  EXPECT_TRUE(std::isfinite(normal_quantile(1)));
  for (double p = 0x1p-53; p < 1; p = p < 1e-3 ? p * 1.7 : p + 1e-3)
    EXPECT_NEAR(0.5 * std::erfc(-normal_quantile(p) / std::numbers::sqrt2) / p, 1, 1e-13) << p;
}

struct Moments {
  double mean = 0, deviation = 0, least = 1e300, most = 0;
};

Moments moments_of(const WorkVariation& variation, std::size_t count) {
  const RandomStream draws(11, 0, 5);
  Moments moments;
  double squares = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double factor = variation.factor(draws.uniform(i));
    moments.mean += factor / static_cast<double>(count);
    squares += factor * factor / static_cast<double>(count);
    moments.least = std::min(moments.least, factor);
    moments.most = std::max(moments.most, factor);
  }
  moments.deviation = std::sqrt(squares - moments.mean * moments.mean);
  return moments;
}

TEST(WorkVariation, LogNormalHasTheMeanAndTheVariationAsked) {
  constexpr std::size_t count = 400'000;
  for (const double cv : {0.1, 0.4}) {
    const Moments moments = moments_of(WorkVariation::log_normal(cv), count);
    EXPECT_NEAR(moments.mean, 1, 3 * cv / std::sqrt(count));
    EXPECT_NEAR(moments.deviation, cv, 0.02 * cv);
    EXPECT_GT(moments.least, 0);
  }
  // The median is 1/sqrt(1 + cv^2).
  EXPECT_NEAR(WorkVariation::log_normal(0.75).factor(0.5), 0.8, 1e-15);
}

TEST(WorkVariation, TriangularHasItsEndsMeanAndDeviation) {
  constexpr std::size_t count = 400'000;
  // Mean 700; variance (a^2 + b^2 + c^2 - ab - ac - bc)/18 = 390000/18.
  const WorkVariation variation = WorkVariation::triangular(400, 600, 1100);
  const Moments moments = moments_of(variation, count);
  const double deviation = std::sqrt(390000 / 18.0) / 700;
  EXPECT_NEAR(moments.mean, 1, 3 * deviation / std::sqrt(count));
  EXPECT_NEAR(moments.deviation, deviation, 0.01 * deviation);
  EXPECT_GE(moments.least, 400 / 700.0);
  EXPECT_LE(moments.most, 1100 / 700.0);
  EXPECT_NEAR(variation.factor(1), 1100 / 700.0, 1e-12);
  // A share (600 - 400)/(1100 - 400) is below the usual time.
  EXPECT_NEAR(variation.factor(200 / 700.0), 600 / 700.0, 1e-12);
  // Ends that are the usual time too, and no spread at all.
  EXPECT_NEAR(WorkVariation::triangular(1, 1, 4).factor(1e-9), 0.5, 1e-4);
  EXPECT_NEAR(WorkVariation::triangular(1, 4, 4).factor(1), 4 / 3.0, 1e-12);
  EXPECT_TRUE(WorkVariation::triangular(5, 5, 5).is_constant());
}

TEST(WorkVariation, ADrawGoesByUnitAndStageAlone) {
  LineModel line = steady_line({stage_of(1, 1), stage_of(1, 0)}, {50, 60}, 40);
  line.stages[1].variation = WorkVariation::log_normal(0.5);
  LineModel changed = line;
  changed.stages[0].buffer_after = 5;
  changed.stages[0].variation = WorkVariation::triangular(1, 2, 4);
  std::reverse(changed.random_stream_id.begin(), changed.random_stream_id.end());
  const std::vector<double> drawn_s = drawn_work_s(line, 9), changed_s = drawn_work_s(changed, 9);
  for (std::size_t unit = 0; unit < 40; ++unit) {
    EXPECT_EQ(drawn_s[2 * unit], 50);
    EXPECT_EQ(drawn_s[2 * unit + 1], changed_s[2 * (39 - unit) + 1]);
  }
  EXPECT_NE(drawn_s[1], drawn_s[3]);
  EXPECT_NE(drawn_s[1], drawn_work_s(line, 10)[1]);
}

TEST(WorkVariation, AUnitThatComesAgainTakesItsTimeAgain) {
  // The first visit and the second take the same; rework its own 10 s.
  LineModel line = steady_line({stage_of(1, 5), stage_of(1, 0)}, {4, 3}, 1);
  line.stages[1].variation = WorkVariation::log_normal(0.5);
  line.stages[1].yield = 0.5;
  line.stages[1].rework_to = 0;
  line.stages[1].rework_s = 10;
  int reworked = 0;
  for (std::uint64_t seed = 1; seed < 40; ++seed) {
    const double second_s = drawn_work_s(line, seed)[1];
    const LineRun run = run_calendar(line, seed);
    EXPECT_NEAR(run.makespan_s, 4 + second_s + (10 + second_s) * run.units[0].reworks, 1e-9);
    reworked += run.units[0].reworks > 0;
  }
  EXPECT_GT(reworked, 5);
}

TEST(WorkVariation, IsOfThePlansStage) {
  Plan plan = line_plan({timed_stage("weld", 999)});
  plan.line->stages[0].time_range_s = {400, 600, 1100};
  LineRequest request = request_with({});
  request.runs = 1;
  const LineResult line = line_of(plan, "AAAA", request);
  EXPECT_FALSE(line.certain);
  const RandomStream draws(1, 0, 3);
  double end_s = 0;
  for (std::uint64_t unit = 0; unit < 4; ++unit) {
    end_s += 700 * WorkVariation::triangular(400, 600, 1100).factor(draws.uniform(unit));
    EXPECT_NEAR(line.units[unit].end_s, end_s, 1e-9);
  }
  plan.line->stages[0].time_range_s = {600, 600, 600};
  EXPECT_EQ(line_of(plan, "AAAA", request).makespan_s, 2400);
  EXPECT_TRUE(line_of(plan, "AAAA", request).certain);
  plan.line->stages[0].time_range_s.clear();
  plan.line->stages[0].cv = 0;
  EXPECT_TRUE(line_of(plan, "AAAA", request).certain);
}

TEST(WorkVariation, CostsThroughputWhereBuffersAreSmall) {
  // Without a buffer between them, each unit at the second stage and the next at the first take as long as
  // the slower of the two: the rate is 1 over the mean of the larger of two log-normal times. Python, 200000
  // pairs of random.gauss: 0.793.
  LineModel line = steady_line({stage_of(1, 0), stage_of(1, 0)}, {1, 1}, 40'000);
  for (LineStage& stage : line.stages) stage.variation = WorkVariation::log_normal(0.5);
  const double rate = 40'000 / run_line(line, 3).makespan_s;
  EXPECT_NEAR(rate, 0.793, 0.008);
}

}  // namespace
}  // namespace seamtakt::test
