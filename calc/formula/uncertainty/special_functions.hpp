#pragma once

#include <cmath>
#include <numbers>

#include "formula/real.hpp"

namespace seamtakt {

/// Functions that Dual itself lacks, for both number types. A function of a Dual
/// carries the exact derivative, written down beside it.

/// erf(x); d/dx = 2/sqrt(pi) exp(-x^2) (abramowitz-stegun, 7.1.1).
inline double error_function(double x) {
  return std::erf(x);
}
inline Dual error_function(const Dual& x) {
  const double slope = 2 * std::numbers::inv_sqrtpi * std::exp(-x.value() * x.value());
  return x.mapped(std::erf(x.value()), slope);
}

/// Standard normal distribution function, accurate in both tails.
inline double normal_probability(double x) {
  return 0.5 * std::erfc(-x / std::numbers::sqrt2);
}
inline Dual normal_probability(const Dual& x) {
  const double density =
      std::exp(-0.5 * x.value() * x.value()) * std::numbers::inv_sqrtpi / std::numbers::sqrt2;
  return x.mapped(normal_probability(x.value()), density);
}

/// Modified Bessel functions of the second kind with their exponential taken out, so that neither a large nor
/// a small argument leaves the range of a double: exp(x) K0(x) and exp(x) K1(x), x > 0. exp(x) K_n(x) =
/// INT_0^inf exp(-x (cosh t - 1)) cosh(n t) dt. Source: abramowitz-stegun, 9.6.24. Relative error below 1e-13
/// for 1e-10 <= x <= 1e6 (tested against std::cyl_bessel_k and the asymptotic series).
double scaled_bessel_k0(double x);
double scaled_bessel_k1(double x);

/// d/dx exp(x) K0(x) = exp(x) (K0(x) - K1(x)) (abramowitz-stegun, 9.6.27).
inline Dual scaled_bessel_k0(const Dual& x) {
  const double value = scaled_bessel_k0(x.value());
  return x.mapped(value, (value - scaled_bessel_k1(x.value())));
}

}  // namespace seamtakt
