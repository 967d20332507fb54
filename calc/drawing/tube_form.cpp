#include "drawing/tube_form.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt::drawing {

namespace {

constexpr double parallel = 0.9999;
constexpr double same_mm = 0.01;
/// Of a tube's surface, its long faces.
constexpr double wall_share = 0.7;

/// Where the body begins and ends along an axis.
std::optional<std::pair<double, double>> extent_along(const Body& body, const gp_Pnt& origin,
                                                      const gp_Vec& axis) {
  if (body.vertices().empty()) return {};
  double low = 1e300, high = -1e300;
  for (const gp_Pnt& vertex : body.vertices()) {
    const double at = gp_Vec(origin, vertex).Dot(axis);
    low = std::min(low, at);
    high = std::max(high, at);
  }
  return std::pair(low, high);
}

/// The different ones of some numbers, ascending.
std::vector<double> different(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  std::vector<double> kept;
  for (const double value : values)
    if (kept.empty() || value - kept.back() > same_mm) kept.push_back(value);
  return kept;
}

std::optional<TubeShape> round_tube(const Body& body) {
  const BodyFace* first = nullptr;
  for (const BodyFace& face : body.faces())
    if (face.surface.GetType() == GeomAbs_Cylinder &&
        (!first || face.area_mm2 > first->area_mm2 * (1 + 1e-9)))
      first = &face;
  if (!first) return {};
  const gp_Ax1 axis = first->surface.Cylinder().Axis();
  std::vector<double> radii;
  double walls_mm2 = 0, all_mm2 = 0, turn_rad = 0;
  for (const BodyFace& face : body.faces()) {
    all_mm2 += face.area_mm2;
    if (face.surface.GetType() != GeomAbs_Cylinder) continue;
    const gp_Cylinder cylinder = face.surface.Cylinder();
    if (!cylinder.Axis().IsCoaxial(axis, 1e-4, same_mm) &&
        !cylinder.Axis().Reversed().IsCoaxial(axis, 1e-4, same_mm))
      continue;
    radii.push_back(cylinder.Radius());
    walls_mm2 += face.area_mm2;
    turn_rad += face.surface.LastUParameter() - face.surface.FirstUParameter();
  }
  radii = different(radii);
  // All round, inside and outside; else it is a curved plate.
  constexpr double all_round_rad = 4 * 3.14;
  if (radii.size() != 2 || turn_rad < all_round_rad || walls_mm2 < wall_share * all_mm2) return {};
  const gp_Vec along(axis.Direction());
  const auto extent = extent_along(body, axis.Location(), along);
  if (!extent) return {};
  TubeShape tube;
  tube.begin = axis.Location().Translated(along * extent->first);
  tube.end = axis.Location().Translated(along * extent->second);
  tube.d_mm = 2 * radii[1];
  tube.t_mm = radii[1] - radii[0];
  // A disc with a hole is no tube.
  if (extent->second - extent->first < 2 * tube.t_mm) return {};
  return tube;
}

/// The direction of the longest straight edge.
std::optional<gp_Vec> long_direction(const Body& body) {
  const BodyEdge* longest = nullptr;
  for (const BodyEdge& edge : body.edges())
    if (!edge.is_ignored && edge.is_line && (!longest || edge.length_mm > longest->length_mm * (1 + 1e-9)))
      longest = &edge;
  if (!longest) return {};
  return gp_Vec(longest->curve.Line().Direction());
}

std::optional<TubeShape> box_tube(const Body& body) {
  const auto along = long_direction(body);
  if (!along) return {};
  std::optional<gp_Vec> x;
  std::vector<double> x_mm, y_mm, radii;
  double walls_mm2 = 0, all_mm2 = 0;
  const gp_Pnt origin(0, 0, 0);
  for (std::size_t i = 0; i < body.faces().size(); ++i) {
    const BodyFace& face = body.faces()[i];
    all_mm2 += face.area_mm2;
    if (face.surface.GetType() == GeomAbs_Cylinder &&
        std::abs(gp_Vec(face.surface.Cylinder().Axis().Direction()).Dot(*along)) > parallel) {
      radii.push_back(face.surface.Cylinder().Radius());
      walls_mm2 += face.area_mm2;
    }
    if (!face.is_plane) continue;
    const gp_Vec normal = body.normal_at(static_cast<int>(i), 0, 0);
    if (std::abs(normal.Dot(*along)) > 1e-3) continue;
    if (!x) x = normal;
    const double on_x = std::abs(normal.Dot(*x));
    if (on_x < parallel && on_x > 1e-3) return {};  // a slanting wall
    walls_mm2 += face.area_mm2;
    const gp_Vec axis = on_x > 0.5 ? *x : along->Crossed(*x);
    (on_x > 0.5 ? x_mm : y_mm).push_back(gp_Vec(origin, face.plane.Location()).Dot(axis));
  }
  x_mm = different(x_mm);
  y_mm = different(y_mm);
  if (x_mm.size() != 4 || y_mm.size() != 4 || walls_mm2 < wall_share * all_mm2) return {};
  const double wall = x_mm[1] - x_mm[0];
  for (const double other : {x_mm[3] - x_mm[2], y_mm[1] - y_mm[0], y_mm[3] - y_mm[2]})
    if (std::abs(other - wall) > same_mm) return {};
  const auto extent = extent_along(body, origin, *along);
  TubeShape tube;
  const gp_Vec y = along->Crossed(*x);
  const gp_Vec centre = *x * ((x_mm[0] + x_mm[3]) / 2) + y * ((y_mm[0] + y_mm[3]) / 2);
  tube.begin = origin.Translated(centre + *along * extent->first);
  tube.end = origin.Translated(centre + *along * extent->second);
  tube.b_mm = x_mm[3] - x_mm[0];
  tube.b_along = *x;
  tube.h_mm = y_mm[3] - y_mm[0];
  tube.t_mm = wall;
  if (!radii.empty()) tube.r_mm = *std::max_element(radii.begin(), radii.end());
  // The volume of four walls, corners rounded or not, between ends that may be mitred.
  const double section = 2 * wall * (*tube.b_mm + *tube.h_mm - 2 * wall);
  const double length = extent->second - extent->first;
  if (body.volume_mm3() > 1.02 * section * length || body.volume_mm3() < 0.4 * section * length) return {};
  return tube;
}

}  // namespace

std::optional<TubeShape> tube_of(const Body& body) {
  if (auto tube = round_tube(body)) return tube;
  return box_tube(body);
}

}  // namespace seamtakt::drawing
