#include "formula/kernel/image_row.hpp"

#include <cmath>

#include "formula/heat/temperature_field.hpp"
#include "formula/kernel/lane_math.hpp"
#include "formula/kernel/row_kernel.hpp"

namespace seamtakt {

namespace {

/// A term of detail::image_term (temperature_field.hpp) before its exponential is taken.
struct Term {
  double exponent, share;
};

/// Near the source, as image_row.hpp says: x + R loses digits behind the source, but the exponent's error
/// stays below 350 units of a double's last place. A test holds the map to the template within 1e-12.
inline Term near_term(double outrun, double ahead, double across_squared, double weight) {
  const double distance = std::sqrt(ahead * ahead + across_squared);
  return {-outrun * (ahead + distance), weight / distance};
}

/// Anywhere, with the template's own form of x + R.
inline Term far_term(double outrun, double ahead, double across_squared, double weight) {
  const double distance = std::sqrt(ahead * ahead + across_squared);
  const double exponent = -outrun * detail::ahead_plus_distance(ahead, distance, across_squared);
  return {exponent < detail::lowest_exponent ? detail::lowest_exponent : exponent, weight / distance};
}

/// Each turn of the inner loop takes the exponential of one image and divides for the next: neither waits for
/// the other, and the unit that divides is busy meanwhile.
template <Term (*term_of)(double, double, double, double)>
inline void add_images(const ImageRow& row) {
  double sum[image_row_length] = {}, exponent[image_row_length], share[image_row_length];
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < row.count; ++i) {
    const Term first = term_of(row.outrun_per_mm, row.ahead_mm[i], row.across_squared_mm2[0], row.weight[0]);
    exponent[i] = first.exponent;
    share[i] = first.share;
  }
  for (std::size_t image = 1; image < row.images; ++image) {
    const double outrun = row.outrun_per_mm, across_squared = row.across_squared_mm2[image],
                 weight = row.weight[image];
    SEAMTAKT_INDEPENDENT_LOOP
    for (std::size_t i = 0; i < row.count; ++i) {
      const Term next = term_of(outrun, row.ahead_mm[i], across_squared, weight);
      sum[i] += detail::exp_of_negative(exponent[i]) * share[i];
      exponent[i] = next.exponent;
      share[i] = next.share;
    }
  }
  for (std::size_t i = 0; i < row.count; ++i)
    row.sum[i] = sum[i] + detail::exp_of_negative(exponent[i]) * share[i];
}

inline void image_body(const ImageRow& given) {
  const ImageRow row = given;
  double farthest = 0;
  for (const double ahead : {row.ahead_mm[0], row.ahead_mm[row.count - 1]})
    for (const double across_squared : {row.across_squared_mm2[0], row.across_squared_mm2[row.images - 1]})
      farthest = std::fmax(farthest, std::sqrt(ahead * ahead + across_squared));
  constexpr double near_exponent = 350;
  if (row.outrun_per_mm * farthest <= near_exponent)
    add_images<near_term>(row);
  else
    add_images<far_term>(row);
}

}  // namespace

SEAMTAKT_ROW_KERNEL(image_row, ImageRow, image_body)

}  // namespace seamtakt
