#pragma once

#include <cstddef>

#include "formula/kernel/instruction_set.hpp"

namespace seamtakt {

/// One image of the source along one row of a temperature map: sum[i] += weight * exp(-k(x+R))/R.
struct ImageRow {
  std::size_t count = 0;
  const double* ahead_mm = nullptr;
  double outrun_per_mm = 0;
  double across_squared_mm2 = 0;  ///< aside^2 + depth^2 of the image
  double weight = 1;              ///< 2 where two images lie alike
  double* sum = nullptr;
};

void image_row(const ImageRow& row, InstructionSet set = best_instruction_set());

}  // namespace seamtakt
