#include "plan/measuring_uncertainty.hpp"

#include <cmath>

namespace seamtakt {

namespace {

double relative_pct(const std::optional<double>& pct, double value) { return pct ? *pct / 100 * value : 0; }

/// The instrument that shows this quantity on the seam's robot.
const Instrument* instrument_for(const PassFacts& facts, const char* quantity) {
  const std::string robot = facts.seam.robots.empty()
                                ? (facts.plan.cell && !facts.plan.cell->robots.empty() ? facts.plan.cell->robots[0].id : "")
                                : facts.seam.robots[0];
  for (const Instrument& instrument : facts.plan.instruments)
    if (instrument.quantity == quantity && (instrument.robot.empty() || instrument.robot == robot)) return &instrument;
  return nullptr;
}

double standard_uncertainty(const PassFacts& facts, const char* quantity, double value,
                            const std::optional<double>& fallback_pct, bool& known) {
  const Instrument* instrument = instrument_for(facts, quantity);
  if (!instrument || !instrument->half_width_pct) {
    known = known || fallback_pct.has_value();
    return relative_pct(fallback_pct, value);
  }
  known = true;
  const bool of_full_scale = instrument->of == "full-scale" && instrument->full_scale;
  return *instrument->half_width_pct / 100 * (of_full_scale ? *instrument->full_scale : value) / std::sqrt(3.0);
}

}  // namespace

MeasuringUncertainty measuring_uncertainty(const PassFacts& facts, double current_A, double voltage_V) {
  const Measuring measuring = facts.plan.measuring.value_or(Measuring{});
  MeasuringUncertainty u;
  u.current_A = standard_uncertainty(facts, "current", current_A, measuring.u_current_pct, u.known);
  u.voltage_V = standard_uncertainty(facts, "voltage", voltage_V, measuring.u_voltage_pct, u.known);
  u.travel_speed_mm_s = standard_uncertainty(facts, "travel_speed", facts.schedule.travel_speed_mm_s,
                                             measuring.u_travel_speed_pct, u.known);
  u.wire_feed_speed_m_min =
      standard_uncertainty(facts, "wire_feed_speed", facts.schedule.wire_feed_speed_m_min, {}, u.known);
  return u;
}

}  // namespace seamtakt
