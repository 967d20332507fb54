#include "formula/heat/temperature_field.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>

#include "field_types.hpp"
#include "formula/heat/haz_width.hpp"

namespace seamtakt {
namespace {

const Source warm_steel{4000, 5, 0.040, 0.0045, 20};

/// The second route to a plate of finite thickness: its temperature as a cosine series through the thickness.
double cosine_series_temperature_C(const Source& s, const Point& p, double d) {
  const double outrun = s.travel_speed_mm_s * s.heat_capacity_J_mm3K / (2 * s.conductivity_W_mmK);
  const double r = std::hypot(p.ahead_mm, p.aside_mm);
  double sum = std::cyl_bessel_k(0, outrun * r);
  for (int m = 1; m <= 400; ++m) {
    const double argument = r * std::hypot(outrun, m * std::numbers::pi / d);
    if (argument > 600) break;
    sum += 2 * std::cos(m * std::numbers::pi * p.depth_mm / d) * std::cyl_bessel_k(0, argument);
  }
  return s.preheat_C + s.net_power_W / (2 * std::numbers::pi * s.conductivity_W_mmK * d) *
                           std::exp(-outrun * p.ahead_mm) * sum;
}

TEST(PlateTemperature, EqualsTheCosineSeriesThroughTheThickness) {
  for (double ahead : {-45.0, -30.0, -12.0, -3.0, 2.0, 6.0})
    for (double aside : {1.5, 5.0, 14.0})
      for (double depth : {0.0, 3.0, 8.0}) {
        const Point point{ahead, aside, depth};
        const double rise = cosine_series_temperature_C(warm_steel, point, 8.0) - 20;
        EXPECT_NEAR(plate_temperature_C(warm_steel, point, 8.0), 20 + rise, 1e-9 * rise + 1e-12)
            << ahead << " " << aside << " " << depth;
      }
}

TEST(PlateTemperature, BecomesTheThickPlateWhereThePlateIsThick) {
  for (double ahead : {-20.0, -5.0, 1.0}) {
    const Point point{ahead, 4, 2};
    EXPECT_NEAR(plate_temperature_C(warm_steel, point, 400.0), thick_plate_temperature_C(warm_steel, point),
                1e-9);
  }
}

TEST(PlateTemperature, BecomesTheThinPlateFarBehindTheSource) {
  const Point near{-30, 5, 0}, far{-400, 5, 2};
  EXPECT_GT(
      std::abs(plate_temperature_C(warm_steel, near, 8.0) / thin_plate_temperature_C(warm_steel, near, 8.0) -
               1),
      1e-3);
  EXPECT_NEAR(plate_temperature_C(warm_steel, far, 8.0), thin_plate_temperature_C(warm_steel, far, 8.0),
              1e-8);
}

TEST(PlateTemperature, HasNoStepWhereItPassesToTheThinPlate) {
  double before = plate_temperature_C(warm_steel, {-100, 3, 0}, 3.0);
  for (double ahead = -100.5; ahead > -700; ahead -= 0.5) {
    const double here = plate_temperature_C(warm_steel, {ahead, 3, 0}, 3.0);
    ASSERT_LT(here, before);
    ASSERT_GT(here, before * 0.99);
    before = here;
  }
}

TEST(PlateTemperature, LetsNoHeatThroughItsFaces) {
  const double d = 10, h = 1e-4;
  const auto at = [&](double depth) { return plate_temperature_C(warm_steel, {-15, 6, depth}, d); };
  EXPECT_NEAR((at(h) - at(0)) / h, 0, 1e-2);
  EXPECT_NEAR((at(d) - at(d - h)) / h, 0, 1e-2);
  EXPECT_GT(std::abs(at(6) - at(5)), 1);
}

TEST(FieldTemperature, NeitherOverflowsNorTurnsNegativeFarAway) {
  for (double ahead : {-1e6, -1e4, 1e3, 1e6})
    for (double speed : {0.01, 5.0, 500.0}) {
      const Source source{4000, speed, 0.04, 0.0045, 20};
      const Point point{ahead, 3, 1};
      for (double temperature :
           {thick_plate_temperature_C(source, point), thin_plate_temperature_C(source, point, 6.0),
            plate_temperature_C(source, point, 6.0)}) {
        EXPECT_TRUE(std::isfinite(temperature)) << ahead << " " << speed;
        EXPECT_GE(temperature, 20);
      }
    }
}

TEST(FieldTemperature, SatisfiesTheMovingHeatEquation) {
  // a (T_xx + T_yy + T_zz) + v T_x = 0 in the frame of the source.
  const double h = 0.02, diffusivity = 0.040 / 0.0045;
  const auto residual = [&](auto field) {
    const Point p{-8, 5, 3};
    const auto at = [&](double x, double y, double z) {
      return field(Point{p.ahead_mm + x, p.aside_mm + y, p.depth_mm + z});
    };
    const double centre = at(0, 0, 0);
    const double laplacian =
        (at(h, 0, 0) + at(-h, 0, 0) + at(0, h, 0) + at(0, -h, 0) + at(0, 0, h) + at(0, 0, -h) - 6 * centre) /
        (h * h);
    const double transport = 5 * (at(h, 0, 0) - at(-h, 0, 0)) / (2 * h);
    return (diffusivity * laplacian + transport) / std::abs(transport);
  };
  EXPECT_NEAR(residual([](const Point& p) { return thick_plate_temperature_C(warm_steel, p); }), 0, 1e-3);
  EXPECT_NEAR(residual([](const Point& p) { return thin_plate_temperature_C(warm_steel, p, 6.0); }), 0, 1e-3);
  EXPECT_NEAR(residual([](const Point& p) { return plate_temperature_C(warm_steel, p, 9.0); }), 0, 1e-3);
}

/// Distance behind the source at which the centre line has cooled to a temperature.
template <class Field>
double distance_behind_mm(Field temperature_at, double wanted_C) {
  double near = 1e-3, far = 1e6;
  for (int step = 0; step < 200; ++step) {
    const double middle = std::sqrt(near * far);
    (temperature_at(middle) > wanted_C ? near : far) = middle;
  }
  return near;
}

TEST(CoolingTimeFromTheField, EqualsTheThickPlatesClosedForm) {
  for (double preheat : {20.0, 150.0}) {
    Source source = warm_steel;
    source.preheat_C = preheat;
    const auto field = [&](double behind) { return thick_plate_temperature_C(source, {-behind, 0, 0}); };
    const double time =
        (distance_behind_mm(field, 500) - distance_behind_mm(field, 800)) / source.travel_speed_mm_s;
    const double closed =
        4000.0 / 5 / (2 * std::numbers::pi * 0.040) * (1 / (500 - preheat) - 1 / (800 - preheat));
    EXPECT_NEAR(time, closed, 1e-9 * closed);
  }
}

TEST(CoolingTimeFromTheField, ApproachesTheThinPlatesClosedFormAsTheSourceOutrunsConduction) {
  // The closed form is the leading term of K0 for large v r/2a.
  double last_error = 1;
  for (double speed : {2.0, 8.0, 32.0}) {
    const Source source{400 * speed, speed, 0.040, 0.0045, 20};
    const auto field = [&](double behind) { return thin_plate_temperature_C(source, {-behind, 0, 0}, 4.0); };
    const double time = (distance_behind_mm(field, 500) - distance_behind_mm(field, 800)) / speed;
    const double per_thickness = 400.0 / 4;
    const double closed = per_thickness * per_thickness / (4 * std::numbers::pi * 0.040 * 0.0045) *
                          (1 / std::pow(480, 2) - 1 / std::pow(780, 2));
    const double error = std::abs(time / closed - 1);
    EXPECT_LT(error, last_error / 10);
    last_error = error;
  }
  EXPECT_LT(last_error, 1e-4);
}

TEST(CoolingRate, IsTheFieldsSlopeOnTheCentreLine) {
  const auto rate = [](auto field, double behind) {
    const double h = 1e-4 * behind;
    return -5 * (field(behind + h) - field(behind - h)) / (2 * h);
  };
  const auto thick = [](double behind) { return thick_plate_temperature_C(warm_steel, {-behind, 0, 0}); };
  EXPECT_NEAR(rate(thick, 6), thick_cooling_rate_K_s(warm_steel, thick(6)), 1e-3);
  const auto thin = [](double behind) { return thin_plate_temperature_C(warm_steel, {-behind, 0, 0}, 10.0); };
  const double far = 400;  // leading term only
  EXPECT_NEAR(rate(thin, far) / thin_cooling_rate_K_s(warm_steel, thin(far), 10.0), 1, 2e-3);
}

TEST(CoolingRate, HasTheCheckValuesOfHandbookSteel) {
  const Source per_mm{1000, 1, handbook_conductivity_W_mmK, handbook_heat_capacity_J_mm3K, 25};
  EXPECT_NEAR(thick_cooling_rate_K_s(per_mm, 550.0), 48.49, 0.005);
  const Source less{600, 1, handbook_conductivity_W_mmK, handbook_heat_capacity_J_mm3K, 25};
  EXPECT_NEAR(thin_cooling_rate_K_s(less, 550.0, 6.0), 11.20, 0.005);
  EXPECT_NEAR(relative_thickness(6, 0.0044, 550, 25, 600), 0.372, 0.0005);
}

RC_GTEST_PROP(FieldTemperature, IsLinearInPowerAndSymmetricAcrossTheSeam, ()) {
  const auto some = [](int low, int high) { return *rc::gen::inRange(low, high) / 10.0; };
  const Source source{some(5000, 90000), some(10, 200), 0.040, 0.0045, 20};
  Source doubled = source;
  doubled.net_power_W *= 2;
  const Point point{some(-500, 100), some(10, 200), some(0, 80)};
  const Point mirrored{point.ahead_mm, -point.aside_mm, point.depth_mm};
  const auto check = [&](auto field) {
    const double rise = field(source, point) - 20;
    RC_ASSERT(std::abs(field(doubled, point) - 20 - 2 * rise) <= 1e-9 * (1 + rise));
    RC_ASSERT(field(source, mirrored) == field(source, point));
  };
  check([](const Source& s, const Point& p) { return thick_plate_temperature_C(s, p); });
  check([](const Source& s, const Point& p) { return thin_plate_temperature_C(s, p, 8.0); });
  check([](const Source& s, const Point& p) { return plate_temperature_C(s, p, 8.0); });
}

TEST(PlateTemperature, SeriesOfCosinesTakesOverFromTheImagesWithoutAStep) {
  for (double speed : {5.0, 0.5, 0.05}) {
    const MovingSource<double> source{.net_power_W = 1500,
                                      .travel_speed_mm_s = speed,
                                      .conductivity_W_mmK = 0.04,
                                      .heat_capacity_J_mm3K = 0.0045,
                                      .preheat_C = 20};
    const FieldPoint<double> point{.ahead_mm = -6, .aside_mm = 4, .depth_mm = 2};
    const double images = plate_temperature_C(source, point, 8.0);
    EXPECT_NEAR(plate_temperature_by_cosines_C(source, point, 8.0) / images, 1, 1e-9) << speed;
  }
}

TEST(PlateTemperature, EndsForASourceThatHardlyMoves) {
  const MovingSource<double> source{.net_power_W = 1500,
                                    .travel_speed_mm_s = 1e-30,
                                    .conductivity_W_mmK = 0.04,
                                    .heat_capacity_J_mm3K = 0.0045,
                                    .preheat_C = 20};
  EXPECT_TRUE(std::isfinite(
      plate_temperature_C(source, FieldPoint<double>{.ahead_mm = -6, .aside_mm = 4, .depth_mm = 2}, 8.0)));
}

}  // namespace
}  // namespace seamtakt
