#pragma once

#include <cstdint>
#include <optional>

#include "formula/uncertainty/propagation.hpp"

namespace seamtakt {

/// Standard deviations by result key, drawn by a row kernel, for the requests that one covers: heat input
/// from voltage, current and travel speed, whose uncertainties are at most a tenth of their values. Empty for
/// any other: each sample goes through the quantity's own template then. The samples are raised to a whole
/// number of the kernel's rows (512).
std::optional<UncertaintyByName> fast_monte_carlo(const Quantity& quantity, const Inputs<double>& inputs,
                                                  const QuantityRequest& request,
                                                  const Results<double>& results);

}  // namespace seamtakt
