#include "formula/tolerance/qualification_range.hpp"

#include "base/units/units.hpp"
#include "plan/qualification_basis.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

std::string range_text(const QualifiedRange<double>& range, const char* unit) {
  if (range.low && range.high)
    return rounded_text(*range.low, 4) + " to " + rounded_text(*range.high, 4) + " " + unit;
  return (range.low ? "from " + rounded_text(*range.low, 4) : "up to " + rounded_text(*range.high, 4)) + " " +
         unit;
}

void judge_range(const char* rule, const char* what, const char* unit, double value,
                 const RangeRule& range_rule, double tested, const PassFacts& facts, Findings& findings) {
  if (!range_rule.has_limit()) return;
  const QualifiedRange<double> range = qualified_range(range_rule, tested);
  if (is_qualified(range, value)) return;
  const std::optional<double> limit = range.low && value < *range.low ? range.low : range.high;
  findings.push_back({rule, Severity::fail, facts.place(), value, limit, unit,
                      std::string(what) + " of " + rounded_text(value, 4) + " " + unit + " is outside the " +
                          range_text(range, unit) + " that " + facts.schedule.qualification + " qualifies.",
                      "ISO 15614-1:2017, level 2 (recalled)"});
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
                      "ISO 15614-1:2017, level 2 (recalled)"});
}

}  // namespace

void judge_qualification_range(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  const Qualification* qualification = facts.index.qualification(facts.schedule.qualification);
  if (!qualification || !qualification->tested ||
      qualification_route(qualification->basis) != QualificationRoute::judged)
    return;
  const TestedWeld& tested = *qualification->tested;
  QualifiedTest test;
  test.joint = tested.throat_mm || tested.joint == "fillet" ? "fillet" : "butt";
  test.runs = tested.runs == "single" ? "single" : "multi";
  test.impact_tested = tested.impact_tested.value_or(false);
  test.hardness_tested = tested.hardness_tested.value_or(false);
  judge_same("qualification.process", "Process", facts.schedule.process, tested.process, facts, findings);
  judge_same("qualification.transfer", "Transfer mode", facts.schedule.transfer, tested.transfer, facts,
             findings);
  if (tested.heat_input_kJ_mm)
    judge_range("qualification.heat-input", "Heat input", "kJ/mm", pass.heat_input_kJ_mm,
                heat_input_rule(test), *tested.heat_input_kJ_mm, facts, findings);
  if (tested.thickness_mm)
    if (const auto rule = thickness_rule(test, *tested.thickness_mm))
      for (double thickness : facts.seam.thickness_mm)
        judge_range("qualification.thickness", "Plate thickness", "mm", thickness, *rule,
                    *tested.thickness_mm, facts, findings);
  if (tested.preheat_C && facts.schedule.preheat_C < *tested.preheat_C)
    findings.push_back({"qualification.preheat", Severity::fail, facts.place(), facts.schedule.preheat_C,
                        *tested.preheat_C, "C", "Preheat is below the qualification test's.",
                        "ISO 15614-1:2017, level 2 (recalled)"});
}

}  // namespace seamtakt
