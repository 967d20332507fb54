#include "plan/evaluate/measuring_uncertainty.hpp"

#include "plan/evaluate/instrument_uncertainty.hpp"

namespace seamtakt {

std::string_view measured_robot(const Plan& plan, const Seam& seam) {
  if (!seam.robots.empty()) return seam.robots[0];
  return plan.cell && !plan.cell->robots.empty() ? std::string_view(plan.cell->robots[0].id)
                                                 : std::string_view();
}

MeasuringUncertainty measuring_uncertainty(const Plan& plan, const Seam& seam, const Schedule& schedule,
                                           double current_A, double voltage_V) {
  const std::string_view robot = measured_robot(plan, seam);
  MeasuringUncertainty u;
  const auto absolute = [&](const char* quantity, double value) {
    const std::optional<double> relative = relative_uncertainty(plan, robot, quantity, value);
    u.known = u.known || relative.has_value();
    return relative.value_or(0) * value;
  };
  u.current_A = absolute("current", current_A);
  u.voltage_V = absolute("voltage", voltage_V);
  u.travel_speed_mm_s = absolute("travel_speed", schedule.travel_speed_mm_s);
  u.wire_feed_speed_m_min = absolute("wire_feed_speed", schedule.wire_feed_speed_m_min);
  return u;
}

}  // namespace seamtakt
