#pragma once

#include <cmath>

namespace seamtakt {

/// Time (s, >= 0) for a straight air move of `distance_mm` (>= 0) from rest to rest: constant acceleration up
/// to the speed, constant speed, the same deceleration; a short move never reaches the speed (trapezoid or
/// triangle).
///
///   d >= v^2/a:  t = d/v + v/a       else:  t = 2*sqrt(d/a)
///
/// Source: derived (kinematics of constant acceleration). Jerk limits, blending and the controller's own path
/// planning aren't in it; accuracy not stated by a source. speed_mm_s and acceleration_mm_s2 must be above 0.
inline double move_time_s(double distance_mm, double speed_mm_s, double acceleration_mm_s2) {
  if (distance_mm >= speed_mm_s * speed_mm_s / acceleration_mm_s2)
    return distance_mm / speed_mm_s + speed_mm_s / acceleration_mm_s2;
  return 2 * std::sqrt(distance_mm / acceleration_mm_s2);
}

}  // namespace seamtakt
