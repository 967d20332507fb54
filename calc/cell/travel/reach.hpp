#pragma once

#include <optional>

#include "cell/travel/motion.hpp"

namespace seamtakt {

/// The robot's track in the cell's coordinates; its ends may be given in either order. Without a base the
/// ends count from the origin.
std::optional<CellTrack> track_of(const Robot& robot);

/// How far the farthest point of the seam's path lies beyond the robot's reach (mm): at most 0 where it
/// reaches all of it. Reach is a sphere of reach_mm about the base; on a track the base is opposite each
/// point as far as the track goes. Both are convex, so that the path's corners decide. Paths are taken as
/// drawn, in the cell's coordinates. nullopt where the robot has no base or no reach: then only the plan's
/// lists say what it reaches. Source: common practice (a working envelope as a sphere), no source; a maker's
/// envelope has hollows that this doesn't know.
std::optional<double> beyond_reach_mm(const Robot& robot, const Seam& seam);

/// Whether the robot reaches all of the seam, as far as its base and reach say.
inline bool reaches(const Robot& robot, const Seam& seam) {
  return beyond_reach_mm(robot, seam).value_or(0) <= 0;
}

}  // namespace seamtakt
