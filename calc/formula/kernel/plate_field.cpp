#include "formula/kernel/plate_field.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "formula/kernel/image_row.hpp"

namespace seamtakt {

namespace {

/// Images that are smaller than the nearest one by more than exp(-31), 3e-14, are left out.
constexpr double negligible_exponent = 31;
/// From here on a single point counts as one of a thin plate (temperature_field.hpp).
constexpr double thin_exponent = 40;
/// With more images than this on either side evaluating each point, which uses other series, is faster.
constexpr int most_images = 48;
/// Columns that share a number of images.
constexpr std::size_t block_columns = image_row_length;

class FieldRows {
 public:
  FieldRows(const MovingSource<double>& source, double thickness_mm, const FieldGrid& grid,
            const FieldEffort& effort)
      : source_(source),
        thickness_mm_(thickness_mm),
        grid_(grid),
        effort_(effort),
        outrun_(detail::outrun_per_mm(source)),
        strength_(source.net_power_W / (source.conductivity_W_mmK * (2 * std::numbers::pi))),
        ahead_(grid.columns) {
    for (std::size_t i = 0; i < grid.columns; ++i)
      ahead_[i] = grid.ahead_first_mm + grid.ahead_step_mm * static_cast<double>(i);
  }

  void fill_row(std::size_t row, double* temperature_C) const {
    const double aside = grid_.aside_first_mm + grid_.aside_step_mm * static_cast<double>(row);
    for (std::size_t first = 0; first < grid_.columns; first += block_columns)
      fill_block(aside, first, std::min(block_columns, grid_.columns - first), temperature_C + first);
  }

 private:
  /// Images on either side after which the rest of the sum is negligible for a point at this distance; the
  /// point farthest away needs most. Beyond most_images where the plate acts as a thin one.
  int images_for(double distance_mm) const {
    if (effort_.images >= 0) return effort_.images;
    const double wave = std::numbers::pi / thickness_mm_;
    // The same test as for a single point: there the thin plate's formula takes over.
    if (distance_mm * (std::hypot(outrun_, wave) - outrun_) > thin_exponent) return most_images + 1;
    const double reach = negligible_exponent / outrun_;
    const double depth = std::sqrt(reach * (reach + 2 * std::hypot(distance_mm, grid_.depth_mm)));
    const double images = std::ceil((depth + grid_.depth_mm) / (2 * thickness_mm_));
    return images <= most_images ? static_cast<int>(images) : most_images + 1;
  }

  void fill_block(double aside, std::size_t first, std::size_t count, double* out) const {
    const double ahead = std::max(std::abs(ahead_[first]), std::abs(ahead_[first + count - 1]));
    const int images = images_for(std::hypot(ahead, aside));
    if (images > most_images && effort_.images < 0) return fill_points(aside, first, count, out);
    std::vector<double> across_squared, weight;
    const auto add = [&](double depth_mm, double times) {
      across_squared.push_back(aside * aside + depth_mm * depth_mm);
      weight.push_back(times);
    };
    add(grid_.depth_mm, 1);
    for (int image = 1; image <= images; ++image) {
      const double away = 2 * image * thickness_mm_;
      if (grid_.depth_mm == 0) {
        add(away, 2);
      } else {
        add(grid_.depth_mm - away, 1);
        add(grid_.depth_mm + away, 1);
      }
    }
    image_row(
        {count, ahead_.data() + first, outrun_, weight.size(), across_squared.data(), weight.data(), out},
        effort_.instructions);
    for (std::size_t i = 0; i < count; ++i) {
      // At the source itself the value isn't a number; values that aren't below the ceiling are shown as the
      // ceiling.
      const double temperature = source_.preheat_C + strength_ * out[i];
      out[i] = temperature < grid_.ceiling_C ? temperature : grid_.ceiling_C;
    }
  }

  void fill_points(double aside, std::size_t first, std::size_t count, double* out) const {
    for (std::size_t i = 0; i < count; ++i) {
      const FieldPoint<double> point{ahead_[first + i], aside, grid_.depth_mm};
      // At the source itself there is no temperature.
      const bool is_source = point.ahead_mm == 0 && aside == 0;
      const double temperature =
          is_source ? grid_.ceiling_C : plate_temperature_C<double>(source_, point, thickness_mm_);
      out[i] = temperature < grid_.ceiling_C ? temperature : grid_.ceiling_C;
    }
  }

  MovingSource<double> source_;
  double thickness_mm_;
  FieldGrid grid_;
  FieldEffort effort_;
  double outrun_, strength_;
  std::vector<double> ahead_;
};

}  // namespace

void plate_field_C(const MovingSource<double>& source, double thickness_mm, const FieldGrid& grid,
                   double* temperature_C, ThreadPool& pool, const FieldEffort& effort) {
  const FieldRows rows(source, thickness_mm, grid, effort);
  constexpr std::size_t rows_a_piece = 4;
  pool.parallel_for(
      grid.rows, rows_a_piece,
      [&](std::size_t begin, std::size_t end) {
        for (std::size_t row = begin; row < end; ++row)
          rows.fill_row(row, temperature_C + row * grid.columns);
      },
      effort.most_threads);
}

}  // namespace seamtakt
