#pragma once

#include <cmath>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Mean and effective current of a rectangular pulse: peak_A for peak_ms, background_A for the rest of each
/// period. Derived: mean and root mean square of a rectangular wave, exact for it; slopes between the levels
/// aren't in it. Peak and background (A, >= 0), peak time (ms, > 0), frequency (Hz, > 0), duty at most 1.

/// Share of the time at the peak: 1 is a steady current.
template <class Real>
Real pulse_duty(const Real& peak_ms, const Real& frequency_Hz) {
  return Real(peak_ms * frequency_Hz / 1000.0);
}

/// A.
template <class Real>
Real pulse_mean_A(const Real& peak_A, const Real& background_A, const Real& duty) {
  return Real(background_A + (peak_A - background_A) * duty);
}

/// A; never below the mean.
template <class Real>
Real pulse_rms_A(const Real& peak_A, const Real& background_A, const Real& duty) {
  using std::sqrt;
  const Real background = background_A * background_A;
  return Real(sqrt(background + (peak_A * peak_A - background) * duty));
}

inline constexpr FormulaNote pulse_mean_note{
    "pulse.mean-current",           "current_A",
    "I = Ib + (Ip - Ib)*tp*f/1000", "derived",
    "mean of a rectangular pulse",  "peak and background current are level",
    "exact for its shape",          SourceBasis::derived};

inline constexpr FormulaNote pulse_rms_note{"pulse.rms-current",
                                            "rms_current_A",
                                            "Irms = sqrt(Ib^2 + (Ip^2 - Ib^2)*tp*f/1000)",
                                            "derived",
                                            "root mean square of a rectangular pulse",
                                            "peak and background current are level",
                                            "exact for its shape",
                                            SourceBasis::derived};

}  // namespace seamtakt
