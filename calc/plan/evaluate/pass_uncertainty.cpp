#include "plan/evaluate/pass_uncertainty.hpp"

#include "plan/evaluate/heat_uncertainty.hpp"

namespace seamtakt {

namespace {

MeasuringUncertainty measured_with(const PassFacts& facts, const PassEvaluation& pass) {
  return measuring_uncertainty(facts.plan, measured_robot(facts.plan, facts.seam),
                               {.current_A = pass.current_A,
                                .voltage_V = pass.voltage_V,
                                .travel_speed_mm_s = facts.schedule.travel_speed_mm_s,
                                .wire_feed_speed_m_min = {}});
}

}  // namespace

std::optional<double> U_heat_input_kJ_mm(const PassFacts& facts, const PassEvaluation& pass) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  return U_heat_input_kJ_mm(pass.heat_input_kJ_mm, measured_with(facts, pass));
}

std::optional<double> U_cooling_time_s(const PassFacts& facts, const PassEvaluation& pass,
                                       const CoolingCase& at) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  return U_cooling_time_s(pass.heat_input_kJ_mm, at, measured_with(facts, pass));
}

}  // namespace seamtakt
