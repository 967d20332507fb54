#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "drawing/part.hpp"

namespace seamtakt::drawing {

/// What a person may want to leave out.
struct SideFlags {
  bool inner = false;    ///< inside of a hollow section or a hole
  bool flare = false;    ///< beside a curved surface that only touches
  bool end = false;      ///< across a plate's end, as long as it is thick
  bool overlap = false;  ///< the bodies run into each other
  bool flush = false;    ///< the surfaces go on in line: no fillet fits
};

/// A stretch of an edge where a weld fits between two parts.
struct SeamPiece {
  int own = -1, other = -1;  ///< parts; own's edge it is
  int edge = -1;             ///< -1: none, a line of touch or of intersection
  std::vector<gp_Pnt> path;
  double length_mm = 0;
  std::array<double, 3> dihedral_deg{};  ///< least, middle, largest
  bool has_dihedral = true;
  double gap_least_mm = 0, gap_largest_mm = 0;
  gp_Pnt middle;                    ///< on own's edge
  gp_Pnt other_point;               ///< beside it on the other's surface
  gp_Vec along, outward;            ///< at the middle
  gp_Vec own_normal, other_normal;  ///< of the surfaces beside the air
  gp_Vec contact_normal;            ///< of own's surface that meets the other part; no length where none does
  gp_Vec own_direction, other_direction;  ///< along the surfaces beside the air
  bool is_other_edge = false;             ///< the other part ends here too
  gp_Vec other_contact_normal;            ///< then: of the other's surface that meets own
  SideFlags flags;
};

enum class JointType : char { tee, corner, lap, butt };

/// A side of a joint: pieces that go on in line.
struct SeamSide {
  std::vector<gp_Pnt> path;
  bool is_closed = false;
  double length_mm = 0;
  std::optional<std::array<double, 3>> dihedral_deg;
  std::array<std::optional<double>, 2> thickness_mm;  ///< of part_a, part_b
  double gap_least_mm = 0, gap_largest_mm = 0;
  gp_Vec outward;
  std::optional<std::string> position;  ///< ISO 6947
  SideFlags flags;
};

/// A contact of two parts. part_a goes on, part_b stands on it; equal ones are in the file's order.
struct Joint {
  int part_a = -1, part_b = -1;
  JointType type = JointType::tee;
  std::vector<SeamSide> sides;
};

}  // namespace seamtakt::drawing
