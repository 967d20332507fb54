#include "plan/evaluate/pass_uncertainty.hpp"

#include <algorithm>
#include <cmath>

#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "plan/evaluate/evaluate_pass.hpp"
#include "plan/evaluate/measuring_uncertainty.hpp"

namespace seamtakt {

namespace {

/// Heat input with its slopes by voltage, current and travel speed.
Dual heat_input_with_slopes(const PassFacts& facts, const PassEvaluation& pass) {
  const Dual voltage(pass.voltage_V, 3, 0), current(pass.current_A, 3, 1),
      speed(facts.schedule.travel_speed_mm_s, 3, 2);
  const Dual power = arc_power_W(voltage, current) * facts.schedule.waveform_factor;
  return heat_input_kJ_mm<Dual>(arc_energy_kJ_mm<Dual>(power, speed), Dual(pass.thermal_efficiency));
}

std::optional<double> expanded(const PassFacts& facts, const PassEvaluation& pass, const Dual& figure) {
  const MeasuringUncertainty u =
      measuring_uncertainty(facts.plan, facts.seam, facts.schedule, pass.current_A, pass.voltage_V);
  if (!u.known) return std::nullopt;
  const Dual::Derivatives& slopes = figure.derivatives();
  const double by_voltage = slopes[0] * u.voltage_V, by_current = slopes[1] * u.current_A,
               by_speed = slopes[2] * u.travel_speed_mm_s;
  return 2 * std::sqrt(by_voltage * by_voltage + by_current * by_current + by_speed * by_speed);
}

}  // namespace

CoolingCase nominal_cooling(const PassFacts& facts) {
  const ShapeFactors shape = *shape_factors_of(facts.seam.joint);
  return {std::min(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]), facts.schedule.preheat_C,
          shape.f2, shape.f3};
}

CoolingCase fastest_cooling(const PassFacts& facts) {
  const ShapeFactors shape = *shape_factors_of(facts.seam.joint);
  return {std::max(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]), facts.schedule.preheat_C,
          shape.f2_low, shape.f3};
}

CoolingCase slowest_cooling(const PassFacts& facts) {
  const ShapeFactors shape = *shape_factors_of(facts.seam.joint);
  const double cold = facts.schedule.preheat_C;
  const std::optional<double> upper = upper_interpass_C(facts.schedule);
  const double hot = upper && *upper < preheat_below_C ? std::max(*upper, cold) : cold;
  return {std::min(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]), hot, shape.f2_high, shape.f3};
}

std::optional<double> U_heat_input_kJ_mm(const PassFacts& facts, const PassEvaluation& pass) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  return expanded(facts, pass, heat_input_with_slopes(facts, pass));
}

std::optional<double> U_cooling_time_s(const PassFacts& facts, const PassEvaluation& pass,
                                       const CoolingCase& at) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  const CoolingTime<Dual> time = cooling_time<Dual>(
      heat_input_with_slopes(facts, pass), Dual(at.thickness_mm), Dual(at.start_C), Dual(at.f2), Dual(at.f3));
  return expanded(facts, pass, time.time_s);
}

}  // namespace seamtakt
