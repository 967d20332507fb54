#include "plan/evaluate/measuring_uncertainty.hpp"

#include "plan/evaluate/instrument_uncertainty.hpp"

namespace seamtakt {

std::string_view measured_robot(const Plan& plan, const Seam& seam) {
  if (!seam.robots.empty()) return seam.robots[0];
  return plan.cell && !plan.cell->robots.empty() ? std::string_view(plan.cell->robots[0].id)
                                                 : std::string_view();
}

MeasuringUncertainty measuring_uncertainty(const Plan& plan, std::string_view robot,
                                           const MeasuredArc& measured) {
  MeasuringUncertainty u;
  const auto relative = [&](const char* quantity, const std::optional<double>& value) {
    const auto stated = value ? relative_uncertainty(plan, robot, quantity, *value) : std::nullopt;
    u.known = u.known || stated.has_value();
    return stated.value_or(0);
  };
  u.current = relative("current", measured.current_A);
  u.voltage = relative("voltage", measured.voltage_V);
  u.travel_speed = relative("travel_speed", measured.travel_speed_mm_s);
  u.wire_feed_speed = relative("wire_feed_speed", measured.wire_feed_speed_m_min);
  const double ohm = lead_ohm(plan, robot);
  if (ohm > 0 && measured.voltage_V && measured.current_A && *measured.voltage_V > 0) {
    const double lost_V = ohm * *measured.current_A, reading_V = *measured.voltage_V + lost_V;
    const auto of_reading = relative_uncertainty(plan, robot, "voltage", reading_V);
    u.voltage = of_reading.value_or(0) * reading_V / *measured.voltage_V;
    u.leads = lead_resistance_uncertainty * lost_V / *measured.voltage_V;
  }
  return u;
}

}  // namespace seamtakt
