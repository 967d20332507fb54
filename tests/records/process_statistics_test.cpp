#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "plan/fields/plan_file.hpp"
#include "records/statistics/process_statistics.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

/// A plan whose schedule F allows 24 to 32 V; invented.
Plan plan_with_limits() {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  Schedule& schedule = *find_by_id(plan.schedules, "F");
  schedule.limits = ScheduleLimits{};
  schedule.limits->voltage_V = Interval{24, 32};
  return plan;
}

PassRecord record(const char* robot, int number, double voltage_V) {
  PassRecord made;
  made.unit_serial = "U" + std::to_string(number);
  made.weldment = "X";
  made.seam = "S1";
  made.pass = 1;
  made.schedule = "F";
  made.robot = robot;
  made.arc_time_s = 10;
  made.has_calendar_time = true;
  made.first_arc_ns = number * std::int64_t{86400} * 1'000'000'000;
  made.steady.time_s = 9;
  made.steady.voltage_V = voltage_V;
  return made;
}

const QuantityStatistics* voltage_on(const ProcessStatistics& statistics, const char* robot) {
  for (const QuantityStatistics& of : statistics.quantities)
    if (of.robot == robot && of.quantity == "voltage_V") return &of;
  return nullptr;
}

std::ptrdiff_t count(const Findings& findings, const char* rule) {
  return std::count_if(findings.begin(), findings.end(),
                       [&](const Finding& finding) { return finding.rule == rule; });
}

TEST(ProcessStatistics, robots_have_charts_of_their_own) {
  // Each is steady at a level of its own: pooled, every value would be beyond the other's.
  std::vector<PassRecord> records;
  for (int i = 0; i < 12; ++i) records.push_back(record("R1", i, 27 + 0.05 * (i % 2)));
  for (int i = 0; i < 12; ++i) records.push_back(record("R2", i, 29 + 0.05 * (i % 2)));
  Findings findings;
  const ProcessStatistics statistics = process_statistics(records, plan_with_limits(), findings);
  const QuantityStatistics *first = voltage_on(statistics, "R1"), *second = voltage_on(statistics, "R2");
  ASSERT_TRUE(first && second);
  EXPECT_EQ(first->values.size(), 12u);
  EXPECT_NEAR(first->chart.centre, 27.025, 1e-12);
  EXPECT_NEAR(second->chart.centre, 29.025, 1e-12);
  EXPECT_EQ(count(findings, "statistics.signal"), 0);
}

TEST(ProcessStatistics, a_chart_that_signals_by_several_rules_is_one_finding) {
  std::vector<PassRecord> records;
  for (int i = 0; i < 12; ++i) records.push_back(record("R1", i, 27 + 0.01 * (i % 2)));
  for (int i = 12; i < 24; ++i) records.push_back(record("R1", i, 28 + 0.01 * (i % 2)));
  Findings findings;
  const ProcessStatistics statistics = process_statistics(records, plan_with_limits(), findings);
  const QuantityStatistics* of = voltage_on(statistics, "R1");
  ASSERT_TRUE(of);
  std::vector<RunsRule> rules;
  for (const RunsSignal& signal : of->chart_signals) rules.push_back(signal.rule);
  std::sort(rules.begin(), rules.end());
  EXPECT_GT(std::unique(rules.begin(), rules.end()) - rules.begin(), 1);
  EXPECT_EQ(count(findings, "statistics.signal"), 1);
}

TEST(ProcessStatistics, capability_is_judged_by_its_lower_bound) {
  // Ppk about 1.6 from ten passes: the bound is below 1.33, from a hundred it isn't.
  const auto warned = [](int passes) {
    std::vector<PassRecord> records;
    for (int i = 0; i < passes; ++i) records.push_back(record("R1", i, 28 + (i % 2 ? 0.8 : -0.8)));
    Findings findings;
    const ProcessStatistics statistics = process_statistics(records, plan_with_limits(), findings);
    EXPECT_GT(*voltage_on(statistics, "R1")->capability->Ppk, 1.5);
    return count(findings, "statistics.capability.low");
  };
  EXPECT_EQ(warned(10), 1);
  EXPECT_EQ(warned(200), 0);
}

TEST(ProcessStatistics, drifts_by_chance_among_many_seams_are_not_said_and_a_real_one_is) {
  std::mt19937_64 random(7);
  std::normal_distribution<double> noise(0, 0.2);
  std::vector<PassRecord> records;
  for (int seam = 0; seam < 200; ++seam)
    for (int day = 0; day < 12; ++day) {
      records.push_back(record("R1", day, 28 + noise(random) + (seam == 17 ? 0.5 * day : 0)));
      records.back().seam = "S" + std::to_string(seam);
    }
  Findings findings;
  const ProcessStatistics statistics = process_statistics(records, plan_with_limits(), findings);
  ASSERT_EQ(statistics.drifts.size(), 1u);
  EXPECT_EQ(statistics.drifts[0].seam, "S17");
  EXPECT_NEAR(statistics.drifts[0].per_day.slope, 0.5, 0.1);
  EXPECT_EQ(count(findings, "statistics.drift"), 1);
}

}  // namespace
}  // namespace seamtakt::test
