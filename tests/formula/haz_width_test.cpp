#include "formula/heat/haz_width.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "formula/heat/temperature_field.hpp"

namespace seamtakt {
namespace {

const PeakTemperatureCase<double> handbook{0.9, 25, 1510, 0.0044};

TEST(HazWidth, GoesBothWays) {
  for (double peak : {200.0, 730.0, 1100.0, 1509.0, 1510.0}) {
    const double thin = thin_plate_haz_distance_mm(handbook, 6.0, peak);
    EXPECT_NEAR(thin_plate_peak_temperature_C(handbook, 6.0, thin), peak, 1e-9);
    const double thick = thick_plate_haz_distance_mm(handbook, peak);
    EXPECT_NEAR(thick_plate_peak_temperature_C(handbook, thick), peak, 1e-9);
  }
}

TEST(HazWidth, IsZeroAtTheFusionLine) {
  EXPECT_NEAR(thin_plate_haz_distance_mm(handbook, 6.0, 1510.0), 0, 1e-12);
  EXPECT_NEAR(thick_plate_haz_distance_mm(handbook, 1510.0), 0, 1e-12);
  EXPECT_NEAR(thin_plate_peak_temperature_C(handbook, 6.0, 0.0), 1510, 1e-9);
}

/// Largest temperature along a line parallel to the seam, from the moving field itself.
template <class Field>
double peak_of(Field at) {
  double best = 0;
  for (double behind = -2; behind < 4000; behind += 0.5 + behind * 0.002) best = std::max(best, at(-behind));
  return best;
}

TEST(HazWidth, FollowsFromTheFieldOfAFastSource) {
  // 900 J/mm at 60 mm/s: the source outruns conduction, as both formulas assume.
  const MovingSource<double> fast{900.0 * 60, 60, 0.028, 0.0044, 25};
  const double radius = 8;
  const double thick = peak_of([&](double x) { return thick_plate_temperature_C(fast, {x, radius, 0}); });
  EXPECT_NEAR((thick - 25) * 0.0044 * radius * radius * std::numbers::pi * std::numbers::e / (2 * 900), 1,
              0.01);

  // A thin plate's line source: 1/(Tp-T0) rises by sqrt(2 pi e) rho_c d/(q/v) a mm.
  const auto thin = [&](double aside) {
    return peak_of([&](double x) { return thin_plate_temperature_C(fast, {x, aside, 0}, 6.0); }) - 25;
  };
  const double slope = (1 / thin(30) - 1 / thin(20)) / 10;
  EXPECT_NEAR(slope * 900 / (std::sqrt(2 * std::numbers::pi * std::numbers::e) * 0.0044 * 6), 1, 0.01);
}

TEST(HazWidth, GrowsWithHeatInputAndPreheatAndShrinksWithThickness) {
  const double base = thin_plate_haz_distance_mm(handbook, 6.0, 730.0);
  PeakTemperatureCase<double> hotter = handbook, warmer = handbook;
  hotter.heat_input_kJ_mm *= 2;
  warmer.preheat_C = 150;
  EXPECT_NEAR(thin_plate_haz_distance_mm(hotter, 6.0, 730.0), 2 * base, 1e-9);
  EXPECT_GT(thin_plate_haz_distance_mm(warmer, 6.0, 730.0), base);
  EXPECT_NEAR(thin_plate_haz_distance_mm(handbook, 12.0, 730.0), base / 2, 1e-9);
}

}  // namespace
}  // namespace seamtakt
