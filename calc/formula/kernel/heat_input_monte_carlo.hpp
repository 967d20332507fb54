#pragma once

#include <cstdint>

#include "base/parallel/thread_pool.hpp"
#include "formula/kernel/heat_input_draws.hpp"

namespace seamtakt {

/// Distribution of a heat input by drawing (jcgm-101): mean, standard deviation and the interval that holds
/// 95 % of the samples, cut off equally at both ends (interpolated between the samples in order).
struct HeatInputSpread {
  double mean_kJ_mm = 0, standard_deviation_kJ_mm = 0;
  double low_kJ_mm = 0, high_kJ_mm = 0;  ///< 2.5 and 97.5 %
  std::uint64_t samples = 0;
};

/// `samples` is raised to a whole number of kernel rows (512) and is at least one row. The same seed gives
/// the same bits for any number of threads; a sample is kept only where it may be one of the two bounds, so
/// memory stays small. InputError where a value isn't above 0 or an uncertainty is negative, not finite or
/// above a tenth of its value: a normal distribution reaches everywhere, and a negative speed has no heat
/// input.
HeatInputSpread heat_input_spread(const UncertainHeatInput& input, std::uint64_t samples, std::uint64_t seed,
                                  ThreadPool& pool = ThreadPool::shared(), unsigned most_threads = 0,
                                  InstructionSet set = best_instruction_set());

/// Whether an input can be drawn: heat_input_spread wouldn't refuse it.
bool can_be_drawn(const UncertainHeatInput& input);

/// Standard deviations of what leads to a heat input, by the same draws.
struct HeatInputDeviations {
  double power_W = 0, energy_kJ_mm = 0, thermal_efficiency = 0, heat_input_kJ_mm = 0;
};
HeatInputDeviations heat_input_deviations(const UncertainHeatInput& input, std::uint64_t samples,
                                          std::uint64_t seed, ThreadPool& pool = ThreadPool::shared());

}  // namespace seamtakt
