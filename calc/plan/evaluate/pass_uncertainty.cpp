#include "plan/evaluate/pass_uncertainty.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "formula/uncertainty/guard_band.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "plan/planned_current.hpp"

namespace seamtakt {

namespace {

/// Slopes of a value by the relative errors of voltage, current and travel speed.
using Slopes = std::array<double, 3>;

/// An input that is measured: limits of an instrument are rectangular and known, what `measuring` states is
/// a standard uncertainty.
BudgetInput measured_input(const PassFacts& facts, const char* quantity, const char* meaning, double value,
                           const char* unit, double relative_u, double slope) {
  BudgetInput input{Sentence(Word::of_table(meaning)), value, unit, relative_u * value, slope / value};
  if (has_instrument_limits(facts.plan, measured_robot(facts.plan, facts.seam), quantity)) {
    input.distribution = Distribution::rectangular;
    input.degrees_of_freedom = std::numeric_limits<double>::infinity();
  } else {
    input.distribution = Distribution::normal;
  }
  return input;
}

std::optional<UncertaintyBudget> budget_by(const Slopes& slopes, const PassFacts& facts,
                                           const PassEvaluation& pass, const MeasuringUncertainty& u) {
  const double current = pass.current_A, voltage = pass.voltage_V, speed = facts.schedule.travel_speed_mm_s;
  BudgetInput law{"current by the melting law"_word, current, "A", u.melting_law * current,
                  slopes[1] / current};
  law.distribution = Distribution::normal;
  BudgetInput leads{"arc voltage, by the resistance of the leads"_word, voltage, "V", u.leads * voltage,
                    slopes[0] / voltage};
  leads.distribution = Distribution::rectangular;
  leads.degrees_of_freedom = std::numeric_limits<double>::infinity();
  const double factor = facts.schedule.waveform_factor;
  BudgetInput waveform{"waveform factor"_word, factor, "", u.waveform_factor * factor, slopes[0] / factor};
  if (!facts.schedule.U_waveform_factor_pct) {
    waveform.distribution = Distribution::rectangular;
    waveform.degrees_of_freedom = std::numeric_limits<double>::infinity();
  }
  return budget_of(
      {std::move(law), measured_input(facts, "current", "current", current, "A", u.current, slopes[1]),
       measured_input(facts, "voltage", "arc voltage", voltage, "V", u.voltage, slopes[0]), std::move(leads),
       std::move(waveform),
       measured_input(facts, "travel_speed", "travel speed", speed, "mm/s", u.travel_speed, slopes[2])});
}

}  // namespace

double melting_law_uncertainty(const Schedule& schedule, const Wire& wire) {
  if (stated_current_A(schedule)) return 0;
  const double U_pct = std::hypot(wire.U_melting_pct.value_or(tabulated_melting_U_pct),
                                  melting_error_of_waveform_pct(schedule));
  return U_pct / 100 / coverage_factor;
}

double waveform_factor_uncertainty(const Schedule& schedule) {
  if (schedule.U_waveform_factor_pct) return *schedule.U_waveform_factor_pct / 100 / coverage_factor;
  if (schedule.waveform != "waveform-controlled") return 0;
  const double half_width =
      std::max(std::abs(1 - schedule.waveform_factor), least_waveform_half_width_pct / 100);
  return half_width / std::sqrt(3.0);
}

MeasuringUncertainty planned_uncertainty(const PassFacts& facts, const PassEvaluation& pass) {
  MeasuringUncertainty u = measuring_uncertainty(facts.plan, measured_robot(facts.plan, facts.seam),
                                                 {.current_A = pass.current_A,
                                                  .voltage_V = pass.voltage_V,
                                                  .travel_speed_mm_s = facts.schedule.travel_speed_mm_s,
                                                  .wire_feed_speed_m_min = {}});
  u.melting_law = melting_law_uncertainty(facts.schedule, facts.wire);
  u.waveform_factor = waveform_factor_uncertainty(facts.schedule);
  u.known = u.known || (facts.plan.measuring && u.melting_law > 0);
  return u;
}

std::optional<double> U_current_A(const PassFacts& facts, const PassEvaluation& pass) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  const MeasuringUncertainty u = planned_uncertainty(facts, pass);
  const double relative = u.current_in_all();
  return u.known && relative > 0 ? std::optional<double>(coverage_factor * relative * pass.current_A)
                                 : std::nullopt;
}

std::optional<double> U_heat_input_kJ_mm(const PassFacts& facts, const PassEvaluation& pass) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  return U_heat_input_kJ_mm(pass.heat_input_kJ_mm, planned_uncertainty(facts, pass));
}

std::optional<double> U_cooling_time_s(const PassFacts& facts, const PassEvaluation& pass,
                                       const CoolingCase& at) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  return U_cooling_time_s(pass.heat_input_kJ_mm, at, planned_uncertainty(facts, pass));
}

std::optional<CoolingGuard> cooling_guard(const PassFacts& facts, const PassEvaluation& pass,
                                          const CoolingCase& at) {
  if (!states_uncertainty(facts.plan)) return std::nullopt;
  return cooling_guard(pass.heat_input_kJ_mm, at, planned_uncertainty(facts, pass));
}

PassBudgets pass_budgets(const PassFacts& facts, const PassEvaluation& pass) {
  PassBudgets budgets;
  const MeasuringUncertainty u = planned_uncertainty(facts, pass);
  if (!states_uncertainty(facts.plan) || !u.known) return budgets;
  const CoolingCase at = cooling_cases(facts).nominal;
  const HeatSlopes slopes = heat_slopes(pass.heat_input_kJ_mm, at);
  budgets.current = budget_by({0, pass.current_A, 0}, facts, pass, u);
  budgets.heat_input = budget_by(slopes.heat_input_kJ_mm, facts, pass, u);
  if (!pass.cooling_time_s) return budgets;
  budgets.cooling_time = budget_by(slopes.cooling_time_s, facts, pass, u);
  if (budgets.cooling_time && is_numerical_U(pass.heat_input_kJ_mm, at, u)) {
    budgets.cooling_time->is_numerical = true;
    budgets.cooling_time->U = *U_cooling_time_s(pass.heat_input_kJ_mm, at, u);
    budgets.cooling_time->u = budgets.cooling_time->U / coverage_factor;
    budgets.cooling_time->degrees_of_freedom.reset();
  }
  return budgets;
}

}  // namespace seamtakt
