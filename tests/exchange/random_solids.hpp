#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <vector>

#include "exchange/picture/parallel_view.hpp"
#include "exchange/picture/solid.hpp"
#include "exchange/picture/space.hpp"

namespace seamtakt::picture_test {

inline double between(std::mt19937& random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

inline Point_mm random_point(std::mt19937& random, double reach) {
  return {between(random, 0, reach), between(random, 0, reach), between(random, 0, reach)};
}

/// A convex plate of three to six corners, turned anyhow.
inline Prism random_plate(std::mt19937& random, double reach = 1000) {
  Prism plate;
  plate.origin_mm = random_point(random, reach);
  Point_mm w;
  do {
    w = space::minus(random_point(random, 2), {1, 1, 1});
  } while (space::length(w) < 0.2);
  w = space::unit(w);
  plate.u = space::unit(space::cross(w, std::abs(w[0]) < 0.8 ? Point_mm{1, 0, 0} : Point_mm{0, 1, 0}));
  plate.v = space::cross(w, plate.u);
  const int corners = 3 + static_cast<int>(random() % 4);
  const double radius = between(random, 60, 300);
  for (int i = 0; i < corners; ++i) {
    // On a circle, so convex; in order, so anticlockwise.
    const double angle = 6.283185307179586 * (i + between(random, 0, 0.8)) / corners;
    plate.outline_mm.push_back({radius * std::cos(angle), radius * std::sin(angle)});
  }
  plate.height_mm = between(random, 5, 40);
  return plate;
}

inline std::vector<Prism> random_plates(std::mt19937& random, int count) {
  std::vector<Prism> plates;
  for (int i = 0; i < count; ++i) plates.push_back(random_plate(random));
  return plates;
}

inline Point_mm random_direction(std::mt19937& random) {
  return ParallelView({between(random, -180, 180), between(random, -80, 80)}).to_viewer;
}

/// Where a line leaves a convex solid on its way to the viewer.
struct RayExit {
  double way_mm = 0;    ///< along the direction
  double below_mm = 0;  ///< distance of the line's point from the plane of the face that it leaves by
};

/// Casts p + t d through the solid as the half-spaces of its faces: by none of the code that draws.
inline std::optional<RayExit> cast_through(const Prism& solid, const Point_mm& p, const Point_mm& d) {
  const Point_mm w = space::cross(solid.u, solid.v);
  double enter = -1e300, leave = 1e300;
  RayExit exit;
  const auto half_space = [&](const Point_mm& normal, const Point_mm& on_plane) {
    const double speed = space::dot(normal, d), below = space::dot(normal, space::minus(on_plane, p));
    if (std::abs(speed) < 1e-12) return below >= 0;
    const double t = below / speed;
    if (speed < 0) {
      enter = std::max(enter, t);
    } else if (t < leave) {
      leave = t;
      exit = {t, below};
    }
    return true;
  };
  const auto corner = [&](std::size_t i) {
    const NumberPair& at = solid.outline_mm[i % solid.outline_mm.size()];
    return space::plus(solid.origin_mm,
                       space::plus(space::times(at[0], solid.u), space::times(at[1], solid.v)));
  };
  if (!half_space(w, space::plus(solid.origin_mm, space::times(solid.height_mm, w)))) return std::nullopt;
  if (!half_space(space::times(-1, w), solid.origin_mm)) return std::nullopt;
  for (std::size_t i = 0; i < solid.outline_mm.size(); ++i)
    if (!half_space(space::unit(space::cross(space::minus(corner(i + 1), corner(i)), w)), corner(i)))
      return std::nullopt;
  if (enter >= leave) return std::nullopt;
  return exit;
}

}  // namespace seamtakt::picture_test
