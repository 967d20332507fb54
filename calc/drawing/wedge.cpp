#include "drawing/wedge.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace seamtakt::drawing {

namespace {

constexpr double deg = 180 / std::numbers::pi;
/// Directions that differ by less are the same.
constexpr double same_deg = 1;

}  // namespace

double turned_deg(double angle_deg) {
  const double turned = std::fmod(angle_deg, 360.0);
  return turned < 0 ? turned + 360 : turned;
}

CrossPlane::CrossPlane(const gp_Vec& direction) : along(direction.Normalized()) {
  // The axis that is least along gives the steadiest cross product; the first of equals, so that it's
  // repeatable.
  const double ax = std::abs(along.X()), ay = std::abs(along.Y()), az = std::abs(along.Z());
  const gp_Vec axis = ax <= ay && ax <= az ? gp_Vec(1, 0, 0) : ay <= az ? gp_Vec(0, 1, 0) : gp_Vec(0, 0, 1);
  x = axis.Crossed(along).Normalized();
  y = along.Crossed(x);
}

double CrossPlane::angle_of(const gp_Vec& direction) const {
  return turned_deg(std::atan2(direction.Dot(y), direction.Dot(x)) * deg);
}

gp_Vec CrossPlane::direction_of(double angle_deg) const {
  return x * std::cos(angle_deg / deg) + y * std::sin(angle_deg / deg);
}

double Wedge::depth_of(double angle_deg) const {
  const double from_begin = turned_deg(angle_deg - begin_deg);
  if (from_begin <= width_deg) return std::min(from_begin, width_deg - from_begin);
  return -std::min(from_begin - width_deg, 360 - from_begin);
}

std::optional<Wedge> wedge_at_edge(const CrossPlane& plane, const Body& body, int index, double at) {
  const BodyEdge& edge = body.edges()[static_cast<std::size_t>(index)];
  if (edge.is_ignored) return {};
  const gp_Vec tangent = tangent_at(edge, at);
  std::array<gp_Vec, 2> inward;
  gp_Vec first_normal;
  for (std::size_t i = 0; i < 2; ++i) {
    const EdgeUse& use = edge.uses[i];
    const gp_Vec normal = body.normal_at_edge(edge, use, at);
    // The face lies to the left of its edge, seen from outside.
    const gp_Vec into_face = normal.Crossed(use.is_reversed ? -tangent : tangent);
    gp_Vec across = normal.Crossed(plane.along);
    if (across.Magnitude() < 1e-3 || into_face.Magnitude() < 0.5) return {};
    if (across.Dot(into_face) < 0) across.Reverse();
    inward[i] = across.Normalized();
    if (i == 0) first_normal = normal;
  }
  const double first_deg = plane.angle_of(inward[0]), second_deg = plane.angle_of(inward[1]);
  // The material lies behind the first face.
  const bool goes_counterclockwise = inward[0].Crossed(-first_normal).Dot(plane.along) > 0;
  Wedge wedge;
  wedge.begin_deg = goes_counterclockwise ? first_deg : second_deg;
  wedge.width_deg = turned_deg(goes_counterclockwise ? second_deg - first_deg : first_deg - second_deg);
  wedge.begin_face = edge.uses[goes_counterclockwise ? 0 : 1].face;
  wedge.end_face = edge.uses[goes_counterclockwise ? 1 : 0].face;
  return wedge;
}

std::optional<Wedge> wedge_at(const CrossPlane& plane, const Body& body, const SurfacePlace& place) {
  if (place.edge >= 0) return wedge_at_edge(plane, body, place.edge, place.at);
  const gp_Vec across = place.normal - plane.along * place.normal.Dot(plane.along);
  if (across.Magnitude() < 0.1) return {};
  Wedge wedge;
  wedge.begin_deg = turned_deg(plane.angle_of(across) + 90);
  wedge.width_deg = 180;
  wedge.begin_face = wedge.end_face = place.face;
  return wedge;
}

AirAround air_around(const CrossPlane& plane, const Wedge& own, const Wedge& other, double least_deg) {
  AirAround around;
  // Counted from own's begin.
  const double other_begin = turned_deg(other.begin_deg - own.begin_deg);
  const double other_end = other_begin + other.width_deg;
  const auto add = [&](std::size_t side, double begin_deg, double width_deg) {
    if (width_deg < least_deg) return;
    AirWedge air;
    air.width_deg = width_deg;
    air.bisector = plane.direction_of(begin_deg + width_deg / 2);
    air.own_face = side == 0 ? own.end_face : own.begin_face;
    air.own_other_face = side == 0 ? own.begin_face : own.end_face;
    air.other_face = side == 0 ? other.begin_face : other.end_face;
    air.own_direction = plane.direction_of(side == 0 ? own.end_deg() : own.begin_deg);
    air.other_direction = plane.direction_of(side == 0 ? other.begin_deg : other.end_deg());
    around.sides[side] = air;
  };
  const bool begins_in_own = other_begin < own.width_deg - same_deg || other_begin > 360 - same_deg;
  const bool ends_in_own = other_end > 360 + same_deg;
  // A wedge inside of the other has air of the other's alone beside it.
  const bool holds_own = ends_in_own && other_end - 360 > own.width_deg + same_deg;
  const bool is_held = begins_in_own && other_end < own.width_deg - same_deg;
  if (!begins_in_own && !holds_own) add(0, own.end_deg(), other_begin - own.width_deg);
  if (!ends_in_own && !is_held) add(1, other.end_deg(), 360 - other_end);
  if (begins_in_own && other_begin < own.width_deg) around.overlap_deg += own.width_deg - other_begin;
  if (ends_in_own) around.overlap_deg += other_end - 360;
  return around;
}

}  // namespace seamtakt::drawing
