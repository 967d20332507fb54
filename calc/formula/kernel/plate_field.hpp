#pragma once

#include <cstddef>

#include "base/parallel/thread_pool.hpp"
#include "formula/heat/temperature_field.hpp"
#include "formula/kernel/instruction_set.hpp"

namespace seamtakt {

/// Points of a temperature map in a plane parallel to the plate's surface, seen from the source.
struct FieldGrid {
  double ahead_first_mm = 0, ahead_step_mm = 1;  ///< along travel, positive ahead
  std::size_t columns = 0;
  double aside_first_mm = 0, aside_step_mm = 1;
  std::size_t rows = 0;
  double depth_mm = 0;      ///< below the surface, 0 to the thickness
  double ceiling_C = 3000;  ///< higher values are shown as this: the formula doesn't hold inside the pool
};

/// How a map is computed where the default doesn't do; for comparison with other programs.
struct FieldEffort {
  int images = -1;  ///< on either side of the plate; below 0: as many as the sum needs
  InstructionSet instructions = best_instruction_set();
  unsigned most_threads = 0;  ///< 0: all
};

/// temperature_C[row * columns + column] = plate_temperature_C there (temperature_field.hpp), within 1e-12 of
/// the single evaluation; images that mirror each other at the surface are computed once. The result doesn't
/// depend on the number of threads. thickness_mm > 0; the source as plate_temperature_C takes it.
void plate_field_C(const MovingSource<double>& source, double thickness_mm, const FieldGrid& grid,
                   double* temperature_C, ThreadPool& pool = ThreadPool::shared(),
                   const FieldEffort& effort = {});

}  // namespace seamtakt
