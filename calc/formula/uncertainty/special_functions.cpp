#include "formula/uncertainty/special_functions.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace seamtakt {
namespace {

// The trapezoidal rule on the whole line converges exponentially here: its error falls as exp(-2 pi y/h) with
// the half-width y of the strip in which the integrand stays bounded (pi/2), and as exp(-2 pi^2/(x h^2))
// where the integrand is nearly a Gaussian of width 1/sqrt(x). Both are below 1e-16 with this step.
double step_for(double x) {
  return std::min(0.25, 0.7 / std::sqrt(x));
}

// Beyond this exponent a term no longer changes the sum.
constexpr double negligible_exponent = 45;

template <class Weight>
double scaled_bessel_k(double x, Weight weight) {
  // The ends of the range, where the sum would never end: both functions diverge at 0 and vanish at infinity.
  if (!(x > 0)) return std::numeric_limits<double>::infinity();
  if (std::isinf(x)) return 0;
  const double step = step_for(x);
  double sum = 0.5;  // t = 0: exp(0) * weight(0) = 1, counted half
  for (double t = step;; t += step) {
    const double half = std::sinh(t / 2);
    const double exponent = 2 * x * half * half;  // x (cosh t - 1) without cancellation
    if (exponent > negligible_exponent) return sum * step;
    sum += std::exp(-exponent) * weight(t);
  }
}

}  // namespace

double scaled_bessel_k0(double x) {
  return scaled_bessel_k(x, [](double) { return 1.0; });
}

double scaled_bessel_k1(double x) {
  return scaled_bessel_k(x, [](double t) { return std::cosh(t); });
}

}  // namespace seamtakt
