#include "plan/measuring_uncertainty.hpp"

#include "plan/instrument_uncertainty.hpp"

namespace seamtakt {

namespace {

/// The robot that welds the seam in the given order: the first of its list, else the cell's first.
std::string first_robot(const PassFacts& facts) {
  if (!facts.seam.robots.empty()) return facts.seam.robots[0];
  return facts.plan.cell && !facts.plan.cell->robots.empty() ? facts.plan.cell->robots[0].id : std::string();
}

}  // namespace

MeasuringUncertainty measuring_uncertainty(const PassFacts& facts, double current_A, double voltage_V) {
  const std::string robot = first_robot(facts);
  MeasuringUncertainty u;
  const auto absolute = [&](const char* quantity, double value) {
    const std::optional<double> relative = relative_uncertainty(facts.plan, robot, quantity, value);
    u.known = u.known || relative.has_value();
    return relative.value_or(0) * value;
  };
  u.current_A = absolute("current", current_A);
  u.voltage_V = absolute("voltage", voltage_V);
  u.travel_speed_mm_s = absolute("travel_speed", facts.schedule.travel_speed_mm_s);
  u.wire_feed_speed_m_min = absolute("wire_feed_speed", facts.schedule.wire_feed_speed_m_min);
  return u;
}

}  // namespace seamtakt
