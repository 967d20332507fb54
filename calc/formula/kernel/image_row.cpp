#include "formula/kernel/vector_math.hpp"
// Declares the vector functions before any template that calls them is seen.

#include "formula/kernel/image_row.hpp"
#include "formula/kernel/row_kernel.hpp"
#include "formula/temperature_field.hpp"

namespace seamtakt {

namespace {

inline void image_body(const ImageRow& given) {
  const ImageRow row = given;
  const double* ahead = row.ahead_mm;
  double* sum = row.sum;
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < row.count; ++i)
    sum[i] += row.weight * detail::image_term<double>(row.outrun_per_mm, ahead[i], row.across_squared_mm2);
}

}  // namespace

SEAMTAKT_ROW_KERNEL(image_row, ImageRow, image_body)

}  // namespace seamtakt
