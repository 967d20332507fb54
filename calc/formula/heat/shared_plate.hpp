#pragma once

#include <span>

#include "formula/heat/joint_field.hpp"

namespace seamtakt {

/// Heat that a joint has from another joint of one of its plates: a stiffener's from the next one. Each piece
/// of an arc is an instantaneous source in the shared plate, with images in all four edges (Source:
/// grong-1997, chapter 1). Of its heat S = 1/(1/s1 + 1/s2 - 1) counts, where s1 and s2 are the shares that
/// the plate holds in the two joints: the rest is in their other plates (derived; right for a lumped body).
/// Accuracy: 0 to 25 % above finite differences (two plates on one, computed by a script of its own), so a
/// wait by it is on the long side.

/// A plate's box, in axes of its own from one corner.
struct SharedPlate {
  double u_mm = 0, v_mm = 0, thickness_mm = 0;
};
struct PlatePoint {
  double u_mm = 0, v_mm = 0;
};
struct PlateArc {
  PlatePoint from, to;
  double begin_s = 0, end_s = 0;
  double heat_J_mm = 0;
};

/// A side of a joint (JointShape::plates): the shared plate.
struct JointSide {
  const JointField* field = nullptr;
  std::size_t side = 0;
};

/// K at a point of the plate by arcs of the joint `source`, where the joint `at` is; arcs that begin later
/// count nothing.
double neighbour_rise_K(const SharedPlate& plate, const JointSide& source, const JointSide& at,
                        const PlatePoint& point, double at_s, std::span<const PlateArc> arcs);

}  // namespace seamtakt
