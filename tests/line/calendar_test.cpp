// The line's calendar against sums made by hand, a plain simulator, the recurrence and queueing theory.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <string_view>

#include "line/flow_recurrence.hpp"
#include "line/line_calendar.hpp"
#include "line/random_stream.hpp"
#include "line/takt_count.hpp"
#include "plain_line.hpp"
#include "small_line.hpp"
#include "support/sanitized.hpp"

namespace seamtakt::test {
namespace {

bool long_tests() {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  return length && std::string_view(length) == "long";
}

std::vector<double> run_ends(const LineRun& run) {
  std::vector<double> ends;
  for (const UnitTimes& unit : run.units) ends.push_back(unit.end_s);
  return ends;
}

TEST(LineByHand, OneServerWithoutChanceGivesAUnitEveryServiceTime) {
  const LineRun run = run_calendar(steady_line({stage_of(1, 0)}, {1200}, 24), 1);
  EXPECT_EQ(run.makespan_s, 24 * 1200);
  EXPECT_EQ(throughput_per_h(run), 3);
  EXPECT_EQ(run.stages[0].work_s, run.makespan_s);
  EXPECT_EQ(run.units[3].start_s, 3600);
  EXPECT_EQ(run.units[3].end_s, 4800);
}

TEST(LineByHand, TwoStagesWithoutBufferBlockTheFasterFirst) {
  // 3 s, then 5 s. Unit 1: 0-3, 3-8. Unit 2: 3-6, blocked 6-8, 8-13. Unit 3: 8-11, blocked 11-13, 13-18.
  const LineRun run = run_calendar(steady_line({stage_of(1, 0), stage_of(1, 0)}, {3, 5}, 3), 1);
  EXPECT_EQ(run_ends(run), (std::vector<double>{8, 13, 18}));
  EXPECT_EQ(run.units[2].start_s, 8);
  EXPECT_EQ(run.stages[0].blocked_s, 4);
  EXPECT_EQ(run.stages[0].work_s, 9);
  EXPECT_EQ(run.stages[1].work_s, 15);
  EXPECT_EQ(run.stages[1].blocked_s, 0);
}

TEST(LineByHand, ABufferOfOneTakesTheUnitThatWasBlocked) {
  // Unit 2 waits 6-8 in the buffer; unit 3 goes there at 9.
  const LineRun run = run_calendar(steady_line({stage_of(1, 1), stage_of(1, 0)}, {3, 5}, 4), 1);
  EXPECT_EQ(run_ends(run), (std::vector<double>{8, 13, 18, 23}));
  // Unit 4: 9-12 on the first server, blocked until unit 3 leaves the buffer at 13.
  EXPECT_EQ(run.units[3].start_s, 9);
  EXPECT_EQ(run.stages[0].blocked_s, 1);
}

TEST(LineByHand, ASlowFirstStageStarvesTheSecond) {
  const LineRun run = run_calendar(steady_line({stage_of(1, 2), stage_of(1, 0)}, {5, 3}, 3), 1);
  EXPECT_EQ(run_ends(run), (std::vector<double>{8, 13, 18}));
  EXPECT_EQ(run.stages[1].work_s, 9);  // 9 of 18 s starved
}

TEST(LineByHand, TwoServersShareAStage) {
  // 10 s on two servers, then 4 s: both end at 10, one continues 10-14; the second unit waits on its
  // server until 14 (no buffer), then 14-24.
  const LineRun run = run_calendar(steady_line({stage_of(2, 0), stage_of(1, 0)}, {10, 4}, 4), 1);
  EXPECT_EQ(run_ends(run), (std::vector<double>{14, 18, 24, 28}));
  EXPECT_EQ(run.stages[0].blocked_s, 4);
  EXPECT_EQ(run.units[3].start_s, 14);
}

TEST(LineByHand, AUnitSentBackIsReworkedThereAndPassesTheRestAgain) {
  LineModel line = steady_line({stage_of(1, 5), stage_of(1, 0)}, {4, 3}, 1);
  line.stages[1].yield = 0.5;
  line.stages[1].rework_to = 0;
  line.stages[1].rework_s = 10;
  for (std::uint64_t seed = 1; seed < 50; ++seed) {
    const LineRun run = run_calendar(line, seed);
    // 4 + 3, and 10 + 3 for each time that it is sent back.
    EXPECT_EQ(run.makespan_s, 7 + 13 * run.units[0].reworks);
  }
}

TEST(LineByHand, ChangesAtTheCellStopItOnce) {
  LineModel line = steady_line({stage_of(1, 0)}, {10}, 3);
  line.change_stage = 0;
  line.change_s = {0, 7, 0};
  const LineRun run = run_calendar(line, 1);
  EXPECT_EQ(run_ends(run), (std::vector<double>{10, 27, 37}));
  EXPECT_EQ(run.stages[0].stop_s, 7);
}

TEST(LineByHand, StopsWithoutARepairTimeStretchTheWork) {
  LineModel line = steady_line({stage_of(1, 0)}, {9}, 2);
  line.stages[0].availability = 0.9;
  const LineRun run = run_calendar(line, 1);
  EXPECT_DOUBLE_EQ(run.makespan_s, 20);
}

TEST(LineByHand, NoUnitsTakeNoTime) {
  const LineModel line = steady_line({stage_of(1, 0), stage_of(2, 1)}, {1, 1}, 0);
  EXPECT_EQ(run_calendar(line, 1).makespan_s, 0);
  EXPECT_EQ(throughput_per_h(run_calendar(line, 1)), 0);
}

TEST(LineCalendar, AgreesWithAPlainSimulatorToTheLastBit) {
  const std::uint64_t lines = long_tests() ? 20'000 : 1500;
  std::size_t reworks = 0, blocked = 0;
  for (std::uint64_t seed = 1; seed <= lines; ++seed) {
    const LineModel line = random_line(seed, {seed % 2 == 0, seed % 3 == 0});
    const LineRun run = run_calendar(line, seed);
    const PlainLine plain(line, seed);
    for (std::size_t u = 0; u < run.units.size(); ++u) {
      ASSERT_EQ(run.units[u].start_s, plain.units[u].start_s) << "line " << seed << " unit " << u;
      ASSERT_EQ(run.units[u].end_s, plain.units[u].end_s) << "line " << seed << " unit " << u;
      ASSERT_EQ(run.units[u].scrapped, plain.units[u].scrapped) << "line " << seed << " unit " << u;
      reworks += plain.units[u].reworks > 0;
    }
    for (std::size_t j = 0; j < run.stages.size(); ++j) {
      ASSERT_NEAR(run.stages[j].blocked_s, plain.blocked_s[j], 1e-9 * (1 + run.makespan_s))
          << "line " << seed;
      blocked += plain.blocked_s[j] > 0;
    }
  }
  EXPECT_GT(reworks, 500u);  // else the lines were too tame
  EXPECT_GT(blocked, 500u);
}

TEST(LineCalendar, AgreesWithTheRecurrenceToTheLastBit) {
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    const LineModel line = random_line(seed, {});
    ASSERT_TRUE(recurrence_covers(line));
    const LineRun calendar = run_calendar(line, seed), recurrence = run_recurrence(line, seed);
    ASSERT_EQ(calendar.makespan_s, recurrence.makespan_s) << "line " << seed;
    for (std::size_t u = 0; u < calendar.units.size(); ++u) {
      ASSERT_EQ(calendar.units[u].start_s, recurrence.units[u].start_s) << "line " << seed << " unit " << u;
      ASSERT_EQ(calendar.units[u].end_s, recurrence.units[u].end_s) << "line " << seed << " unit " << u;
    }
    for (std::size_t j = 0; j < calendar.stages.size(); ++j) {
      ASSERT_EQ(calendar.stages[j].work_s, recurrence.stages[j].work_s) << "line " << seed;
      ASSERT_EQ(calendar.stages[j].stop_s, recurrence.stages[j].stop_s) << "line " << seed;
      ASSERT_EQ(calendar.stages[j].blocked_s, recurrence.stages[j].blocked_s) << "line " << seed;
    }
  }
}

TEST(LineCalendar, AgreesWithTheRecurrenceOverManyBlocksAndStages) {
  // More units than a block of rows, more stages than are unrolled, a buffer larger than a block.
  std::vector<LineStage> stages(13, stage_of(1, 2));
  stages[3].buffer_after = 0;
  stages[5].buffer_after = 400;
  LineModel line = steady_line(stages, std::vector<double>(13, 0), 3000);
  const RandomStream random(5, 0, 0);
  for (std::size_t i = 0; i < line.work_s.size(); ++i) line.work_s[i] = random.uniform(i);
  EXPECT_EQ(run_ends(run_calendar(line, 1)), run_ends(run_recurrence(line, 1)));
}

TEST(LineCalendar, TimesAreLinearInMaxPlus) {
  // Twice all times, twice all ends (a power of two keeps the bits); and no time shorter, no end earlier.
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    LineModel line = random_line(seed, {});
    for (LineStage& stage : line.stages) stage.availability = 1;
    const std::vector<double> ends = run_ends(run_calendar(line, 1));
    LineModel longer = line;
    for (double& work_s : longer.work_s) work_s *= 2;
    for (double& change_s : longer.change_s) change_s *= 2;
    const std::vector<double> doubled = run_ends(run_calendar(longer, 1));
    for (std::size_t u = 0; u < ends.size(); ++u) ASSERT_EQ(doubled[u], 2 * ends[u]);
    if (!line.work_s.empty()) line.work_s[line.work_s.size() / 2] += 1;
    const std::vector<double> later = run_ends(run_calendar(line, 1));
    for (std::size_t u = 0; u < ends.size(); ++u) ASSERT_GE(later[u], ends[u]);
  }
}

TEST(LineCalendar, LittlesLawHoldsOnEveryRun) {
  // Units in the line times makespan = sum of the times in it; the left side is integrated event by event.
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    const LineModel line = random_line(seed, {true, true});
    LineTrace trace;
    const LineRun run = run_calendar(line, seed, trace);
    double flow_s = 0;
    for (const UnitTimes& unit : run.units) flow_s += unit.end_s - unit.start_s;
    ASSERT_NEAR(trace.units_in_line_s, flow_s, 1e-11 * (1 + flow_s)) << "line " << seed;
  }
}

TEST(LineCalendar, WatchingChangesNothingAndTheChainHasNoGap) {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    const LineModel line = random_line(seed, {true, true});
    LineTrace trace;
    const LineRun watched = run_calendar(line, seed, trace), unwatched = run_calendar(line, seed);
    ASSERT_EQ(run_ends(watched), run_ends(unwatched));
    for (std::size_t u = 0; u < watched.units.size(); ++u) {
      const Activity* at = &trace.activities[static_cast<std::size_t>(trace.leaving[u])];
      ASSERT_EQ(at->end_s, watched.units[u].end_s);
      for (; at->trigger >= 0; at = &trace.activities[static_cast<std::size_t>(at->trigger)])
        ASSERT_EQ(at->start_s, trace.activities[static_cast<std::size_t>(at->trigger)].end_s);
      ASSERT_EQ(at->start_s, 0);
    }
  }
}

/// Blocking probability and mean number of M/M/1/K from simulation, with standard errors over replications.
struct Estimate {
  double mean = 0, se = 0;
};

Estimate estimate_of(const std::vector<double>& values) {
  Estimate estimate;
  for (const double value : values) estimate.mean += value / static_cast<double>(values.size());
  double squares = 0;
  for (const double value : values) squares += (value - estimate.mean) * (value - estimate.mean);
  const auto n = static_cast<double>(values.size());
  estimate.se = std::sqrt(squares / (n - 1) / n);
  return estimate;
}

void check_mm1k(double arrival_mean_s, double service_mean_s, int buffer, std::size_t units) {
  // A source with exponential times before a server with exponential times: while it is blocked it gives
  // nothing, which is an M/M/1/K that turns arrivals away, K = buffer + the server + the one that blocks.
  // Kleinrock, Queueing Systems I (1975), 3.6, recalled: p_n = (1-r) r^n / (1 - r^(K+1)).
  constexpr std::size_t replications = 20;
  std::vector<double> blocked, number;
  for (std::uint64_t seed = 1; seed <= replications; ++seed) {
    LineModel line = steady_line({stage_of(1, buffer), stage_of(1, 0)}, {0, 0}, units / replications);
    const RandomStream arrivals(seed, 0, 77), services(seed, 1, 77);
    for (std::size_t u = 0; u < line.unit_count(); ++u) {
      line.work_s[2 * u] = -std::log(arrivals.uniform(u)) * arrival_mean_s;
      line.work_s[2 * u + 1] = -std::log(services.uniform(u)) * service_mean_s;
    }
    LineTrace trace;
    const LineRun run = run_calendar(line, seed, trace);
    double number_s = 0;
    for (const Activity& activity : trace.activities)
      if (activity.stage == 0) number_s += run.units[activity.unit].end_s - activity.end_s;
    blocked.push_back(run.stages[0].blocked_s / run.makespan_s);
    number.push_back(number_s / run.makespan_s);
  }
  const int capacity = buffer + 2;
  const double ratio = service_mean_s / arrival_mean_s;
  double sum = 0, weighted = 0;
  for (int n = 0; n <= capacity; ++n) {
    sum += std::pow(ratio, n);
    weighted += n * std::pow(ratio, n);
  }
  const Estimate p = estimate_of(blocked), l = estimate_of(number);
  EXPECT_NEAR(p.mean, std::pow(ratio, capacity) / sum, 3 * p.se) << "ratio " << ratio << " buffer " << buffer;
  EXPECT_NEAR(l.mean, weighted / sum, 3 * l.se) << "ratio " << ratio << " buffer " << buffer;
  EXPECT_LT(p.se, 0.01);
}

TEST(LineQueue, BlocksAndQueuesLikeMM1K) {
  const std::size_t units = rounds<std::size_t>(1'000'000, 100'000);
  check_mm1k(1, 0.8, 3, units);
  check_mm1k(1, 0.5, 0, units);
  check_mm1k(1, 1.25, 5, units);
}

TEST(LineStops, TakeTheShareThatAvailabilityLeaves) {
  LineModel line = steady_line({stage_of(1, 0)}, {100}, 200'000);
  line.stages[0].availability = 0.9;
  line.stages[0].repair_s = 60;
  const LineRun run = run_calendar(line, 3);
  // Stops: Poisson, 1 in 540 s of work, 60 s exponential: variance of the sum = 2*60^2*count.
  const double stops = 200'000 * 100 / 540.0;
  EXPECT_NEAR(run.stages[0].stop_s, stops * 60, 3 * std::sqrt(2 * 3600 * stops));
}

TEST(LineStops, GoByUnitAndStageAlone) {
  // A buffer more somewhere else, another order: each unit meets the same stop at its stage.
  LineModel line = steady_line({stage_of(1, 1), stage_of(1, 0)}, {50, 60}, 40);
  line.stages[1].availability = 0.7;
  line.stages[1].repair_s = 30;
  LineModel changed = line;
  changed.stages[0].buffer_after = 5;
  std::reverse(changed.random_stream_id.begin(), changed.random_stream_id.end());
  LineTrace trace, changed_trace;
  run_calendar(line, 9, trace);
  run_calendar(changed, 9, changed_trace);
  std::vector<double> by_number(40), changed_by_number(40);
  for (const Activity& a : trace.activities)
    if (a.stage == 1) by_number[line.random_stream_id[a.unit]] = a.repair_s;
  for (const Activity& a : changed_trace.activities)
    if (a.stage == 1) changed_by_number[changed.random_stream_id[a.unit]] = a.repair_s;
  EXPECT_EQ(by_number, changed_by_number);
  EXPECT_GT(*std::max_element(by_number.begin(), by_number.end()), 0);
}

TEST(LineStops, YieldSendsItsShareBack) {
  LineModel line = steady_line({stage_of(1, 0)}, {1}, 100'000);
  line.stages[0].yield = 0.96;
  line.stages[0].rework_to = 0;
  line.stages[0].rework_s = 1;
  double reworks = 0;
  const LineRun run = run_calendar(line, 5);
  for (const UnitTimes& unit : run.units) reworks += unit.reworks;
  // Geometric: mean 0.04/0.96 a unit, variance 0.04/0.96^2.
  EXPECT_NEAR(reworks, 1e5 * 0.04 / 0.96, 3 * std::sqrt(1e5 * 0.04) / 0.96);
}

}  // namespace
}  // namespace seamtakt::test
