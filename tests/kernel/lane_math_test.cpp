#include "formula/kernel/lane_math.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

using namespace seamtakt::detail;

namespace {

double relative(double found, double wanted) {
  return std::abs(found - wanted) / std::abs(wanted);
}

double log_by_lanes(double x) {
  return log_of(split_fraction(x));
}

}  // namespace

TEST(LaneMath, the_exponential_is_the_librarys_from_its_lowest_exponent_to_0) {
  std::mt19937_64 random(11);
  double worst = 0;
  for (int run = 0; run < 400000; ++run) {
    const double share = static_cast<double>(random() >> 11) * 0x1p-53;
    for (const double x : {lowest_exponent * share, -share, -1e-9 * share})
      worst = std::max(worst, relative(exp_of_negative(x), std::exp(x)));
  }
  EXPECT_LT(worst, 3e-14);
  EXPECT_NEAR(exp_of_negative(0), 1, 3e-14);
  EXPECT_TRUE(std::isnormal(exp_of_negative(lowest_exponent)));
}

TEST(LaneMath, the_logarithm_is_the_librarys_between_0_and_1) {
  std::mt19937_64 random(12);
  double worst = 0;
  for (int run = 0; run < 400000; ++run) {
    const double share = (static_cast<double>(random() >> 32) + 0.5) * 0x1p-32;
    for (const double x : {share, 1 - share * 1e-3, share * 1e-6})
      worst = std::max(worst, relative(log_by_lanes(x), std::log(x)));
  }
  // The two ends of what a word of 32 bits can give, and powers of two and their neighbours.
  for (const double x : {0x1p-33, 1 - 0x1p-33, 0.5, std::nextafter(0.5, 0), std::nextafter(0.5, 1),
                         std::sqrt(0.5), std::nextafter(std::sqrt(0.5), 0), 0.25, 0x1p-1000})
    worst = std::max(worst, relative(log_by_lanes(x), std::log(x)));
  EXPECT_LT(worst, 4e-14);
}

TEST(LaneMath, sine_and_cosine_are_the_librarys_within_an_eighth_of_a_turn) {
  double worst_sine = 0, worst_cosine = 0, worst_circle = 0;
  for (int i = -40000; i <= 40000; ++i) {
    const double x = std::numbers::pi / 4 * i / 40000, s = sine_near_0(x), c = cosine_near_0(x);
    if (i != 0) worst_sine = std::max(worst_sine, relative(s, std::sin(x)));
    worst_cosine = std::max(worst_cosine, relative(c, std::cos(x)));
    worst_circle = std::max(worst_circle, std::abs(s * s + c * c - 1));
  }
  EXPECT_EQ(sine_near_0(0), 0);
  EXPECT_LT(worst_sine, 1e-14);
  EXPECT_LT(worst_cosine, 2e-13);
  EXPECT_LT(worst_circle, 2e-13);
}
