#pragma once

#include <array>
#include <gp_Vec.hxx>
#include <optional>
#include <vector>

#include "drawing/body.hpp"

namespace seamtakt::drawing {

/// A plane across a seam; angles are counted from x towards y, in degrees.
struct CrossPlane {
  explicit CrossPlane(const gp_Vec& along);
  double angle_of(const gp_Vec& direction) const;
  gp_Vec direction_of(double angle_deg) const;
  gp_Vec x, y, along;
};

/// A body's material around a point of its surface, in a plane across: from `begin_deg` on, counterclockwise.
struct Wedge {
  double begin_deg = 0, width_deg = 0;
  int begin_face = -1, end_face = -1;
  double end_deg() const { return begin_deg + width_deg; }
  /// How far inside of it a direction is; below 0: outside of it by so much. In degrees.
  double depth_of(double angle_deg) const;
};

/// An air wedge between two bodies.
struct AirWedge {
  double width_deg = 0;
  gp_Vec bisector;                        ///< out of the joint
  int own_face = -1;                      ///< that bounds it on the body of the edge
  int own_other_face = -1;                ///< the edge's other face, which meets the other body
  gp_Vec own_direction, other_direction;  ///< along the surfaces, away from the root
  int other_face = -1;
};

/// Between the wedge of the body that owns the edge (own) and the other's. First: after own's end; second:
/// before its begin. Narrower than `least_deg` is none.
struct AirAround {
  std::array<std::optional<AirWedge>, 2> sides;
  double overlap_deg = 0;  ///< both have material there
};
AirAround air_around(const CrossPlane& plane, const Wedge& own, const Wedge& other, double least_deg);

/// Of a body at a place of an edge; none where the edge has no form there.
std::optional<Wedge> wedge_at_edge(const CrossPlane& plane, const Body& body, int edge, double at);
/// At a place of the surface, inside of a face or on an edge.
std::optional<Wedge> wedge_at(const CrossPlane& plane, const Body& body, const SurfacePlace& place);

/// 0 to below 360.
double turned_deg(double angle_deg);

}  // namespace seamtakt::drawing
