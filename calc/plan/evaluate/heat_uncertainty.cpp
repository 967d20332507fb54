#include "plan/evaluate/heat_uncertainty.hpp"

#include "formula/heat/heat_input.hpp"
#include "formula/uncertainty/guard_band.hpp"

namespace seamtakt {

namespace {

/// A heat input with its slopes by the relative errors of voltage, current and travel speed. What else it is
/// the product of (waveform factor, thermal efficiency) is constant: the formula at 1 V, 1 A and 1 mm/s is
/// scaled to the value.
Dual with_slopes(double heat_input_kJ_mm) {
  const Dual power = arc_power_W<Dual>(seeded(1, 0), seeded(1, 1));
  const Dual at_one = arc_energy_kJ_mm<Dual>(power, seeded(1, 2));
  return Dual(at_one * (heat_input_kJ_mm / value_of(at_one)));
}

std::optional<double> expanded(const Dual& figure, const MeasuringUncertainty& measured) {
  if (!measured.known) return std::nullopt;
  const Eigen::Vector3d relative(measured.voltage, measured.current, measured.travel_speed);
  return coverage_factor * figure.derivatives().head<3>().cwiseProduct(relative).norm();
}

}  // namespace

std::optional<double> U_heat_input_kJ_mm(double heat_input_kJ_mm, const MeasuringUncertainty& measured) {
  return expanded(with_slopes(heat_input_kJ_mm), measured);
}

std::optional<double> U_cooling_time_s(double heat_input_kJ_mm, const CoolingCase& at,
                                       const MeasuringUncertainty& measured) {
  return expanded(cooling_time<Dual>(with_slopes(heat_input_kJ_mm), at).time_s, measured);
}

}  // namespace seamtakt
