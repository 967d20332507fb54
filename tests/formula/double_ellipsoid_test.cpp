#include "formula/heat/double_ellipsoid.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

#include "field_types.hpp"

namespace seamtakt {
namespace {

using Shape = DoubleEllipsoid<double>;

constexpr double diffusivity = 0.040 / 0.0045;
const Source arc{4000, 5, 0.040, 0.0045, 20};
const Shape uneven{4, 5, 4, 10, 0.6};

/// goldak-1984: W/mm3 at a point seen from the source.
double density_W_mm3(double power, const Shape& s, double aside, double depth, double ahead) {
  const bool front = ahead >= 0;
  const double c = front ? s.front_length_mm : s.rear_length_mm;
  const double f = front ? s.front_fraction : 2 - s.front_fraction;
  return 6 * std::sqrt(3.0) * f * power /
         (std::pow(std::numbers::pi, 1.5) * s.half_width_mm * s.depth_mm * c) *
         std::exp(-3 * aside * aside / (s.half_width_mm * s.half_width_mm) -
                  3 * depth * depth / (s.depth_mm * s.depth_mm) - 3 * ahead * ahead / (c * c));
}

double gauss_integral(const std::function<double(double)>& f, double from, double to, int panels) {
  static const auto nodes = detail::gauss_legendre_16();
  double sum = 0;
  for (int panel = 0; panel < panels; ++panel)
    for (const auto& node : nodes) sum += node.weight * f(from + (to - from) * (panel + node.at) / panels);
  return sum * (to - from) / panels;
}

TEST(DoubleEllipsoid, DensityHoldsTheArcsWholePower) {
  // Separable: the integral over the half space is the product of three.
  const auto across = gauss_integral([](double y) { return std::exp(-3 * y * y / 16); }, -30, 30, 40);
  const auto down = gauss_integral([](double z) { return std::exp(-3 * z * z / 25); }, 0, 40, 40);
  const auto ahead = gauss_integral([](double x) { return density_W_mm3(4000, uneven, 0, 0, x); }, 0, 40, 40);
  const auto behind =
      gauss_integral([](double x) { return density_W_mm3(4000, uneven, 0, 0, x); }, -80, 0, 40);
  EXPECT_NEAR(across * down * (ahead + behind), 4000, 1e-6);
  EXPECT_NEAR(across * down * ahead, 0.3 * 4000, 1e-6);
}

/// The other route: the density cut into point sources, each of which spreads by the heat kernel; nothing in
/// closed form. Exponentials factor by direction, so the threefold sum is a product of sums.
double brute_force_temperature_C(const Source& arc_, const Shape& shape, const Point& point, double time) {
  const auto spread = [](double variance, double distance) {
    return std::exp(-distance * distance / (2 * variance)) / std::sqrt(2 * std::numbers::pi * variance);
  };
  const auto released = [&](double age) {
    const double variance = 2 * diffusivity * age, reach = 9 * std::sqrt(variance);
    const auto smeared = [&](const std::function<double(double)>& density, double at, double from,
                             double to) {
      const double low = std::max(from, at - reach), high = std::min(to, at + reach);
      return low >= high ? 0.0
                         : gauss_integral([&](double p) { return density(p) * spread(variance, at - p); },
                                          low, high, 12);
    };
    const double past = point.ahead_mm + arc_.travel_speed_mm_s * age;
    const auto gauss = [](double width) {
      return [width](double p) { return std::exp(-3 * p * p / (width * width)); };
    };
    const double across = smeared(gauss(shape.half_width_mm), point.aside_mm, -60, 60);
    const double down = smeared(gauss(shape.depth_mm), point.depth_mm, -60, 60);  // mirrored at the surface
    const auto along = [&](double p) { return density_W_mm3(arc_.net_power_W, shape, 0, 0, p); };
    return across * down * (smeared(along, past, 0, 90) + smeared(along, past, -90, 0)) /
           arc_.heat_capacity_J_mm3K;
  };
  const auto in_fourth_power = [&](double u) {
    return released(time * u * u * u * u) * 4 * time * u * u * u;
  };
  return arc_.preheat_C + gauss_integral(in_fourth_power, 0, 1, 12);
}

TEST(DoubleEllipsoid, EqualsBruteForceIntegrationOfPointSources) {
  for (const Point& point :
       {Point{-5, 0, 0}, Point{-12, 3, 3}, Point{0, 0, 0}, Point{3, 2, 0}, Point{-30, 6, 4}}) {
    const double direct = brute_force_temperature_C(arc, uneven, point, 6);
    EXPECT_NEAR(double_ellipsoid_temperature_C(arc, uneven, point, 6.0), direct, 1e-6 * direct)
        << point.ahead_mm << " " << point.aside_mm << " " << point.depth_mm;
  }
}

TEST(DoubleEllipsoid, HasTheCheckValuesAndNotThoseOfTheUncorrectedForm) {
  const double at_pool = double_ellipsoid_temperature_C(arc, uneven, Point{-5, 0, 0}, 6.0);
  EXPECT_NEAR(at_pool, 3177.5, 0.05);
  EXPECT_GT(std::abs(at_pool - 2678.3), 100);
  EXPECT_NEAR(double_ellipsoid_temperature_C(arc, uneven, Point{-12, 3, 3}, 6.0), 1090.83, 0.005);
  const Shape even{4, 5, 6, 6, 1};
  EXPECT_NEAR(double_ellipsoid_temperature_C(arc, even, Point{-5, 0, 0}, 6.0), 2770.0, 0.05);
}

/// The form that circulates since 1999: each half without its error function.
double uncorrected_temperature_C(const Source& s, const Shape& shape, const Point& p, double time) {
  const auto half = [&](double f, double c, double past, double g) {
    return f * std::exp(-3 * past * past / (c * c + g)) / std::sqrt(c * c + g);
  };
  const auto at_age = [&](double age) {
    const double g = 12 * diffusivity * age, past = p.ahead_mm + s.travel_speed_mm_s * age;
    const double wide = shape.half_width_mm * shape.half_width_mm + g,
                 deep = shape.depth_mm * shape.depth_mm + g;
    return std::exp(-3 * p.aside_mm * p.aside_mm / wide - 3 * p.depth_mm * p.depth_mm / deep) /
           std::sqrt(wide * deep) *
           (half(shape.front_fraction, shape.front_length_mm, past, g) +
            half(2 - shape.front_fraction, shape.rear_length_mm, past, g));
  };
  const auto in_fourth_power = [&](double u) { return at_age(time * u * u * u * u) * 4 * time * u * u * u; };
  return s.preheat_C + 3 * std::sqrt(3.0) * s.net_power_W /
                           (s.heat_capacity_J_mm3K * std::pow(std::numbers::pi, 1.5)) *
                           gauss_integral(in_fourth_power, 0, 1, 12);
}

TEST(DoubleEllipsoid, TheUncorrectedFormIsRightForEqualLengthsOnly) {
  EXPECT_NEAR(uncorrected_temperature_C(arc, uneven, Point{-5, 0, 0}, 6), 2678.3, 0.05);
  const Shape even{4, 5, 6, 6, 1};
  EXPECT_NEAR(uncorrected_temperature_C(arc, even, Point{-5, 0, 0}, 6),
              double_ellipsoid_temperature_C(arc, even, Point{-5, 0, 0}, 6.0), 1e-6);
}

TEST(DoubleEllipsoid, RisesToItsSteadyStateFromBelow) {
  const Point point{-12, 3, 3};
  double before = 20;
  for (double time : {0.5, 1.0, 2.0, 4.0, 8.0, 16.0}) {
    const double now = double_ellipsoid_temperature_C(arc, uneven, point, time);
    EXPECT_GT(now, before);
    before = now;
  }
  EXPECT_NEAR(double_ellipsoid_temperature_C(arc, uneven, point, 1000.0),
              double_ellipsoid_temperature_C(arc, uneven, point, 1e5), 1e-7);
  EXPECT_EQ(double_ellipsoid_temperature_C(arc, uneven, point, 0.0), 20);
}

TEST(DoubleEllipsoid, LooksLikeAPointSourceFromFarBehind) {
  const Shape small{1, 1, 1, 1.5, 0.6};
  for (const Point& point : {Point{-80, 3, 0}, Point{-60, 12, 5}}) {
    const double point_source = thick_plate_temperature_C(arc, point) - 20;
    EXPECT_NEAR((double_ellipsoid_temperature_C(arc, small, point, 1e4) - 20) / point_source, 1, 0.01);
  }
}

TEST(DoubleEllipsoid, QuadratureHoldsItsDigitsForOddShapesAndLongTimes) {
  const Shape needle{0.3, 2.5, 0.3, 8, 0.2}, disc{12, 0.4, 9, 9.5, 1.0};
  for (const Shape& shape : {needle, disc, uneven})
    for (double speed : {0.5, 8.0, 60.0})
      for (const Point& point : {Point{-0.01, 0, 0}, Point{-2, 1, 0}, Point{-300, 4, 3}, Point{1, 0, 0.2}}) {
        const Source source{5000, speed, 0.040, 0.0045, 20};
        for (double time : {0.05, 20.0, 3000.0}) {
          const double coarse = double_ellipsoid_temperature_C(source, shape, point, time) - 20;
          const double fine = double_ellipsoid_temperature_C(source, shape, point, time, 240) - 20;
          EXPECT_NEAR(coarse, fine, 1e-6 * fine + 1e-12)
              << speed << " " << point.ahead_mm << " " << time << " " << shape.half_width_mm;
        }
      }
}

TEST(DoubleEllipsoid, LeavesThePlateColdFarAheadAndAside) {
  EXPECT_EQ(double_ellipsoid_temperature_C(arc, uneven, Point{5000, 0, 0}, 10.0), 20);
  EXPECT_NEAR(double_ellipsoid_temperature_C(arc, uneven, Point{0, 500, 0}, 10.0), 20, 1e-12);
}

}  // namespace
}  // namespace seamtakt
