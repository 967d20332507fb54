#pragma once

#include <cmath>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Current and duty cycle of a power source that heats as I^2.
///   I2 = I1*sqrt(D1/D2)     D2 = D1*(I1/I2)^2, at most 100 %
/// Source: power-source-manuals (makers' duty-cycle pages); 10 min period, 40 degC ambient.
/// Deviation: none. Accuracy: an estimate; a maker's own ratings (285 A at 40 %, 220 A at 60 %) are below it.
/// A single arc longer than the duty's share of 10 min trips even if the mean is within it.

/// Currents A, > 0; duties %, > 0 to 100. Rated current and duty -> current at another duty.
template <class Real>
Real current_at_duty_A(const Real& rated_current_A, const Real& rated_duty_pct, const Real& duty_pct) {
  using std::sqrt;
  const Real ratio = rated_duty_pct / duty_pct;
  return Real(rated_current_A * sqrt(ratio));
}

/// Duty (%) by the I^2 rule, not capped: above 100 the source may run without a pause.
template <class Real>
Real duty_at_current_pct(const Real& rated_current_A, const Real& rated_duty_pct, const Real& current_A) {
  const Real ratio = rated_current_A / current_A;
  return Real(rated_duty_pct * ratio * ratio);
}

inline constexpr FormulaNote duty_current_note{"duty-cycle.current",
                                               "current_A",
                                               "I2 = I1*sqrt(D1/D2)",
                                               "power-source-manuals",
                                               "duty-cycle page",
                                               "10 min period, 40 degC ambient",
                                               "an estimate; makers' own ratings can lie below it",
                                               SourceBasis::read};
inline constexpr FormulaNote duty_pct_note{"duty-cycle.duty",
                                           "duty_pct",
                                           "D2 = min(100, D1*(I1/I2)^2)",
                                           "power-source-manuals",
                                           "duty-cycle page",
                                           "10 min period, 40 degC ambient",
                                           "an estimate; makers' own ratings can lie below it",
                                           SourceBasis::read};

}  // namespace seamtakt
