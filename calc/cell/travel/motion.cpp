#include "cell/travel/motion.hpp"

#include <algorithm>
#include <cmath>

#include "formula/move_time.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

constexpr double coincide_mm = 1e-6;  ///< as is_closed has it

double leg_s(const Motion& motion, double distance_mm) {
  return move_time(distance_mm, motion.speed_mm_s, motion.acceleration_mm_s2, motion.acceleration_mm_s2)
      .time_s;
}

double track_s(const CellTrack& track, const Point_mm& from, const Point_mm& to) {
  const double way_mm = std::abs(base_along_mm(track, to) - base_along_mm(track, from));
  return move_time(way_mm, track.speed_mm_s, track.acceleration_mm_s2, track.acceleration_mm_s2).time_s;
}

/// The height at which the torch leaves a place sideways.
double leaves_at_mm(const Motion& motion, const AirPlace& place) {
  const double off_mm = place.at[2] + (place.is_at_seam ? motion.approach_mm.value_or(0) : 0);
  return motion.clearance_mm ? std::max(off_mm, *motion.clearance_mm) : off_mm;
}

AirWay way_between(const Motion& motion, const Point_mm& from, double from_z_mm, const Point_mm& to,
                   double to_z_mm) {
  const bool stays = distance_mm(from, to) < coincide_mm;
  const Point_mm above_from{from[0], from[1], stays ? from[2] : from_z_mm},
      above_to{to[0], to[1], stays ? to[2] : to_z_mm};
  AirWay way;
  const auto add = [&](const Point_mm& begin, const Point_mm& end, double time_s) {
    way.legs[static_cast<std::size_t>(way.count++)] = {begin, end, time_s};
    way.time_s += time_s;
  };
  if (above_from[2] > from[2]) add(from, above_from, leg_s(motion, above_from[2] - from[2]));
  const int over = way.count;
  add(above_from, above_to, leg_s(motion, distance_mm(above_from, above_to)) + motion.wrist_s);
  if (above_to[2] > to[2]) add(above_to, to, leg_s(motion, above_to[2] - to[2]));
  if (!motion.track) return way;
  const double base_s = track_s(*motion.track, from, to);
  if (base_s <= way.time_s) return way;
  way.legs[static_cast<std::size_t>(over)].time_s += base_s - way.time_s;
  way.time_s = base_s;
  return way;
}

}  // namespace

AirWay air_way(const Motion& motion, const AirPlace& from, const AirPlace& to) {
  return way_between(motion, from.at, leaves_at_mm(motion, from), to.at, leaves_at_mm(motion, to));
}

AirWay air_way_within_seam(const Motion& motion, const Point_mm& from, const Point_mm& to) {
  const double approach_mm = motion.approach_mm.value_or(0);
  return way_between(motion, from, from[2] + approach_mm, to, to[2] + approach_mm);
}

double base_along_mm(const CellTrack& track, const Point_mm& torch) {
  return std::clamp(torch[static_cast<std::size_t>(track.axis)], track.from_mm, track.to_mm);
}

}  // namespace seamtakt
