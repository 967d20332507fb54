#include "plan/evaluate/heat_uncertainty.hpp"

#include <algorithm>
#include <cmath>

#include "formula/heat/heat_input.hpp"
#include "formula/uncertainty/guard_band.hpp"

namespace seamtakt {

namespace {

/// Within so many standard uncertainties a change of the regime counts: first order is off by less beyond.
constexpr double branch_within = 3;

/// A heat input with its slopes by the relative errors of voltage, current and travel speed. The waveform
/// factor's slope is that of the voltage, and the thermal efficiency is constant: the formula at 1 V, 1 A and
/// 1 mm/s is scaled to the value.
Dual with_slopes(double heat_input_kJ_mm) {
  const Dual power = arc_power_W<Dual>(seeded(1, 0), seeded(1, 1));
  const Dual at_one = arc_energy_kJ_mm<Dual>(power, seeded(1, 2));
  return Dual(at_one * (heat_input_kJ_mm / value_of(at_one)));
}

std::optional<double> expanded(const Dual& figure, const MeasuringUncertainty& measured) {
  if (!measured.known) return std::nullopt;
  const Dual::Derivatives& slopes = figure.derivatives();
  return coverage_factor * std::hypot(slopes[0] * measured.voltage_and_factor(),
                                      slopes[1] * measured.current_in_all(),
                                      slopes[2] * measured.travel_speed);
}

/// A heat input stays above 0, however uncertain it is.
double not_below_0(double heat_input_kJ_mm, double of_kJ_mm) {
  return std::max(heat_input_kJ_mm, 1e-9 * of_kJ_mm);
}

bool changes_regime(double heat_input_kJ_mm, double u_kJ_mm, const CoolingCase& at) {
  const double reach = branch_within * u_kJ_mm;
  const auto is_2d = [&](double Q) { return cooling_time(not_below_0(Q, heat_input_kJ_mm), at).is_2d; };
  return is_2d(heat_input_kJ_mm - reach) != is_2d(heat_input_kJ_mm + reach);
}

/// Standard deviation (s) of the cooling time of a normally distributed heat input, by the trapezoidal rule
/// over 6 standard deviations on either side. Heat inputs below 0 are left out.
double spread_s(double heat_input_kJ_mm, double u_kJ_mm, const CoolingCase& at) {
  constexpr int steps_a_side = 300;
  constexpr double step = 6.0 / steps_a_side;
  // Of the differences from the time itself: a sum of squares of times would lose digits.
  const double centre_s = cooling_time(heat_input_kJ_mm, at).time_s;
  double weights = 0, first = 0, second = 0;
  for (int i = -steps_a_side; i <= steps_a_side; ++i) {
    const double z = i * step, Q = heat_input_kJ_mm + z * u_kJ_mm;
    if (Q <= 0) continue;
    const double weight = std::exp(-z * z / 2), off = cooling_time(Q, at).time_s - centre_s;
    weights += weight;
    first += weight * off;
    second += weight * off * off;
  }
  const double mean = first / weights;
  return std::sqrt(std::max(0.0, second / weights - mean * mean));
}

}  // namespace

std::optional<double> U_heat_input_kJ_mm(double heat_input_kJ_mm, const MeasuringUncertainty& measured) {
  return expanded(with_slopes(heat_input_kJ_mm), measured);
}

std::optional<double> U_cooling_time_s(double heat_input_kJ_mm, const CoolingCase& at,
                                       const MeasuringUncertainty& measured) {
  const Dual heat = with_slopes(heat_input_kJ_mm);
  const auto U_heat = expanded(heat, measured);
  if (U_heat && changes_regime(heat_input_kJ_mm, *U_heat / coverage_factor, at))
    return coverage_factor * spread_s(heat_input_kJ_mm, *U_heat / coverage_factor, at);
  return expanded(cooling_time<Dual>(heat, at).time_s, measured);
}

bool is_numerical_U(double heat_input_kJ_mm, const CoolingCase& at, const MeasuringUncertainty& measured) {
  const auto U_heat = U_heat_input_kJ_mm(heat_input_kJ_mm, measured);
  return U_heat && changes_regime(heat_input_kJ_mm, *U_heat / coverage_factor, at);
}

std::optional<CoolingGuard> cooling_guard(double heat_input_kJ_mm, const CoolingCase& at,
                                          const MeasuringUncertainty& measured) {
  const auto U_heat = U_heat_input_kJ_mm(heat_input_kJ_mm, measured);
  if (!U_heat) return std::nullopt;
  const double time_s = cooling_time(heat_input_kJ_mm, at).time_s;
  const auto at_Q = [&](double Q) { return cooling_time(not_below_0(Q, heat_input_kJ_mm), at).time_s; };
  return CoolingGuard{time_s - at_Q(heat_input_kJ_mm - *U_heat), at_Q(heat_input_kJ_mm + *U_heat) - time_s};
}

HeatSlopes heat_slopes(double heat_input_kJ_mm, const CoolingCase& at) {
  const Dual heat = with_slopes(heat_input_kJ_mm), time = cooling_time<Dual>(heat, at).time_s;
  const Dual::Derivatives &of_heat = heat.derivatives(), &of_time = time.derivatives();
  return {{of_heat[0], of_heat[1], of_heat[2]}, {of_time[0], of_time[1], of_time[2]}};
}

}  // namespace seamtakt
