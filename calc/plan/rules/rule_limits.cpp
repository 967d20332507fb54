#include "plan/rules/rule_limits.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "formula/metal/preheat.hpp"
#include "formula/wire/duty_cycle.hpp"
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

std::optional<QualifiedRange<double>> qualified_heat_input(const PassFacts& facts, const TestedWeld& tested) {
  if (!tested.heat_input_kJ_mm) return std::nullopt;
  const RangeRule rule = heat_input_rule(facts.index.parts_of(facts.schedule).iso_ranges);
  if (!rule.has_limit()) return std::nullopt;
  return qualified_range(rule, *tested.heat_input_kJ_mm);
}

namespace {

/// The test weld whose hardness was measured at a known heat input, where the schedule has an upper limit.
const TestedWeld* hardness_test(const PassFacts& facts) {
  const auto& limits = facts.schedule.limits;
  if (!limits || !limits->hardness_HV || !limits->hardness_HV->upper) return nullptr;
  const Qualification* qualification = facts.index.qualification(facts.schedule.qualification);
  if (!qualification || !qualification->tested || !qualification->tested->hardness_HV ||
      !qualification->tested->heat_input_kJ_mm)
    return nullptr;
  return &*qualification->tested;
}

}  // namespace

std::optional<double> measured_above_limit_HV(const PassFacts& facts) {
  const TestedWeld* const test = hardness_test(facts);
  if (!test || *test->hardness_HV <= *facts.schedule.limits->hardness_HV->upper) return std::nullopt;
  return test->hardness_HV;
}

std::optional<double> measured_hardness_from_kJ_mm(const PassFacts& facts) {
  const TestedWeld* const test = hardness_test(facts);
  if (!test || measured_above_limit_HV(facts)) return std::nullopt;
  const auto& plates = facts.seam.thickness_mm;
  const bool is_thicker =
      test->thickness_mm && *std::max_element(plates.begin(), plates.end()) > *test->thickness_mm;
  const bool is_colder = test->preheat_C && facts.schedule.preheat_C < *test->preheat_C;
  if (is_thicker || is_colder) return std::nullopt;
  return *test->heat_input_kJ_mm * (1 - qualified_rounding);
}

bool measured_hardness_covers(const PassFacts& facts, double heat_input_kJ_mm) {
  const auto from = measured_hardness_from_kJ_mm(facts);
  return from && heat_input_kJ_mm >= *from;
}

double more_gap_mm(const Seam& seam) {
  return seam.gap_max_mm ? std::max(0.0, *seam.gap_max_mm - seam.gap_mm) : 0;
}

double throat_per_leg(const Seam& seam) {
  return std::cos(seam.dihedral_deg / 2 * std::numbers::pi / 180);
}

}  // namespace seamtakt
