#pragma once

#include <array>
#include <cmath>
#include <optional>
#include <string_view>

#include "formula/heat/shape_factors.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Cooling time t8/5, from 800 to 500 degC, after one run.
///   3D  t = (6700 - 5*T0)*Q*(1/(500-T0) - 1/(800-T0))*F3
///   2D  t = (4300 - 4.3*T0)*1e5*Q^2/d^2*(1/(500-T0)^2 - 1/(800-T0)^2)*F2
/// Which holds follows from the transition thickness; the larger of the two is the same rule without a case.
/// Source: en-1011-2, Annex D (formulas read in published texts, Table D.1 of the shape factors recalled).
/// Deviation: the transition thickness is derived here for F2 != F3 as well, where EN prints it for F2 = F3.
/// Holds for ferritic steels and arc processes. The formula is singular at T0 = 500 degC: T0 must stay below
/// preheat_below_C. Accuracy: not stated by the source; +-10 to 20 % is common practice, no source.
/// Don't mix with Rosenthal's solution and handbook properties: EN's constants hold other properties.
/// Q: heat input with efficiency (kJ/mm, > 0); d: plate thickness (mm, > 0); T0: preheat or interpass
/// temperature (degC); F2, F3: shape factors (0 to 1).

inline constexpr double preheat_below_C = 450;

namespace detail {

/// 1/(500-T0)^n - 1/(800-T0)^n without cancellation: n = 1 and 2.
template <class Real>
Real cooling_span_1(const Real& preheat_C) {
  return Real(300.0 / ((500.0 - preheat_C) * (800.0 - preheat_C)));
}
template <class Real>
Real cooling_span_sum(const Real& preheat_C) {
  return Real(1.0 / (500.0 - preheat_C) + 1.0 / (800.0 - preheat_C));
}

}  // namespace detail

/// s.
template <class Real>
Real cooling_time_3d_s(const Real& heat_input_kJ_mm, const Real& preheat_C, const Real& f3) {
  return Real((6700.0 - 5.0 * preheat_C) * detail::cooling_span_1(preheat_C) * f3 * heat_input_kJ_mm);
}

/// s.
template <class Real>
Real cooling_time_2d_s(const Real& heat_input_kJ_mm, const Real& thickness_mm, const Real& preheat_C,
                       const Real& f2) {
  // All that heat input has no part in first: a row of a map computes it once.
  const Real span = detail::cooling_span_1(preheat_C) * detail::cooling_span_sum(preheat_C);
  const Real per_square = (4300.0 - 4.3 * preheat_C) * 1e5 * span * f2 / thickness_mm / thickness_mm;
  return Real(per_square * heat_input_kJ_mm * heat_input_kJ_mm);
}

/// Thickness (mm) below which the 2D formula holds.
template <class Real>
Real transition_thickness_mm(const Real& heat_input_kJ_mm, const Real& preheat_C, const Real& f2,
                             const Real& f3) {
  using std::sqrt;
  const Real constants = (4300.0 - 4.3 * preheat_C) * 1e5 / (6700.0 - 5.0 * preheat_C);
  return Real(sqrt(constants * heat_input_kJ_mm * detail::cooling_span_sum(preheat_C) * f2 / f3));
}

template <class Real>
struct CoolingTime {
  Real time_s, time_2d_s, time_3d_s;
  bool is_2d = false;
  const char* regime() const { return is_2d ? "2D" : "3D"; }
};

/// Both formulas and the one that holds.
template <class Real>
CoolingTime<Real> cooling_time(const Real& heat_input_kJ_mm, const Real& thickness_mm, const Real& preheat_C,
                               const Real& f2, const Real& f3) {
  CoolingTime<Real> result;
  result.time_2d_s = cooling_time_2d_s(heat_input_kJ_mm, thickness_mm, preheat_C, f2);
  result.time_3d_s = cooling_time_3d_s(heat_input_kJ_mm, preheat_C, f3);
  result.is_2d = value_of(result.time_2d_s) > value_of(result.time_3d_s);
  result.time_s = result.is_2d ? result.time_2d_s : result.time_3d_s;
  return result;
}

/// Heat input (kJ/mm) that cools in the given time (s, > 0): inverse of cooling_time.
template <class Real>
Real heat_input_of_cooling_time_kJ_mm(const Real& cooling_time_s, const Real& thickness_mm,
                                      const Real& preheat_C, const Real& f2, const Real& f3) {
  using std::sqrt;
  const Real one = Real(1.0);
  const Real by_3d = cooling_time_s / cooling_time_3d_s(one, preheat_C, f3);
  const Real by_2d = sqrt(cooling_time_s / cooling_time_2d_s(one, thickness_mm, preheat_C, f2));
  // Both formulas rise with Q and the larger time holds: the smaller Q reaches it first.
  return smaller<Real>(by_3d, by_2d);
}

inline constexpr FormulaNote cooling_time_3d_note{
    "cooling-time.3d",
    "cooling_time_3d_s",
    "t = (6700 - 5*T0)*Q*(1/(500-T0) - 1/(800-T0))*F3",
    "en-1011-2",
    "Annex D, three-dimensional heat flow",
    "ferritic steels, arc welding, T0 below 450 degC, plate at or above the transition thickness",
    "not stated by the source; +-10 to 20 % (common practice)",
    SourceBasis::part_read};
inline constexpr FormulaNote cooling_time_2d_note{
    "cooling-time.2d",
    "cooling_time_2d_s",
    "t = (4300 - 4.3*T0)*1e5*Q^2/d^2*(1/(500-T0)^2 - 1/(800-T0)^2)*F2",
    "en-1011-2",
    "Annex D, two-dimensional heat flow",
    "ferritic steels, arc welding, T0 below 450 degC, plate below the transition thickness",
    "not stated by the source; +-10 to 20 % (common practice)",
    SourceBasis::part_read};
inline constexpr FormulaNote cooling_time_note{"cooling-time.larger",
                                               "cooling_time_s",
                                               "t = max(t2, t3)",
                                               "derived",
                                               "the two formulas meet at the transition thickness",
                                               "as the two formulas",
                                               "as the two formulas",
                                               SourceBasis::derived};
inline constexpr FormulaNote transition_thickness_note{
    "cooling-time.transition",
    "transition_thickness_mm",
    "dt = sqrt((4300 - 4.3*T0)*1e5/(6700 - 5*T0)*Q*(1/(500-T0) + 1/(800-T0))*F2/F3)",
    "derived",
    "equal cooling times",
    "as the two formulas",
    "as the two formulas",
    SourceBasis::derived};
inline constexpr FormulaNote cooling_heat_input_note{"cooling-time.heat-input",       "heat_input_kJ_mm",
                                                     "Q = min(t/t3, sqrt(t/t2))",     "derived",
                                                     "inverse; t2 and t3 at 1 kJ/mm", "as the two formulas",
                                                     "as the two formulas",           SourceBasis::derived};

}  // namespace seamtakt
