#include "plan/evaluate/seam_plates.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

constexpr double near_face_mm = 1;
constexpr double least_reach_mm = 0.5;  ///< a plate ends at a line that is nearer to its edge
/// What is thinner is no plate, and what is longer is endless: figures stay within a double's range.
constexpr double least_thickness_mm = 0.01, endless_from_mm = 1e6;

Point_mm minus(const Point_mm& a, const Point_mm& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}
double dot(const Point_mm& a, const Point_mm& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
Point_mm cross(const Point_mm& a, const Point_mm& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

/// Unit vector from the first point to the last.
Point_mm direction_of(const Seam& seam) {
  const Point_mm way = minus(seam.path_mm.back(), seam.path_mm.front());
  const double length = std::sqrt(dot(way, way));
  return {way[0] / length, way[1] / length, way[2] / length};
}

/// Whether no point is off the line from the first to the last, and none goes back.
bool is_straight(const Seam& seam) {
  if (seam.path_mm.size() < 2) return false;
  const double chord_mm = distance_mm(seam.path_mm.front(), seam.path_mm.back());
  if (!(chord_mm > near_face_mm) || path_length_mm(seam) > chord_mm + near_face_mm) return false;
  const Point_mm along = direction_of(seam);
  return std::all_of(seam.path_mm.begin(), seam.path_mm.end(), [&](const Point_mm& point) {
    const Point_mm off = cross(minus(point, seam.path_mm.front()), along);
    return std::sqrt(dot(off, off)) <= near_face_mm;
  });
}

struct Extent {
  double low = 0, high = 0;
  bool holds(double value) const { return value >= low - near_face_mm && value <= high + near_face_mm; }
  bool ends_at(double value) const {
    return std::abs(value - low) <= near_face_mm || std::abs(value - high) <= near_face_mm;
  }
};

/// The outline's extent in its plane along `axis`, from the plate's origin.
Extent extent_of(const Plate& plate, const Point_mm& axis) {
  Extent extent;
  bool first = true;
  for (const NumberPair& corner : plate.outline_mm) {
    const double value = corner[0] * dot(plate.u, axis) + corner[1] * dot(plate.v, axis);
    extent = first ? Extent{value, value} : Extent{std::min(extent.low, value), std::max(extent.high, value)};
    first = false;
  }
  return extent;
}

/// Whether a face of the plate, or one of its edges' faces, holds the point.
bool holds(const Plate& plate, const Point_mm& point) {
  const Point_mm from_origin = minus(point, plate.origin_mm);
  const double u = dot(from_origin, plate.u), v = dot(from_origin, plate.v),
               w = dot(from_origin, cross(plate.u, plate.v));
  const Extent along_u = extent_of(plate, plate.u), along_v = extent_of(plate, plate.v),
               through{0, plate.thickness_mm};
  if (!along_u.holds(u) || !along_v.holds(v) || !through.holds(w)) return false;
  return through.ends_at(w) || along_u.ends_at(u) || along_v.ends_at(v);
}

/// A plate as the seam's heat sees it; without a reach where the seam's line isn't in the plate's plane.
JointPlate seen_from(const Plate& plate, const Seam& seam) {
  const Point_mm along = direction_of(seam), across = cross(cross(plate.u, plate.v), along);
  const Extent lengthwise = extent_of(plate, along), crosswise = extent_of(plate, across);
  const Point_mm begin = minus(seam.path_mm.front(), plate.origin_mm);
  const double line_mm = dot(begin, across);
  JointPlate seen;
  seen.thickness_mm = plate.thickness_mm;
  seen.length_mm = lengthwise.high - lengthwise.low;
  seen.before_mm = dot(begin, along) - lengthwise.low;
  for (const double reach_mm : {line_mm - crosswise.low, crosswise.high - line_mm})
    if (reach_mm > least_reach_mm) seen.reach_mm.push_back(reach_mm);
  return seen;
}

double wedge_rad(const Seam& seam) {
  return seam.joint == "butt" ? std::numbers::pi : 1.5 * std::numbers::pi;
}

bool is_usable(const JointPlate& plate) {
  return plate.thickness_mm > 0 && plate.length_mm > near_face_mm && !plate.reach_mm.empty();
}

JointPlate bounded(JointPlate plate) {
  plate.thickness_mm = std::clamp(plate.thickness_mm, least_thickness_mm, endless_from_mm);
  plate.length_mm = std::min(plate.length_mm, endless_from_mm);
  plate.before_mm = std::clamp(plate.before_mm, 0.0, plate.length_mm);
  for (double& reach_mm : plate.reach_mm) reach_mm = std::clamp(reach_mm, least_reach_mm, endless_from_mm);
  return plate;
}

/// Two of the weldment's plates, the one for each of the seam's thicknesses; without a shape where there
/// aren't two.
SeamPlates among_plates(const Weldment& weldment, const Seam& seam) {
  std::vector<int> held;
  for (std::size_t i = 0; i < weldment.plates.size(); ++i)
    if (holds(weldment.plates[i], seam.path_mm.front()) && holds(weldment.plates[i], seam.path_mm.back()))
      held.push_back(static_cast<int>(i));
  SeamPlates found;
  found.missing = PlatesMissing::unmatched;
  JointShape shape;
  for (std::size_t side = 0; side < 2; ++side) {
    const double wanted_mm = seam.thickness_mm[side];
    const auto off_mm = [&](int plate) {
      return std::abs(weldment.plates[static_cast<std::size_t>(plate)].thickness_mm - wanted_mm);
    };
    const auto nearest =
        std::min_element(held.begin(), held.end(), [&](int a, int b) { return off_mm(a) < off_mm(b); });
    if (nearest == held.end()) return found;
    found.plate[side] = *nearest;
    shape.plates[side] = seen_from(weldment.plates[static_cast<std::size_t>(*nearest)], seam);
    if (!is_usable(shape.plates[side])) return found;
    shape.plates[side] = bounded(shape.plates[side]);
    held.erase(nearest);
  }
  // The plate that goes on at both sides of the line first, as plate_mm has it.
  if (shape.plates[0].reach_mm.size() < shape.plates[1].reach_mm.size()) {
    std::swap(shape.plates[0], shape.plates[1]);
    std::swap(found.plate[0], found.plate[1]);
  }
  shape.wedge_rad = wedge_rad(seam);
  found.shape = shape;
  found.missing = PlatesMissing::none;
  return found;
}

std::vector<double> reaches_of_first(const Seam& seam, double width_mm) {
  const double second_mm = seam.thickness_mm[1];
  if (seam.joint == "butt") return {width_mm};
  if (seam.joint == "lap") return {width_mm / 2, width_mm / 2};
  const double near_mm = seam.joint == "corner" ? second_mm : (width_mm - second_mm) / 2;
  return {near_mm, width_mm - near_mm};
}

SeamPlates by_sizes(const Seam& seam) {
  SeamPlates found;
  const double length_mm = path_length_mm(seam);
  JointShape shape;
  shape.wedge_rad = wedge_rad(seam);
  for (std::size_t side = 0; side < 2; ++side) {
    const auto& [width_mm, plate_length_mm] = seam.plate_mm[side];
    if (plate_length_mm < length_mm - near_face_mm) {
      found.missing = PlatesMissing::too_short;
      return found;
    }
    JointPlate& plate = shape.plates[side];
    plate.thickness_mm = seam.thickness_mm[side];
    plate.length_mm = std::min(plate_length_mm, endless_from_mm);
    plate.before_mm = (plate.length_mm - length_mm) / 2;
    plate.reach_mm = side == 0 ? reaches_of_first(seam, width_mm) : std::vector<double>{width_mm};
    plate = bounded(plate);
  }
  found.shape = shape;
  found.missing = PlatesMissing::none;
  return found;
}

}  // namespace

PlateBox box_of(const Plate& plate) {
  const Extent along_u = extent_of(plate, plate.u), along_v = extent_of(plate, plate.v);
  PlateBox box{plate.origin_mm, plate.u, plate.v, along_u.low, along_v.low, {}};
  box.size.u_mm = std::clamp(along_u.high - along_u.low, near_face_mm, endless_from_mm);
  box.size.v_mm = std::clamp(along_v.high - along_v.low, near_face_mm, endless_from_mm);
  box.size.thickness_mm = std::clamp(plate.thickness_mm, least_thickness_mm, endless_from_mm);
  return box;
}

PlatePoint place_on(const PlateBox& box, const Point_mm& point) {
  const Point_mm from_origin = minus(point, box.origin_mm);
  return {std::clamp(dot(from_origin, box.u) - box.low_u_mm, 0.0, box.size.u_mm),
          std::clamp(dot(from_origin, box.v) - box.low_v_mm, 0.0, box.size.v_mm)};
}

SeamPlates plates_of(const Weldment& weldment, const Seam& seam) {
  SeamPlates found;
  if (!may_have_plates(weldment, seam) || seam.thickness_mm.size() != 2) return found;
  if (!is_straight(seam)) {
    found.missing = PlatesMissing::bent;
    return found;
  }
  if (!weldment.plates.empty()) {
    found = among_plates(weldment, seam);
    if (found.shape) return found;
    found.plate = {-1, -1};
  }
  return seam.plate_mm.size() == 2 ? by_sizes(seam) : found;
}

bool same_joint(const Seam& a, const SeamPlates& plates_a, const Seam& b, const SeamPlates& plates_b) {
  if (plates_a.plate[0] >= 0 || plates_b.plate[0] >= 0)
    return std::minmax(plates_a.plate[0], plates_a.plate[1]) ==
           std::minmax(plates_b.plate[0], plates_b.plate[1]);
  if (a.plate_mm != b.plate_mm || a.thickness_mm != b.thickness_mm || a.joint != b.joint) return false;
  constexpr double parallel = 0.999;
  const Point_mm along = direction_of(a);
  if (std::abs(dot(along, direction_of(b))) < parallel) return false;
  const Point_mm begin = minus(b.path_mm.front(), a.path_mm.front());
  const Point_mm off = cross(begin, along);
  const double thicker_mm = std::max(a.thickness_mm[0], a.thickness_mm[1]);
  if (std::sqrt(dot(off, off)) > thicker_mm + near_face_mm) return false;
  const double from_mm = dot(begin, along), to_mm = dot(minus(b.path_mm.back(), a.path_mm.front()), along);
  return std::max(from_mm, to_mm) > 0 && std::min(from_mm, to_mm) < path_length_mm(a);
}

AlongLine along_line(const Seam& line, const Seam& seam) {
  const Point_mm along = direction_of(line);
  return {dot(minus(seam.path_mm.front(), line.path_mm.front()), along),
          dot(direction_of(seam), along) < 0 ? -1.0 : 1.0};
}

}  // namespace seamtakt
