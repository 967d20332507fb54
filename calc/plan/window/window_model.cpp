#include "plan/window/window_model.hpp"

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/wire/deposition.hpp"
#include "formula/wire/melting.hpp"
#include "formula/wire/weld_metal_density.hpp"
#include "plan/evaluate/cooling_case.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/evaluate/evaluate_pass.hpp"
#include "plan/evaluate/joint_metals.hpp"
#include "plan/planned_current.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/wire_extension.hpp"

namespace seamtakt {

namespace {

double law_current_A(const WindowModel& model, double wire_feed_speed_m_min) {
  return melting_current_A(feed_mm_s_from_m_min(wire_feed_speed_m_min), model.extension_mm,
                           model.alpha_mm_s_A, model.beta_per_s_A2);
}

/// The voltage of the schedule, or the one that follows the current.
double voltage_at(const WindowModel& model, double current_A) {
  if (model.voltage_per_current_V_A == 0) return model.arc_voltage_V;
  const double least = model.voltage_V.lower.value_or(0);
  const double most = model.voltage_V.upper.value_or(std::numeric_limits<double>::infinity());
  const auto held = [&](double voltage_V) { return std::min(std::max(voltage_V, least), most); };
  const double on_line =
      held(model.arc_voltage_V + model.voltage_per_current_V_A * (current_A - model.base_current_A));
  if (model.voltage_steps_per_V <= 0) return on_line;
  return held(std::round(on_line * model.voltage_steps_per_V) / model.voltage_steps_per_V);
}

void add_arc(const PassFacts& facts, WindowModel& model) {
  const Schedule& schedule = facts.schedule;
  const Wire& wire = facts.wire;
  model.extension_mm = wire_extension_mm(schedule);
  model.alpha_mm_s_A = wire.alpha_mm_s_A;
  model.beta_per_s_A2 = wire.beta_per_s_A2;
  model.base_current_A = law_current_A(model, schedule.wire_feed_speed_m_min);
  if (const auto stated = stated_current_A(schedule)) {
    model.current_factor = *stated / model.base_current_A;
    model.base_current_A = *stated;
  }
  model.wire_area_mm2 = wire_area_mm2(wire.diameter_mm);
  model.wire_density_g_cm3 = wire.density_g_cm3;
  model.deposition_efficiency = wire.deposition_efficiency;
  model.weld_metal_density_g_cm3 = weld_metal_density_g_cm3(wire.material);
  model.arc_voltage_V = schedule.arc_voltage_V;
  model.waveform_factor = schedule.waveform_factor;
  model.thermal_efficiency = thermal_efficiency_of(schedule.process).value_or(0);
  if (facts.power_source) {
    model.max_current_A = facts.power_source->max_current_A;
    model.rated_current_A = facts.power_source->rated_current_A;
    model.rated_duty_pct = facts.power_source->rated_duty_pct.value_or(100);
  }
}

void add_seam(const PassFacts& facts, WindowModel& model) {
  const Seam& seam = facts.seam;
  model.area_allowance = seam.area_allowance;
  model.gap_mm = seam.gap_mm;
  model.dihedral_deg = seam.dihedral_deg;
  model.is_groove = seam.groove.has_value();
  model.throat_per_leg = throat_per_leg(seam);
  model.plate_mm = {seam.thickness_mm[0], seam.thickness_mm[1]};
  model.cooling = cooling_cases(facts);
  if (seam.joint == "lap") model.leg_at_most_mm = model.cooling.nominal.thickness_mm;
  model.longest_run_mm = longest_run_mm(seam);
  const JointMetals metals = joint_metals(facts);
  model.is_ferritic = metals.is_ferritic;
  model.has_hardness = metals.has_hardness;
  // Which inputs are out of range doesn't depend on the heat input, which is left open here.
  const auto preheat = preheat_case_of(facts, metals, preheat_heat_input_range.upper);
  if (preheat && !preheat->beyond) model.preheat = preheat->inputs;
}

Findings fails_at(const Findings& findings, const std::vector<std::string>& places) {
  Findings fails;
  for (const Finding& finding : findings)
    if (finding.severity == Severity::fail &&
        std::find(places.begin(), places.end(), finding.where) != places.end())
      fails.push_back(finding);
  return fails;
}

}  // namespace

bool WindowProblem::keeps_limits(bool stated) const {
  if (!fails.empty()) return false;
  constexpr double rounding = 1e-9;
  return std::none_of(limits.begin(), limits.end(), [&](const WindowLimit& limit) {
    if (!limit.cuts || (stated && !limit.is_stated) || !limit.margin()) return false;
    return *limit.margin() < -rounding * std::abs(*limit.bound);
  });
}

WindowProblem window_problem(const SeamAlone& alone, const std::string& schedule) {
  WindowProblem problem;
  problem.passes = passes_with(alone.seam(), schedule);
  const Evaluation evaluation = evaluate(alone.plan);
  problem.fails = fails_at(evaluation.findings, judged_places(alone, problem.passes));
  const PlanIndex index(alone.plan);
  const PassFacts facts =
      pass_facts(alone.plan, index, alone.weldment(), alone.seam(), problem.passes.front());
  WindowModel& model = problem.model;
  add_arc(facts, model);
  add_seam(facts, model);
  model.passes = static_cast<double>(problem.passes.size());
  for (const PassEvaluation& pass : evaluation.passes)
    if (pass.schedule != schedule) model.other_area_mm2 += pass.deposit_area_mm2;
  const PassEvaluation& first = evaluation.passes[static_cast<std::size_t>(problem.passes.front() - 1)];
  add_window_limits(facts, first, evaluation.seams.front(), problem);
  return problem;
}

FeedFigures feed_figures(const WindowModel& model, double wire_feed_speed_m_min) {
  FeedFigures feed;
  feed.current_A = law_current_A(model, wire_feed_speed_m_min) * model.current_factor;
  feed.arc_voltage_V = voltage_at(model, feed.current_A);
  feed.power_W = arc_power_W(feed.arc_voltage_V, feed.current_A) * model.waveform_factor;
  const double melted =
      melting_rate_kg_h(model.wire_area_mm2, wire_feed_speed_m_min, model.wire_density_g_cm3);
  feed.deposition_rate_kg_h = deposition_rate_kg_h(melted, model.deposition_efficiency);
  if (model.rated_current_A)
    feed.longest_arc_s = longest_arc_s(*model.rated_current_A, model.rated_duty_pct, feed.current_A);
  return feed;
}

}  // namespace seamtakt
