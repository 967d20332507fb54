#pragma once

#include <array>
#include <optional>

#include "plan/evaluate/cooling_case.hpp"
#include "plan/evaluate/measuring_uncertainty.hpp"

namespace seamtakt {

/// Expanded uncertainties (k = 2, jcgm-100, 5.1.2) of a heat input, planned or recorded, and of what follows
/// from it, by the slopes of the formulas themselves; empty where nothing says what voltage, current and
/// travel speed are measured with. The thermal efficiency is a convention and has none.
std::optional<double> U_heat_input_kJ_mm(double heat_input_kJ_mm, const MeasuringUncertainty& measured);

/// That of a cooling time belongs to that time alone: it grows with the time itself, and with its regime (Q
/// in 3D, Q^2 in 2D). Where the regime changes within 3 u of the heat input, first order doesn't hold: then
/// it is twice the spread of the times of a normally distributed heat input, the integral that Monte Carlo
/// samples (jcgm-101, 5 and 7, recalled). Within 2 % of Monte Carlo (tested).
std::optional<double> U_cooling_time_s(double heat_input_kJ_mm, const CoolingCase& at,
                                       const MeasuringUncertainty& measured);

/// Whether that cooling time's uncertainty is by the distribution.
bool is_numerical_U(double heat_input_kJ_mm, const CoolingCase& at, const MeasuringUncertainty& measured);

/// The guard of a cooling time: the ends of the interval that the time is in where the heat input is within
/// its U. The time rises with the heat input, so it has the same coverage, in each regime and across their
/// change; in 2D U itself would leave out too much of the slow side. Empty as U is.
std::optional<CoolingGuard> cooling_guard(double heat_input_kJ_mm, const CoolingCase& at,
                                          const MeasuringUncertainty& measured);

/// Slopes of both by the relative errors of voltage, current and travel speed.
struct HeatSlopes {
  std::array<double, 3> heat_input_kJ_mm, cooling_time_s;
};
HeatSlopes heat_slopes(double heat_input_kJ_mm, const CoolingCase& at);

}  // namespace seamtakt
