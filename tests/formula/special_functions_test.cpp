#include "formula/uncertainty/special_functions.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace seamtakt {
namespace {

TEST(ScaledBessel, EqualsTheStandardLibraryWhereThatNeitherOverflowsNorUnderflows) {
  for (double x : {1e-10, 1e-6, 1e-3, 0.02, 0.5, 1.0, 1.9, 2.1, 5.0, 7.84, 20.0, 100.0, 600.0}) {
    const double scale = std::exp(x);
    EXPECT_NEAR(scaled_bessel_k0(x) / (scale * std::cyl_bessel_k(0, x)), 1, 2e-13) << "x = " << x;
    EXPECT_NEAR(scaled_bessel_k1(x) / (scale * std::cyl_bessel_k(1, x)), 1, 2e-13) << "x = " << x;
  }
}

// Abramowitz & Stegun 9.8.6, stated error below 1.9e-7 of x^0.5 e^x K0(x).
double polynomial_scaled_k0(double x) {
  const double t = 2 / x;
  const double coefficients[] = {1.25331414, -0.07832358, 0.02189568, -0.01062446,
                                 0.00587872, -0.00251540, 0.00053208};
  double sum = 0;
  for (int i = 6; i >= 0; --i) sum = sum * t + coefficients[i];
  return sum / std::sqrt(x);
}

TEST(ScaledBessel, AgreesWithThePublishedPolynomialWithinItsStatedError) {
  for (double x = 2; x < 300; x *= 1.37)
    EXPECT_NEAR(scaled_bessel_k0(x) * std::sqrt(x), polynomial_scaled_k0(x) * std::sqrt(x), 2e-7)
        << "x = " << x;
}

TEST(ScaledBessel, FollowsTheAsymptoticSeriesWhereTheUnscaledFunctionIsZero) {
  for (double x : {1e3, 1e4, 1e6}) {
    const double leading = std::sqrt(std::numbers::pi / (2 * x));
    const double series0 = leading * (1 - 1 / (8 * x) + 9 / (128 * x * x));
    const double series1 = leading * (1 + 3 / (8 * x) - 15 / (128 * x * x));
    EXPECT_NEAR(scaled_bessel_k0(x) / series0, 1, 1e-9) << "x = " << x;
    EXPECT_NEAR(scaled_bessel_k1(x) / series1, 1, 1e-9) << "x = " << x;
  }
}

template <class Function>
double central_difference(Function f, double x, double step) {
  return (f(x + step) - f(x - step)) / (2 * step);
}

TEST(SpecialFunctions, CarryTheirDerivative) {
  for (double x : {-2.0, -0.3, 0.0, 0.7, 3.0}) {
    const Dual at = seeded(x, 3);
    EXPECT_NEAR(error_function(at).derivatives()[3],
                central_difference([](double y) { return error_function(y); }, x, 1e-5), 1e-9);
    EXPECT_NEAR(normal_probability(at).derivatives()[3],
                central_difference([](double y) { return normal_probability(y); }, x, 1e-5), 1e-9);
    EXPECT_EQ(error_function(at).derivatives()[0], 0);
  }
  for (double x : {0.05, 1.0, 6.0, 400.0})
    EXPECT_NEAR(scaled_bessel_k0(seeded(x, 0)).derivatives()[0] /
                    central_difference([](double y) { return scaled_bessel_k0(y); }, x, 1e-4 * x),
                1, 1e-6)
        << "x = " << x;
}

TEST(NormalProbability, KeepsItsDigitsInTheTail) {
  EXPECT_NEAR(normal_probability(1.959963984540054), 0.975, 1e-15);
  EXPECT_NEAR(normal_probability(-10.0) / 7.61985302416047e-24, 1, 1e-12);
  EXPECT_NEAR(normal_probability(0.3) + normal_probability(-0.3), 1, 1e-15);
}

}  // namespace
}  // namespace seamtakt
