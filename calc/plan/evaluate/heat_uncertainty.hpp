#pragma once

#include <optional>

#include "plan/evaluate/cooling_case.hpp"
#include "plan/evaluate/measuring_uncertainty.hpp"

namespace seamtakt {

/// Expanded uncertainties (k = 2, jcgm-100, 5.1.2) of a heat input, planned or recorded, and of what follows
/// from it, by the slopes of the formulas themselves; empty where nothing says what voltage, current and
/// travel speed are measured with. The thermal efficiency is a convention and has none.
std::optional<double> U_heat_input_kJ_mm(double heat_input_kJ_mm, const MeasuringUncertainty& measured);

/// That of a cooling time belongs to that time alone: it grows with the time itself, and with its regime (Q
/// in 3D, Q^2 in 2D).
std::optional<double> U_cooling_time_s(double heat_input_kJ_mm, const CoolingCase& at,
                                       const MeasuringUncertainty& measured);

}  // namespace seamtakt
