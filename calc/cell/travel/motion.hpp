#pragma once

#include <array>
#include <optional>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// A track under a robot: where its base may be along one of the cell's axes.
struct CellTrack {
  int axis = 0;                   ///< 0, 1, 2: x, y, z
  double from_mm = 0, to_mm = 0;  ///< in the cell's coordinates, from at most to
  double speed_mm_s = 0, acceleration_mm_s2 = 0;
};

/// The kinematics that several robots may share.
struct Motion {
  double speed_mm_s = 1000, acceleration_mm_s2 = 4000, wrist_s = 0;
  std::vector<double> air_s;  ///< [from * point_count + to]; empty where the table would be too large
  std::optional<double> approach_mm, clearance_mm;
  std::optional<CellTrack> track;

  /// Whether each air move is one straight line that nothing but the torch has to follow.
  bool is_plain() const { return !approach_mm && !clearance_mm && !track; }
};

/// A place that a torch moves to or from.
struct AirPlace {
  Point_mm at;
  bool is_at_seam = true;  ///< it is left and approached with approach_mm; home and the cleaner aren't
};

struct AirLeg {
  Point_mm from{}, to{};
  double time_s = 0;
};

/// An air move in its straight legs, of which there are one to three.
struct AirWay {
  std::array<AirLeg, 3> legs;
  int count = 0;
  double time_s = 0;
};

/// An air move between two places. With neither approach nor clearance it is straight. Else the torch goes
/// up, over and down: up and down along z, by approach_mm at a seam and further to z = clearance_mm where
/// that is higher; over in a straight line. Each leg begins and ends at rest (nothing is blended, so that the
/// time is an upper one), by the trapezoid of move_time.hpp; wrist_s is added once, to the leg over. Places
/// that coincide (within 1e-6 mm) take wrist_s alone.
///
/// On a track the base is always opposite the torch as far as the track goes, and travels at the same time as
/// the torch: the slower of the two decides, and the leg over takes the difference.
///
/// Source: derived (uniform acceleration); the shape of the way and the base's place are common practice, no
/// source. A detour over a third place never takes less time.
AirWay air_way(const Motion& motion, const AirPlace& from, const AirPlace& to);

/// An air move within a seam, between its runs or back to its other end: off the seam by approach_mm, over
/// and down, without clearance.
AirWay air_way_within_seam(const Motion& motion, const Point_mm& from, const Point_mm& to);

/// Where the base is while the torch is at this point: its coordinate along the track (mm).
double base_along_mm(const CellTrack& track, const Point_mm& torch);

}  // namespace seamtakt
