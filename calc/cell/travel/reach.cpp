#include "cell/travel/reach.hpp"

#include <algorithm>
#include <limits>

#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

int axis_of(const Track& track) {
  return track.axis == "y" ? 1 : track.axis == "z" ? 2 : 0;
}

}  // namespace

std::optional<CellTrack> track_of(const Robot& robot) {
  if (!robot.track) return std::nullopt;
  const int axis = axis_of(*robot.track);
  const double base_mm = robot.base_mm ? (*robot.base_mm)[static_cast<std::size_t>(axis)] : 0;
  const auto [low_mm, high_mm] = std::minmax(robot.track->from_mm, robot.track->to_mm);
  return CellTrack{axis, base_mm + low_mm, base_mm + high_mm, robot.track->speed_mm_s,
                   robot.track->acceleration_mm_s2};
}

std::optional<double> beyond_reach_mm(const Robot& robot, const Seam& seam) {
  if (!robot.base_mm || !robot.reach_mm) return std::nullopt;
  const std::optional<CellTrack> track = track_of(robot);
  double farthest_mm = -std::numeric_limits<double>::infinity();
  for (const Point_mm& point : seam.path_mm) {
    Point_mm base = *robot.base_mm;
    if (track) base[static_cast<std::size_t>(track->axis)] = base_along_mm(*track, point);
    farthest_mm = std::max(farthest_mm, distance_mm(base, point) - *robot.reach_mm);
  }
  return farthest_mm;
}

}  // namespace seamtakt
