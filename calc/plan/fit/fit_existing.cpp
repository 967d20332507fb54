#include "plan/fit/fit_existing.hpp"

#include <algorithm>
#include <utility>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fit/fit_search.hpp"

namespace seamtakt {

namespace {

double measure_of(const FitSettings& settings, FitObjective objective) {
  switch (objective) {
    case FitObjective::heat:
      return settings.heat_kJ;
    case FitObjective::cost:
      return settings.cost;
    case FitObjective::time:
      break;
  }
  return settings.time_s;
}

bool holds_all(const FitOptions& options, const Schedule& planned, const Schedule& other) {
  const auto same = [&](FitHold hold, double Schedule::*setting) {
    return !options.is_held(hold) || planned.*setting == other.*setting;
  };
  return same(FitHold::wire_feed, &Schedule::wire_feed_speed_m_min) &&
         same(FitHold::voltage, &Schedule::arc_voltage_V) &&
         same(FitHold::travel_speed, &Schedule::travel_speed_mm_s);
}

}  // namespace

bool warns_of_preheat(const Findings& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
    return finding.rule == "preheat.below-needed" && finding.severity == Severity::warn;
  });
}

FitSettings fit_settings(const SeamAlone& alone, const Evaluation& evaluation, const std::string& main) {
  const Schedule& schedule = *find_by_id(alone.plan.schedules, main);
  const PlanIndex index(alone.plan);
  FitSettings settings;
  settings.schedule = schedule.id;
  settings.revision = schedule.revision;
  settings.wire_feed_speed_m_min = schedule.wire_feed_speed_m_min;
  settings.arc_voltage_V = schedule.arc_voltage_V;
  settings.travel_speed_mm_s = schedule.travel_speed_mm_s;
  settings.cost = evaluation.weldments.front().cost;
  settings.leg_mm = evaluation.seams.front().leg_mm;
  for (const PassEvaluation& pass : evaluation.passes) {
    const FitRates rates =
        fit_rates(pass_facts(alone.plan, index, alone.weldment(), alone.seam(), pass.pass));
    settings.time_s += pass.arc_time_s + rates.starts_and_ends_s;
    settings.heat_kJ += pass.heat_input_kJ_mm * pass.length_mm;
    settings.cost += rates.starts_and_ends_s / 3600 * rates.hour;
    if (pass.schedule != main) continue;
    ++settings.passes;
    settings.heat_input_kJ_mm = pass.heat_input_kJ_mm;
  }
  return settings;
}

std::vector<FitSettings> schedules_that_fit(const SeamAlone& alone, const std::string& main,
                                            const Evaluation& planned, const FitOptions& options) {
  const Schedule& schedule = *find_by_id(alone.plan.schedules, main);
  std::vector<FitSettings> fitting;
  for (const Schedule& other : alone.plan.schedules) {
    if (other.id == main || other.process != schedule.process || other.wire != schedule.wire) continue;
    if (!holds_all(options, schedule, other)) continue;
    SeamAlone tried = alone;
    std::replace(tried.seam().schedules.begin(), tried.seam().schedules.end(), main, other.id);
    const Evaluation evaluation = evaluate(tried.plan);
    if (any_failed(evaluation.findings)) continue;
    const bool may_warn = any_failed(planned.findings) && warns_of_preheat(planned.findings);
    if (warns_of_preheat(evaluation.findings) && !may_warn) continue;
    if (const WindowProblem problem = window_problem(tried, other.id);
        problem.keeps_limits(false) && keeps_margin(options, problem, false))
      fitting.push_back(fit_settings(tried, evaluation, other.id));
  }
  const auto order = [&](const FitSettings& each) {
    const bool is_approved = find_by_id(alone.plan.schedules, each.schedule)->status == "approved";
    return std::pair(!is_approved, measure_of(each, options.objective));
  };
  std::stable_sort(fitting.begin(), fitting.end(),
                   [&](const FitSettings& a, const FitSettings& b) { return order(a) < order(b); });
  return fitting;
}

}  // namespace seamtakt
