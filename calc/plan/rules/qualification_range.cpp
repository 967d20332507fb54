#include "formula/tolerance/qualification_range.hpp"

#include "plan/rules/qualification_findings.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"
#include "plan/uncertainty/open_limits.hpp"

namespace seamtakt {

namespace {

SentenceKey range_key(const QualifiedRange<double>& range) {
  if (range.low && range.high) return "qualification.range.between"_key;
  return range.low ? "qualification.range.from"_key : "qualification.range.up-to"_key;
}

constexpr const char* range_source = qualified_heat_limit.source;

}  // namespace

void judge_qualified_range(const char* rule, Word what, const char* unit, double value,
                           const QualifiedRange<double>& range, const PassFacts& facts, Findings& findings) {
  if (is_qualified(range, value)) return;
  const std::optional<double> limit = range.low && value < *range.low ? range.low : range.high;
  std::vector<Argument> arguments{
      {"what", what}, {"value", UnitValue{value, unit}}, {"qualification", facts.schedule.qualification}};
  if (range.low) arguments.emplace_back("low", UnitValue{*range.low, unit});
  if (range.high) arguments.emplace_back("high", UnitValue{*range.high, unit});
  findings.push_back({rule, Severity::fail, facts.place(), value, limit, unit,
                      Sentence(range_key(range), std::move(arguments)), range_source});
}

Finding unlike_test(const char* rule, Severity severity, Word what, const std::string& used,
                    const std::string& tested, const PassFacts& facts, const char* finding_source) {
  return {rule,
          severity,
          facts.place(),
          {},
          {},
          "",
          Sentence("qualification.same"_key, {{"what", what},
                                              {"used", used},
                                              {"qualification", facts.schedule.qualification},
                                              {"tested", tested}}),
          finding_source};
}

void judge_qualification_range(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  const TestedWeld* const test = facts.index.parts_of(facts.schedule).iso_test;
  if (!test) return;
  const TestedWeld& tested = *test;
  const std::string& process = facts.schedule.process;
  if (!process.empty() && !tested.process.empty() && process != tested.process)
    findings.push_back(unlike_test("qualification.process", Severity::fail, "Process"_word, process,
                                   tested.process, facts, range_source));
  if (const auto range = qualified_heat_input(facts, tested);
      range && !is_open(pass, OpenLimit::qualified_heat_input))
    judge_qualified_range(qualified_heat_limit.rule, "Heat input"_word, qualified_heat_limit.unit,
                          pass.heat_input_kJ_mm, *range, facts, findings);
  if (tested.thickness_mm)
    if (const auto rule =
            thickness_rule(facts.index.parts_of(facts.schedule).iso_ranges, *tested.thickness_mm);
        rule && rule->has_limit())
      for (double thickness : facts.seam.thickness_mm)
        judge_qualified_range("qualification.thickness", "Plate thickness"_word, "mm", thickness,
                              qualified_range(*rule, *tested.thickness_mm), facts, findings);
  if (tested.preheat_C && facts.schedule.preheat_C < *tested.preheat_C)
    findings.push_back({"qualification.preheat", Severity::fail, facts.place(), facts.schedule.preheat_C,
                        *tested.preheat_C, "C", Sentence("qualification.preheat"_key), range_source});
}

}  // namespace seamtakt
