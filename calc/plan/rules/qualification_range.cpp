#include "formula/tolerance/qualification_range.hpp"

#include "plan/qualification_basis.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

SentenceKey range_key(const QualifiedRange<double>& range) {
  if (range.low && range.high) return "qualification.range.between"_key;
  return range.low ? "qualification.range.from"_key : "qualification.range.up-to"_key;
}

void judge_range(const char* rule, Word what, const char* unit, double value,
                 const RangeRule& range_rule, double tested, const PassFacts& facts, Findings& findings) {
  if (!range_rule.has_limit()) return;
  const QualifiedRange<double> range = qualified_range(range_rule, tested);
  if (is_qualified(range, value)) return;
  const std::optional<double> limit = range.low && value < *range.low ? range.low : range.high;
  std::vector<Argument> arguments{{"what", what},
                                  {"value", UnitValue{value, unit}},
                                  {"qualification", facts.schedule.qualification}};
  if (range.low) arguments.emplace_back("low", UnitValue{*range.low, unit});
  if (range.high) arguments.emplace_back("high", UnitValue{*range.high, unit});
  findings.push_back({rule, Severity::fail, facts.place(), value, limit, unit,
                      Sentence(range_key(range), std::move(arguments)),
                      "ISO 15614-1:2017, level 2 (recalled)"});
}

void judge_same(const char* rule, Word what, const std::string& used, const std::string& tested,
                const PassFacts& facts, Findings& findings) {
  if (used.empty() || tested.empty() || used == tested) return;
  findings.push_back({rule,
                      Severity::fail,
                      facts.place(),
                      {},
                      {},
                      "",
                      Sentence("qualification.same"_key, {{"what", what},
                                                          {"used", used},
                                                          {"qualification", facts.schedule.qualification},
                                                          {"tested", tested}}),
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
  judge_same("qualification.process", "Process"_word, facts.schedule.process, tested.process, facts, findings);
  judge_same("qualification.transfer", "Transfer mode"_word, facts.schedule.transfer, tested.transfer, facts,
             findings);
  if (tested.heat_input_kJ_mm)
    judge_range("qualification.heat-input", "Heat input"_word, "kJ/mm", pass.heat_input_kJ_mm,
                heat_input_rule(test), *tested.heat_input_kJ_mm, facts, findings);
  if (tested.thickness_mm)
    if (const auto rule = thickness_rule(test, *tested.thickness_mm))
      for (double thickness : facts.seam.thickness_mm)
        judge_range("qualification.thickness", "Plate thickness"_word, "mm", thickness, *rule,
                    *tested.thickness_mm, facts, findings);
  if (tested.preheat_C && facts.schedule.preheat_C < *tested.preheat_C)
    findings.push_back({"qualification.preheat", Severity::fail, facts.place(), facts.schedule.preheat_C,
                        *tested.preheat_C, "C", Sentence("qualification.preheat"_key),
                        "ISO 15614-1:2017, level 2 (recalled)"});
}

}  // namespace seamtakt
