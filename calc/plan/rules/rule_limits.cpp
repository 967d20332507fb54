#include "plan/rules/rule_limits.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "formula/metal/preheat.hpp"
#include "formula/wire/duty_cycle.hpp"
#include "plan/qualification_basis.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

double preheat_given_C(const Schedule& schedule) {
  return std::max(schedule.preheat_C, shop_temperature_C);
}

double longest_arc_s(double rated_current_A, double rated_duty_pct, double current_A) {
  const double allowed_pct = duty_at_current_pct(rated_current_A, rated_duty_pct, current_A);
  return allowed_pct < 100 ? allowed_pct / 100 * duty_period_s : std::numeric_limits<double>::infinity();
}

double longest_run_mm(const Seam& seam) {
  const auto runs = weld_runs(seam);
  return runs.empty() ? 0 : runs[0].to_mm - runs[0].from_mm;
}

const TestedWeld* judged_test(const PassFacts& facts) {
  const Qualification* qualification = facts.index.qualification(facts.schedule.qualification);
  if (!qualification || !qualification->tested ||
      qualification_route(qualification->basis) != QualificationRoute::judged)
    return nullptr;
  return &*qualification->tested;
}

QualifiedTest qualified_test(const TestedWeld& tested) {
  QualifiedTest test;
  test.joint = tested.throat_mm || tested.joint == "fillet" ? "fillet" : "butt";
  test.runs = tested.runs == "single" ? "single" : "multi";
  test.impact_tested = tested.impact_tested.value_or(false);
  test.hardness_tested = tested.hardness_tested.value_or(false);
  return test;
}

std::optional<QualifiedRange<double>> qualified_heat_input(const TestedWeld& tested) {
  if (!tested.heat_input_kJ_mm) return std::nullopt;
  const RangeRule rule = heat_input_rule(qualified_test(tested));
  if (!rule.has_limit()) return std::nullopt;
  return qualified_range(rule, *tested.heat_input_kJ_mm);
}

double more_gap_mm(const Seam& seam) {
  return seam.gap_max_mm ? std::max(0.0, *seam.gap_max_mm - seam.gap_mm) : 0;
}

double throat_per_leg(const Seam& seam) {
  return std::cos(seam.dihedral_deg / 2 * std::numbers::pi / 180);
}

}  // namespace seamtakt
