#pragma once

namespace seamtakt {

/// Handbook values of plain carbon steel for conduction formulas (aws-welding-handbook, recalled). EN 1011-2
/// holds other values: don't mix the two.
inline constexpr double handbook_conductivity_W_mmK = 0.028;
inline constexpr double handbook_heat_capacity_J_mm3K = 0.0044;

}  // namespace seamtakt
