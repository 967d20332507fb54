#pragma once

#include <numbers>

#include "formula/heat/handbook_steel.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Time until the weld behind the arc has cooled to the interpass temperature by conduction.
///   thick  t = Q/(2*pi*lambda*(Ti-T0))*F3        thin  t = (Q/d)^2/(4*pi*lambda*rho_c*(Ti-T0)^2)*F2
/// Source: adams (centre line cooling of a fast source, thick and thin plate). The larger of the two
/// holds, as for t8/5: a plate is never colder than the thick body, nor than the thin plate it has become.
/// Deviation: the shape factors of en-1011-2 are applied as to t8/5; convection and radiation are left out,
/// so the wait is on the long side. Q: net heat input (J/mm, > 0); lambda: conductivity (W/(mm K)); rho_c:
/// J/(mm3 K); temperatures degC, Ti > T0. Accuracy: not stated by the source.

/// s.
template <class Real>
Real interpass_wait_thick_s(const Real& heat_input_J_mm, const Real& temperature_rise_K,
                            const Real& conductivity_W_mmK, const Real& f3) {
  return Real(heat_input_J_mm / (2.0 * std::numbers::pi * conductivity_W_mmK * temperature_rise_K) * f3);
}

/// s.
template <class Real>
Real interpass_wait_thin_s(const Real& heat_input_J_mm, const Real& thickness_mm,
                           const Real& temperature_rise_K, const Real& conductivity_W_mmK,
                           const Real& heat_capacity_J_mm3K, const Real& f2) {
  const Real over = heat_input_J_mm / (thickness_mm * temperature_rise_K);
  return Real(over * over / (4.0 * std::numbers::pi * conductivity_W_mmK * heat_capacity_J_mm3K) * f2);
}

inline constexpr FormulaNote interpass_thick_note{"interpass.thick",
                                                  "wait_s",
                                                  "t = Q*1000*F3/(2*pi*lambda*(Ti-T0))",
                                                  "adams",
                                                  "centre line, thick plate",
                                                  "plate thick against the heat; conduction only",
                                                  "not stated by the source",
                                                  SourceBasis::recalled};
inline constexpr FormulaNote interpass_thin_note{"interpass.thin",
                                                 "wait_s",
                                                 "t = (Q*1000/d)^2*F2/(4*pi*lambda*rhoc*(Ti-T0)^2)",
                                                 "adams",
                                                 "centre line, thin plate",
                                                 "plate thin against the heat; conduction only",
                                                 "not stated by the source",
                                                 SourceBasis::recalled};

}  // namespace seamtakt
