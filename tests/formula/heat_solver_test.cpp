#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "formula/heat/double_ellipsoid.hpp"

namespace seamtakt {
namespace {

/// Explicit finite differences for the heat equation in a block with a moving double ellipsoid on its top
/// face: a route that shares nothing with the closed form. Half of the block, mirrored at the seam's plane;
/// no heat leaves it, and it is large enough that none would.
class HeatBlock {
 public:
  HeatBlock(const MovingSource<double>& source, const DoubleEllipsoid<double>& shape, double cell_mm)
      : source_(source),
        shape_(shape),
        cell_(cell_mm),
        nx_(static_cast<int>(60 / cell_mm)),
        ny_(static_cast<int>(20 / cell_mm)),
        nz_(static_cast<int>(20 / cell_mm)),
        now_(static_cast<std::size_t>(nx_) * ny_ * nz_, source.preheat_C),
        next_(now_) {}

  /// Runs from cold to time_s. The source starts at x = start_mm of the block.
  void run(double time_s) {
    const double diffusivity = source_.conductivity_W_mmK / source_.heat_capacity_J_mm3K;
    const int steps = static_cast<int>(std::ceil(time_s / (0.9 * cell_ * cell_ / (6 * diffusivity))));
    const double dt = time_s / steps;
    for (int step = 0; step < steps; ++step) advance(dt, diffusivity, (step + 0.5) * dt);
  }

  /// degC at a point seen from the source at time_s, trilinear between cells' centres.
  double at(double ahead_mm, double aside_mm, double depth_mm, double time_s) const {
    const double x = (start_mm + source_.travel_speed_mm_s * time_s + ahead_mm) / cell_ - 0.5;
    const double y = std::max(0.0, aside_mm / cell_ - 0.5), z = std::max(0.0, depth_mm / cell_ - 0.5);
    double sum = 0;
    for (int corner = 0; corner < 8; ++corner) {
      const int i = static_cast<int>(x) + (corner & 1), j = static_cast<int>(y) + (corner >> 1 & 1),
                k = static_cast<int>(z) + (corner >> 2);
      sum += now_[index(i, j, k)] * (1 - std::abs(x - i)) * (1 - std::abs(y - j)) * (1 - std::abs(z - k));
    }
    return sum;
  }

  double heat_J() const {
    double sum = 0;
    for (double temperature : now_) sum += temperature - source_.preheat_C;
    return 2 * sum * source_.heat_capacity_J_mm3K * cell_ * cell_ * cell_;
  }

 private:
  static constexpr double start_mm = 30;

  std::size_t index(int i, int j, int k) const {
    i = std::clamp(i, 0, nx_ - 1), j = std::clamp(j, 0, ny_ - 1), k = std::clamp(k, 0, nz_ - 1);
    return (static_cast<std::size_t>(i) * ny_ + j) * nz_ + k;
  }

  std::vector<double> gaussian(int n, double width) const {
    std::vector<double> values(n);
    for (int i = 0; i < n; ++i) values[i] = std::exp(-3 * std::pow((i + 0.5) * cell_ / width, 2));
    return values;
  }

  void advance(double dt, double diffusivity, double time) {
    const auto across = gaussian(ny_, shape_.half_width_mm), down = gaussian(nz_, shape_.depth_mm);
    const double factor = diffusivity * dt / (cell_ * cell_);
    const double peak = 6 * std::sqrt(3.0) * source_.net_power_W /
                        (std::pow(std::numbers::pi, 1.5) * shape_.half_width_mm * shape_.depth_mm) * dt /
                        source_.heat_capacity_J_mm3K;
    for (int i = 0; i < nx_; ++i) {
      const double ahead = (i + 0.5) * cell_ - start_mm - source_.travel_speed_mm_s * time;
      const double c = ahead >= 0 ? shape_.front_length_mm : shape_.rear_length_mm;
      const double f = ahead >= 0 ? shape_.front_fraction : 2 - shape_.front_fraction;
      const double along = peak * f / c * std::exp(-3 * ahead * ahead / (c * c));
      for (int j = 0; j < ny_; ++j)
        for (int k = 0; k < nz_; ++k) {
          const double here = now_[index(i, j, k)];
          const double neighbours = now_[index(i - 1, j, k)] + now_[index(i + 1, j, k)] +
                                    now_[index(i, j - 1, k)] + now_[index(i, j + 1, k)] +
                                    now_[index(i, j, k - 1)] + now_[index(i, j, k + 1)];
          next_[index(i, j, k)] = here + factor * (neighbours - 6 * here) + along * across[j] * down[k];
        }
    }
    std::swap(now_, next_);
  }

  MovingSource<double> source_;
  DoubleEllipsoid<double> shape_;
  double cell_;
  int nx_, ny_, nz_;
  std::vector<double> now_, next_;
};

TEST(DoubleEllipsoid, EqualsAFiniteDifferenceSolutionOfTheHeatEquation) {
  const MovingSource<double> arc{4000, 5, 0.040, 0.0045, 20};
  const DoubleEllipsoid<double> shape{4, 5, 4, 10, 0.6};
  const double time = 1.6, cell = 2.0 / 3;
  HeatBlock block(arc, shape, cell);
  block.run(time);
  EXPECT_NEAR(block.heat_J(), 4000 * time, 0.002 * 4000 * time);
  // Centres of cells: the source is at 38 mm, a face between cells.
  for (const auto& [ahead, aside, depth] :
       {std::array{-5.0, 0.5, 0.5}, {-1.0, 0.5, 0.5}, {3.0, 0.5, 0.5}, {-9.0, 3.5, 2.5}, {-5.0, 0.5, 4.5}}) {
    const double x = (std::round(ahead / cell - 0.5) + 0.5) * cell,
                 y = (std::round(aside / cell - 0.5) + 0.5) * cell,
                 z = (std::round(depth / cell - 0.5) + 0.5) * cell;
    const double closed = double_ellipsoid_temperature_C(arc, shape, {x, y, z}, time);
    EXPECT_NEAR(block.at(x, y, z, time), closed, 0.01 * closed) << x << " " << y << " " << z;
  }
}

}  // namespace
}  // namespace seamtakt
