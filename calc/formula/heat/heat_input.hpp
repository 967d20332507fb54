#pragma once

#include <optional>
#include <string_view>

#include "formula/heat/inch_forms.hpp"
#include "formula/heat/process_efficiency.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Arc power, arc energy and heat input of a weld.
///   P = U*I      E = P/v  or  E = W/L  or  E = P*t/L      Q = k*E
/// Source: iso-tr-18491 (methods A, B, C), en-1011-1 Table 1 (k); asme-ix QW-409.1 for the form without k.
/// Method A (means of U and I) holds only where the power source doesn't control the waveform: else the
/// product of means differs from the mean product by the covariance of U and I, which waveform.hpp computes.
/// Accuracy: that of the measured voltage, current and speed. k is a convention and carries no uncertainty:
/// measured efficiencies differ from it.

/// Voltage (V, >= 0), current (A, >= 0) -> W.
template <class Real>
Real arc_power_W(const Real& voltage_V, const Real& current_A) {
  return Real(voltage_V * current_A);
}

/// Arc power (W) and travel speed (mm/s, > 0).
template <class Real>
Real arc_energy_kJ_mm(const Real& power_W, const Real& travel_speed_mm_s) {
  return Real(power_W / (travel_speed_mm_s * 1000.0));
}

/// Energy of the whole weld (J) over its length (mm, > 0).
template <class Real>
Real arc_energy_of_weld_kJ_mm(const Real& energy_J, const Real& length_mm) {
  return Real(energy_J / length_mm / 1000.0);
}

/// What the codes without an efficiency factor state (ASME IX, AWS D1.1).
template <class Real>
Real arc_energy_kJ_in(const Real& energy_kJ_mm) {
  return Real(energy_kJ_mm * mm_per_inch);
}

/// thermal_efficiency: k, 0 to 1.
template <class Real>
Real heat_input_kJ_mm(const Real& energy_kJ_mm, const Real& thermal_efficiency) {
  return Real(energy_kJ_mm * thermal_efficiency);
}

inline constexpr FormulaNote arc_power_note{"heat-input.arc-power",
                                            "arc_power_W",
                                            "P = U*I",
                                            "iso-tr-18491",
                                            "method A",
                                            "arithmetic means; power source without waveform control",
                                            "that of the measured voltage and current",
                                            SourceBasis::part_read};

inline constexpr FormulaNote arc_energy_note{"heat-input.arc-energy",
                                             "arc_energy_kJ_mm",
                                             "E = P/(1000*v)",
                                             "iso-tr-18491",
                                             "methods A and C",
                                             "steady travel; P the mean power near the arc",
                                             "that of the measured power and speed",
                                             SourceBasis::part_read};

inline constexpr FormulaNote arc_energy_of_weld_note{"heat-input.energy-over-length",
                                                     "arc_energy_kJ_mm",
                                                     "E = W/(1000*L)",
                                                     "iso-tr-18491",
                                                     "method B",
                                                     "any waveform; W the energy of the whole weld",
                                                     "that of the measured energy and length",
                                                     SourceBasis::part_read};

inline constexpr FormulaNote arc_energy_inch_note{"heat-input.arc-energy-inch",
                                                  "arc_energy_kJ_in",
                                                  "H = 25.4*E",
                                                  "asme-ix",
                                                  "QW-409.1",
                                                  "as arc energy; no efficiency factor in this form",
                                                  "that of the arc energy",
                                                  SourceBasis::part_read};

inline constexpr FormulaNote heat_input_note{"heat-input.heat-input",
                                             "heat_input_kJ_mm",
                                             "Q = k*E",
                                             "en-1011-1",
                                             "Table 1",
                                             "arc processes; k by ISO 4063 process number, or given",
                                             "k is a convention and carries no uncertainty",
                                             SourceBasis::part_read};

}  // namespace seamtakt
