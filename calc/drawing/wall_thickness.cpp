#include "drawing/wall_thickness.hpp"

#include <cmath>

namespace seamtakt::drawing {

namespace {

constexpr double antiparallel = 0.99;
/// Of two lengths that are the same: a square bar is as wide as it is deep.
constexpr double same_length = 0.999;

/// From a point inside to both sides.
double width_mm(const Body& body, const gp_Pnt& inside, const gp_Vec& direction) {
  const Body::RayHit ahead = body.first_hit(inside, direction), behind = body.first_hit(inside, -direction);
  return ahead.is_found && behind.is_found ? ahead.distance_mm + behind.distance_mm : 0;
}

}  // namespace

std::optional<double> wall_thickness_mm(const Body& body, const gp_Pnt& place, const gp_Vec& outward_normal,
                                        const gp_Vec& along) {
  if (outward_normal.Magnitude() < 0.5) return {};
  const Body::RayHit hit = body.first_hit(place, -outward_normal);
  if (!hit.is_found || hit.normal.Dot(outward_normal) > -antiparallel) return {};
  const gp_Pnt inside = place.Translated(outward_normal * (-hit.distance_mm / 2));
  const gp_Vec across = outward_normal.Crossed(along);
  if (across.Magnitude() < 1e-3) return {};
  const gp_Vec sideways = across.Normalized();
  for (const gp_Vec& direction : {sideways, sideways.Crossed(outward_normal)})
    if (width_mm(body, inside, direction) < same_length * hit.distance_mm) return {};
  return hit.distance_mm;
}

}  // namespace seamtakt::drawing
