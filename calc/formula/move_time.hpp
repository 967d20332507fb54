#pragma once

#include <cmath>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Time of a straight move from rest to rest: speed up, travel, slow down; without travel where the distance
/// is too short to reach the speed.
///   dc = v^2/2*(1/a1 + 1/a2)     d >= dc: t = d/v + v/2*(1/a1 + 1/a2)     else vp = sqrt(2*d/(1/a1 + 1/a2)),
///   t = vp*(1/a1 + 1/a2)
/// Source: derived (uniform acceleration). Holds for a tool point that follows the trapezoid: settling,
/// blending and the wrist's turn come on top. Accuracy: exact for its assumptions.
template <class Real>
struct MoveTime {
  Real time_s, reached_speed_mm_s;
  bool reaches_speed = true;
};

/// distance mm, >= 0; speed mm/s, acceleration and deceleration mm/s2, all > 0.
template <class Real>
MoveTime<Real> move_time(const Real& distance_mm, const Real& speed_mm_s, const Real& acceleration_mm_s2,
                         const Real& deceleration_mm_s2) {
  using std::sqrt;
  const Real ramps = 1.0 / acceleration_mm_s2 + 1.0 / deceleration_mm_s2;
  const Real ramp_distance = speed_mm_s * speed_mm_s / 2.0 * ramps;
  if (value_of(distance_mm) >= value_of(ramp_distance))
    return {Real(distance_mm / speed_mm_s + speed_mm_s / 2.0 * ramps), speed_mm_s, true};
  const Real peak = sqrt(2.0 * distance_mm / ramps);
  return {Real(peak * ramps), peak, false};
}

inline constexpr FormulaNote move_time_note{
    "move-time.trapezoid",         "time_s",
    "t = d/v + v/2*(1/a1 + 1/a2)", "derived",
    "uniform acceleration",        "the speed v is reached: d at least v^2/2*(1/a1 + 1/a2)",
    "exact for its assumptions",   SourceBasis::derived};
inline constexpr FormulaNote move_time_short_note{"move-time.triangle",          "time_s",
                                                  "t = sqrt(2*d*(1/a1 + 1/a2))", "derived",
                                                  "uniform acceleration",        "the speed isn't reached",
                                                  "exact for its assumptions",   SourceBasis::derived};
inline constexpr FormulaNote move_peak_note{"move-time.peak-speed",
                                            "reached_speed_mm_s",
                                            "vp = min(v, sqrt(2*d/(1/a1 + 1/a2)))",
                                            "derived",
                                            "uniform acceleration",
                                            "any distance",
                                            "exact for its assumptions",
                                            SourceBasis::derived};

}  // namespace seamtakt
