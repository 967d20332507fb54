#pragma once

#include <cstddef>

#include "formula/kernel/instruction_set.hpp"

namespace seamtakt {

/// A source and its images along one row of a temperature map: sum[i] = sum over the images of weight *
/// exp(-outrun (x + R))/R with R^2 = x^2 + across_squared. 1 to image_row_length
/// columns, `ahead_mm` rising or falling, the farthest image last.
struct ImageRow {
  std::size_t count = 0;
  const double* ahead_mm = nullptr;
  double outrun_per_mm = 0;
  std::size_t images = 0;                      ///< at least 1
  const double* across_squared_mm2 = nullptr;  ///< aside^2 + depth^2 of each image
  const double* weight = nullptr;              ///< 2 where two images coincide
  double* sum = nullptr;
};

inline constexpr std::size_t image_row_length = 64;

void image_row(const ImageRow& row, InstructionSet set = best_instruction_set());

}  // namespace seamtakt
