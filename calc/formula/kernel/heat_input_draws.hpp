#pragma once

#include <cstddef>
#include <cstdint>

#include "formula/kernel/instruction_set.hpp"
#include "formula/kernel/philox.hpp"

namespace seamtakt {

/// What heat input is computed from, each with its distribution (JCGM 101, 6.4): normal, except the thermal
/// efficiency, which is uniform between its bounds where it has no uncertainty of its own.
struct UncertainHeatInput {
  double voltage_V = 0, u_voltage_V = 0;
  double current_A = 0, u_current_A = 0;
  double travel_speed_mm_s = 0, u_travel_speed_mm_s = 0;
  double efficiency_low = 0.8, efficiency_high = 0.8;
  double u_efficiency = 0;  ///< above 0: normal about the middle of the bounds
};

/// Samples that a call of the kernel draws; two samples share their random numbers.
inline constexpr std::size_t draws_a_row = 2 * philox_row_length;

/// The samples of one row.
struct HeatInputDraws {
  alignas(64) double power_W[draws_a_row];
  alignas(64) double energy_kJ_mm[draws_a_row];
  alignas(64) double thermal_efficiency[draws_a_row];
  alignas(64) double heat_input_kJ_mm[draws_a_row];
};

/// Draws row number `row` of a seed's sequence: a sample is a function of the seed and its place alone.
/// Normal deviates from pairs of 32-bit numbers: none is beyond 6.8 standard deviations. Source:
/// box-muller-1958.
void draw_heat_inputs(std::uint64_t seed, std::uint64_t row, const UncertainHeatInput& input,
                      HeatInputDraws& draws, InstructionSet set = best_instruction_set());

}  // namespace seamtakt
