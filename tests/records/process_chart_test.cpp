#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "records/statistics/process_chart.hpp"

namespace seamtakt::test {
namespace {

TEST(ProcessChart, HasTheLimitsOfIndividualsAndMovingRanges) {
  // Moving ranges 2, 1, 3: mean 2.
  const auto chart = process_chart({10, 12, 11, 14});
  ASSERT_TRUE(chart);
  EXPECT_DOUBLE_EQ(chart->centre, 11.75);
  EXPECT_DOUBLE_EQ(chart->mean_range, 2);
  EXPECT_NEAR(chart->upper, 11.75 + 2.66 * 2, 0.001) << "E2 = 2.660 for two values";
  EXPECT_NEAR(chart->lower, 11.75 - 2.66 * 2, 0.001);
  EXPECT_NEAR(chart->range_upper, 3.267 * 2, 1e-12);
  EXPECT_FALSE(process_chart({1}));
}

std::vector<std::size_t> places_of(RunsRule rule, const std::vector<double>& values) {
  const ProcessChart chart{0, 1, -3, 3, 1.128, 3.685};
  std::vector<std::size_t> places;
  for (const RunsSignal& signal : runs_signals(values, chart))
    if (signal.rule == rule) places.push_back(signal.at);
  return places;
}

TEST(RunsRules, SignalWhereAPatternIsComplete) {
  using Places = std::vector<std::size_t>;
  EXPECT_EQ(places_of(RunsRule::beyond_3_sigma, {0, 3.1, -3.1, 3.0}), (Places{1, 2}))
      << "3 sigma itself isn't beyond";
  EXPECT_EQ(places_of(RunsRule::two_of_three, {2.1, 0, 2.1}), (Places{2}));
  EXPECT_EQ(places_of(RunsRule::two_of_three, {2.1, 0, 0, 2.1}), (Places{}));
  EXPECT_EQ(places_of(RunsRule::two_of_three, {2.1, -2.1, 0}), (Places{})) << "on one side only";
  EXPECT_EQ(places_of(RunsRule::two_of_three, {2.1, 0, 2.2, 0}), (Places{2}))
      << "the last value is part of it";
  EXPECT_EQ(places_of(RunsRule::four_of_five, {1.1, 1.1, 0, 1.1, 1.1}), (Places{4}));
  EXPECT_EQ(places_of(RunsRule::four_of_five, {1.1, 1.1, 0, 0, 1.1, 1.1}), (Places{}));
  EXPECT_EQ(places_of(RunsRule::eight_in_a_row, std::vector<double>(9, -0.1)), (Places{7, 8}));
}

TEST(RunsRules, RarelySignalOnWhiteNoise) {
  std::mt19937 random(7);
  std::normal_distribution<double> noise;
  std::vector<double> values(20'000);
  for (double& value : values) value = noise(random);
  const auto signals = runs_signals(values, *process_chart(values));
  std::size_t beyond = 0;
  for (const auto& signal : signals) beyond += signal.rule == RunsRule::beyond_3_sigma ? 1 : 0;
  EXPECT_NEAR(static_cast<double>(beyond) / 20'000, 0.0027, 0.0015);
  EXPECT_LT(signals.size(), 20'000u / 30);
}

TEST(Capability, IsThatOfTheLimitsAndTheScatter) {
  std::vector<double> values;
  for (int i = 0; i < 50; ++i) values.push_back(i % 2 == 0 ? 99 : 101);
  const auto found = capability(values, 94, 106);
  ASSERT_TRUE(found);
  const double sd = std::sqrt(50.0 / 49);
  EXPECT_NEAR(found->overall_sd, sd, 1e-12);
  EXPECT_NEAR(*found->Pp, 12 / (6 * sd), 1e-12);
  EXPECT_NEAR(*found->Ppk, 6 / (3 * sd), 1e-12);
  EXPECT_NEAR(*found->Cpk, 6 / (3 * 2 / 1.128), 1e-12) << "each moving range is 2";
  EXPECT_LT(*found->Ppk_low_95, *found->Ppk);
  EXPECT_NEAR(*capability(values, 94, std::nullopt)->Ppk, 6 / (3 * sd), 1e-12) << "one limit is enough";
  EXPECT_FALSE(capability(values, 94, std::nullopt)->Pp);
  EXPECT_FALSE(capability({5, 5, 5}, 4, 6)->Ppk) << "nothing scatters";
}

TEST(Drift, FindsASlopeAndItsInterval) {
  std::vector<double> days, values;
  std::mt19937 random(3);
  std::normal_distribution<double> noise(0, 0.5);
  for (int i = 0; i < 40; ++i) {
    days.push_back(i * 0.5);
    values.push_back(200 + 0.3 * days.back() + noise(random));
  }
  const auto found = drift(days, values);
  ASSERT_TRUE(found);
  EXPECT_TRUE(found->is_certain());
  EXPECT_LT(found->low_95, 0.3);
  EXPECT_GT(found->high_95, 0.3);
  EXPECT_FALSE(drift({1, 1, 1}, {1, 2, 3})) << "no time has passed";
  EXPECT_FALSE(drift({1, 2}, {1, 2}));
}

TEST(Drift, IntervalsHoldTheTruthAsOftenAsTheySay) {
  std::mt19937 random(11);
  std::normal_distribution<double> noise;
  int holds = 0;
  for (int trial = 0; trial < 2000; ++trial) {
    std::vector<double> times, values;
    for (int i = 0; i < 8; ++i) {
      times.push_back(i);
      values.push_back(2.0 * i + noise(random));
    }
    const auto found = drift(times, values);
    holds += found->low_95 <= 2 && 2 <= found->high_95 ? 1 : 0;
  }
  EXPECT_NEAR(holds / 2000.0, 0.95, 0.02);
}

TEST(StudentT, ItsTailsAgreeWithTheQuantilesAndClosedForms) {
  for (const std::size_t n : {1, 2, 3, 5, 10, 30, 200})
    EXPECT_NEAR(student_t_two_sided(student_t_95(n), n), 0.05, 1e-5) << n;
  // One degree of freedom: 1 - 2/pi atan(t). Two: 1 - t/sqrt(t^2 + 2).
  for (const double t : {0.0, 0.3, 2.0, 40.0, -40.0}) {
    const double size = std::fabs(t);
    EXPECT_NEAR(student_t_two_sided(t, 1), 2 / M_PI * std::atan(1 / size), 1e-10) << t;
    EXPECT_NEAR(student_t_two_sided(t, 2), 1 - size / std::sqrt(size * size + 2), 1e-10) << t;
  }
  EXPECT_GT(student_t_two_sided(30, 40), 0);
}

TEST(FamilyRate, StepsUpThroughThePValues) {
  using Certain = std::vector<bool>;
  // 0.05 k/m: 0.0125, 0.025, 0.0375, 0.05. The third stands, so the second does too, above its own step.
  EXPECT_EQ(certain_at_family_rate({0.9, 0.03, 0.001, 0.026}, 0.05), (Certain{false, true, true, true}));
  EXPECT_EQ(certain_at_family_rate({0.02, 0.9, 0.9, 0.9}, 0.05), (Certain{false, false, false, false}));
  EXPECT_EQ(certain_at_family_rate({0.04}, 0.05), Certain{true});
  EXPECT_EQ(certain_at_family_rate({}, 0.05), Certain{});
}

TEST(FamilyRate, FiveHundredSeriesWithoutDriftSeldomRaiseAnAlarm) {
  std::mt19937_64 random(20260801);
  std::normal_distribution<double> noise(0, 1);
  int single = 0, families_with_alarm = 0;
  for (int family = 0; family < 40; ++family) {
    std::vector<double> p_values;
    for (int series = 0; series < 500; ++series) {
      std::vector<double> days, values;
      for (int k = 0; k < 12; ++k) {
        days.push_back(k);
        values.push_back(noise(random));
      }
      p_values.push_back(drift(days, values)->p_value);
      single += p_values.back() < 0.05;
    }
    const std::vector<bool> certain = certain_at_family_rate(p_values, 0.05);
    families_with_alarm += std::find(certain.begin(), certain.end(), true) != certain.end();
  }
  EXPECT_NEAR(single / 40.0, 25, 3) << "each alone raises false alarms at its own rate";
  EXPECT_LE(families_with_alarm, 6) << "5 % of 40 families are 2; more than 6 have a chance of 0.4 %";
}

TEST(StudentT, AgreesWithItsTable) {
  // Two-sided 95 %, printed to three decimals in any table of the distribution.
  for (const auto& [freedom, want] : {std::pair{1u, 12.706},
                                      {2u, 4.303},
                                      {5u, 2.571},
                                      {10u, 2.228},
                                      {11u, 2.201},
                                      {12u, 2.179},
                                      {20u, 2.086},
                                      {30u, 2.042},
                                      {60u, 2.000},
                                      {120u, 1.980}})
    EXPECT_NEAR(student_t_95(freedom), want, 0.0006) << freedom;
}

}  // namespace
}  // namespace seamtakt::test
