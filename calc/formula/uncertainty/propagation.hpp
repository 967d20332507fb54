#pragma once

#include "formula/quantities/quantity.hpp"

namespace seamtakt {

using UncertaintyByName = std::map<std::string, double, std::less<>>;

/// u(key) = sqrt(sum over inputs of (d key/d x * u(x))^2), inputs independent, slopes by automatic
/// differentiation of the same template. Source: jcgm-100, 5.1.2. A key whose slope isn't finite (a kink, the
/// square root of 0) gets no u and a finding.
void add_first_order_uncertainty(const Quantity& quantity, const Inputs<double>& inputs,
                                 const UncertaintyByName& standard_uncertainty, QuantityAnswer& answered);

/// The second route: each uncertain input drawn from a normal distribution, the model run for each sample,
/// the standard deviation of what comes out. Source: jcgm-101, 7. The random numbers are a function of (seed,
/// sample, input) alone and sums are formed in blocks of fixed size, so threads don't change a bit of the
/// result.
void add_monte_carlo_uncertainty(const Quantity& quantity, const Inputs<double>& inputs,
                                 const QuantityRequest& request, QuantityAnswer& answered);

/// Standard normal deviate number (sample, input) of a seed, by Box and Muller from two hashed counters.
double normal_deviate(std::uint64_t seed, std::uint64_t sample, std::uint64_t input);

}  // namespace seamtakt
