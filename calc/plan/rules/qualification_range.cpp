#include "formula/tolerance/qualification_range.hpp"

#include "base/units/units.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

std::string range_text(const QualifiedRange<double>& range, const char* unit) {
  if (range.low && range.high)
    return rounded_text(*range.low, 4) + " to " + rounded_text(*range.high, 4) + " " + unit;
  return (range.low ? "from " + rounded_text(*range.low, 4) : "up to " + rounded_text(*range.high, 4)) + " " +
         unit;
}

constexpr const char* source = qualified_heat_limit.source;

void judge_range(const char* rule, const char* what, const char* unit, double value,
                 const QualifiedRange<double>& range, const PassFacts& facts, Findings& findings) {
  if (is_qualified(range, value)) return;
  const std::optional<double> limit = range.low && value < *range.low ? range.low : range.high;
  findings.push_back({rule, Severity::fail, facts.place(), value, limit, unit,
                      std::string(what) + " of " + rounded_text(value, 4) + " " + unit + " is outside the " +
                          range_text(range, unit) + " that " + facts.schedule.qualification + " qualifies.",
                      source});
}

void judge_same(const char* rule, const char* what, const std::string& used, const std::string& tested,
                const PassFacts& facts, Findings& findings) {
  if (used.empty() || tested.empty() || used == tested) return;
  findings.push_back({rule,
                      Severity::fail,
                      facts.place(),
                      {},
                      {},
                      "",
                      std::string(what) + " " + used + " is used, " + facts.schedule.qualification +
                          " was tested with " + tested + ".",
                      source});
}

}  // namespace

void judge_qualification_range(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  const TestedWeld* const test = judged_test(facts);
  if (!test) return;
  const TestedWeld& tested = *test;
  judge_same("qualification.process", "Process", facts.schedule.process, tested.process, facts, findings);
  judge_same("qualification.transfer", "Transfer mode", facts.schedule.transfer, tested.transfer, facts,
             findings);
  if (const auto range = qualified_heat_input(tested))
    judge_range(qualified_heat_limit.rule, "Heat input", qualified_heat_limit.unit, pass.heat_input_kJ_mm,
                *range, facts, findings);
  if (tested.thickness_mm)
    if (const auto rule = thickness_rule(qualified_test(tested), *tested.thickness_mm);
        rule && rule->has_limit())
      for (double thickness : facts.seam.thickness_mm)
        judge_range("qualification.thickness", "Plate thickness", "mm", thickness,
                    qualified_range(*rule, *tested.thickness_mm), facts, findings);
  if (tested.preheat_C && facts.schedule.preheat_C < *tested.preheat_C)
    findings.push_back({"qualification.preheat", Severity::fail, facts.place(), facts.schedule.preheat_C,
                        *tested.preheat_C, "C", "Preheat is below the qualification test's.", source});
}

}  // namespace seamtakt
