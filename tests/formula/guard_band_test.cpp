#include "formula/uncertainty/guard_band.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace seamtakt {
namespace {

using L = Limits<double>;

TEST(GuardBand, TakesTheExpandedUncertaintyOffBothLimits) {
  const L acceptance = acceptance_interval(0.1, L{9, 11});
  EXPECT_DOUBLE_EQ(*acceptance.lower, 9.2);
  EXPECT_DOUBLE_EQ(*acceptance.upper, 10.8);
  EXPECT_FALSE(acceptance_interval(0.1, L{std::nullopt, 11}).lower);
}

TEST(GuardBand, CountsAValueOnALimitAsInside) {
  EXPECT_EQ(decision_with_guard_band(9.2, 0.1, L{9, 11}), GuardDecision::pass);
  EXPECT_EQ(decision_with_guard_band(9.0, 0.1, L{9, 11}), GuardDecision::undecided);
  EXPECT_EQ(decision_with_guard_band(11.0, 0.0, L{9, 11}), GuardDecision::pass);
  EXPECT_EQ(decision_with_guard_band(11.0 + 1e-12, 0.0, L{9, 11}), GuardDecision::fail);
}

TEST(GuardBand, AcceptsNothingWhereTheUncertaintyIsTooLarge) {
  for (double value : {9.0, 9.5, 10.0, 10.5, 11.0})
    EXPECT_EQ(decision_with_guard_band(value, 0.6, L{9, 11}), GuardDecision::undecided);
}

/// Second route: the normal density integrated between the limits.
double integrated_probability(double value, double u, double lower, double upper) {
  const int n = 20000;
  double sum = 0;
  for (int i = 0; i < n; ++i) {
    const double x = lower + (upper - lower) * (i + 0.5) / n;
    sum += std::exp(-0.5 * std::pow((x - value) / u, 2));
  }
  return sum * (upper - lower) / n / (u * std::sqrt(2 * std::numbers::pi));
}

TEST(Conformity, EqualsTheIntegratedDensity) {
  for (double value : {8.0, 9.1, 10.0, 10.97, 12.5})
    EXPECT_NEAR(probability_of_conformity(value, 0.3, L{9, 11}), integrated_probability(value, 0.3, 9, 11),
                1e-8);
}

TEST(Conformity, KeepsTheDigitsOfASmallProbability) {
  const double above = probability_of_conformity(20.0, 1.0, L{0, 10});
  EXPECT_NEAR(above / 7.61985302416047e-24, 1, 1e-10);
  EXPECT_NEAR(probability_of_conformity(-10.0, 1.0, L{0, 10}) / above, 1, 1e-10);
}

TEST(Conformity, OfAnAcceptedValueIsAtLeastTheGuardBandsOneSidedLevel) {
  // w = 2 u leaves at most Phi(-2) = 2.3 % beyond one limit.
  for (double value = 9.2; value <= 10.8; value += 0.05)
    EXPECT_GE(probability_of_conformity(value, 0.1, L{9, 11}), 0.9772);
}

RC_GTEST_PROP(Conformity, IsAProbabilityThatFallsTowardsTheLimit, ()) {
  const double u = *rc::gen::inRange(1, 500) / 100.0, upper = *rc::gen::inRange(-1000, 1000) / 10.0;
  const double value = *rc::gen::inRange(-2000, 2000) / 10.0;
  const double here = probability_of_conformity(value, u, L{std::nullopt, upper});
  RC_ASSERT(here >= 0 && here <= 1);
  RC_ASSERT(probability_of_conformity(value + 0.1, u, L{std::nullopt, upper}) <= here);
  const double below = probability_of_conformity(value, u, L{upper, std::nullopt});
  RC_ASSERT(std::abs(here + below - 1) < 1e-12);
}

}  // namespace
}  // namespace seamtakt
