#include "plan/evaluate/instrument_uncertainty.hpp"

#include <cmath>

namespace seamtakt {

namespace {

std::optional<double> measuring_pct(const Plan& plan, std::string_view quantity) {
  if (!plan.measuring) return std::nullopt;
  if (quantity == "current") return plan.measuring->u_current_pct;
  if (quantity == "voltage") return plan.measuring->u_voltage_pct;
  if (quantity == "travel_speed") return plan.measuring->u_travel_speed_pct;
  return std::nullopt;
}

}  // namespace

const Instrument* instrument_for(const Plan& plan, std::string_view robot, std::string_view quantity) {
  const Instrument* of_no_robot = nullptr;
  for (const Instrument& instrument : plan.instruments) {
    if (instrument.quantity != quantity) continue;
    if (!instrument.robot.empty() && instrument.robot == robot) return &instrument;
    if (instrument.robot.empty() && of_no_robot == nullptr) of_no_robot = &instrument;
  }
  return of_no_robot;
}

std::optional<double> relative_uncertainty(const Plan& plan, std::string_view robot,
                                           std::string_view quantity, double value) {
  const Instrument* instrument = instrument_for(plan, robot, quantity);
  if (instrument != nullptr && instrument->half_width_pct) {
    const bool of_full_scale = instrument->of == "full-scale" && instrument->full_scale;
    if (of_full_scale && value == 0) return std::nullopt;
    const double half_width =
        *instrument->half_width_pct / 100 * (of_full_scale ? *instrument->full_scale / std::fabs(value) : 1);
    return half_width / std::sqrt(3.0);
  }
  const auto pct = measuring_pct(plan, quantity);
  return pct ? std::optional<double>(*pct / 100) : std::nullopt;
}

bool has_instrument_limits(const Plan& plan, std::string_view robot, std::string_view quantity) {
  const Instrument* instrument = instrument_for(plan, robot, quantity);
  return instrument != nullptr && instrument->half_width_pct;
}

double lead_ohm(const Plan& plan, std::string_view robot) {
  const Instrument* voltmeter = instrument_for(plan, robot, "voltage");
  return voltmeter != nullptr ? voltmeter->lead_resistance_mOhm.value_or(0) / 1000 : 0;
}

}  // namespace seamtakt
