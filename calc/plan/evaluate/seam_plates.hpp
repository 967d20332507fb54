#pragma once

#include <array>
#include <optional>

#include "formula/heat/joint_field.hpp"
#include "formula/heat/shared_plate.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// What keeps a seam from being computed on plates of finite size.
enum class PlatesMissing {
  none,       ///< nothing: there is a shape
  not_given,  ///< the plan gives no sizes for it
  unmatched,  ///< no two plates of the weldment have faces that hold its line
  bent,       ///< its path isn't straight
  too_short   ///< plate_mm is shorter than the seam
};

/// The two plates of a seam, as its heat sees them.
struct SeamPlates {
  std::optional<JointShape> shape;
  PlatesMissing missing = PlatesMissing::not_given;
  std::array<int, 2> plate{-1, -1};  ///< in Weldment::plates; -1 where the sizes are the seam's plate_mm
};

/// Whether the plan may give sizes: a weldment without is done by one look.
inline bool may_have_plates(const Weldment& weldment, const Seam& seam) {
  return !weldment.plates.empty() || seam.plate_mm.size() == 2;
}

/// From the weldment's `plates` whose faces hold the seam's line within 1 mm, where two do; else from the
/// seam's plate_mm.
///  - plates: along and across the seam's line, the box round the outline; holes are left out. Where more
///  than
///    two hold it, those whose thickness is nearest to the seam's.
///  - plate_mm, [width, length]: the seam is at the middle of the length. Across: tee, at the face of a
///  second
///    plate in the middle of the first; corner, at the inner face of one at the first's edge; lap, at the
///    middle of the first plate's width; butt, at both edges.
SeamPlates plates_of(const Weldment& weldment, const Seam& seam);

/// The box round a plate's outline, in the plate's axes.
struct PlateBox {
  Point_mm origin_mm{}, u{}, v{};
  double low_u_mm = 0, low_v_mm = 0;  ///< its corner, from the origin
  SharedPlate size;
};
PlateBox box_of(const Plate& plate);
/// The nearest place of the box, from its corner.
PlatePoint place_on(const PlateBox& box, const Point_mm& point);

/// Whether two seams with shapes are on the two sides of one joint: on the same two plates; or, with
/// plate_mm, of the same sizes, parallel, and no further apart than the plates are thick.
bool same_joint(const Seam& a, const SeamPlates& plates_a, const Seam& b, const SeamPlates& plates_b);

/// A seam's way along the line of another one: place = offset + sign * way.
struct AlongLine {
  double offset_mm = 0, sign = 1;
};
AlongLine along_line(const Seam& line, const Seam& seam);

}  // namespace seamtakt
