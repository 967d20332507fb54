#include "formula/tolerance/essential_variable.hpp"
#include "plan/planned_current.hpp"
#include "plan/rules/qualification_findings.hpp"
#include "plan/rules/rules.hpp"
#include "plan/uncertainty/open_limits.hpp"

namespace seamtakt {

namespace {

constexpr const char* d1_1_source = "AWS D1.1, essential variables of GMAW and FCAW (recalled)";

struct SettingOfTest {
  const char *key, *unit;
  Word what;
  std::optional<double> TestedWeld::*tested;
  double (*used)(const PassFacts&, const PassEvaluation&);
};

const SettingOfTest settings[] = {
    {"current_A", "A", "Current"_word, &TestedWeld::current_A,
     [](const PassFacts&, const PassEvaluation& pass) { return pass.current_A; }},
    {"voltage_V", "V", "Arc voltage"_word, &TestedWeld::voltage_V,
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.arc_voltage_V; }},
    {"travel_speed_mm_s", "mm/s", "Travel speed"_word, &TestedWeld::travel_speed_mm_s,
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.travel_speed_mm_s; }},
    {"wire_feed_speed_m_min", "m/min", "Wire feed speed"_word, &TestedWeld::wire_feed_speed_m_min,
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.wire_feed_speed_m_min; }},
    {"gas_flow_l_min", "l/min", "Gas flow"_word, &TestedWeld::gas_flow_l_min,
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.gas_flow_l_min; }}};

void judge_setting(const SettingOfTest& setting, const TestedWeld& tested, const PassFacts& facts,
                   const PassEvaluation& pass, Findings& findings) {
  const std::optional<double>& was = tested.*setting.tested;
  const auto allowed = was ? allowed_change("aws-d1-1", setting.key) : std::nullopt;
  // Current is the law's where the plan doesn't state it; then wire feed is compared.
  const bool is_estimate = std::string_view(setting.key) == "current_A" &&
                           !stated_current_A(facts.schedule) && tested.wire_feed_speed_m_min;
  const bool is_unsure =
      std::string_view(setting.key) == "current_A" && is_open(pass, OpenLimit::qualified_current);
  if (!allowed || is_estimate || is_unsure) return;
  const double used = setting.used(facts, pass);
  const QualifiedRange<double> range{*was * (1 - allowed->decrease_pct / 100),
                                     *was * (1 + allowed->increase_pct / 100)};
  if (is_qualified(range, used)) return;
  const UnitValue limit{used < *range.low ? *range.low : *range.high, setting.unit};
  findings.push_back(
      {std::string("qualification.d1-1.") + setting.key, Severity::fail, facts.place(), used, limit.value,
       setting.unit,
       Sentence("qualification.essential-change"_key, {{"what", setting.what},
                                                       {"used", UnitValue{used, setting.unit}},
                                                       {"qualification", facts.schedule.qualification},
                                                       {"tested", UnitValue{*was, setting.unit}},
                                                       {"limit", limit}}),
       d1_1_source});
}

}  // namespace

void judge_qualification_d1_1(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  const TestedWeld* const test = facts.index.parts_of(facts.schedule).d1_1_test;
  if (!test) return;
  const TestedWeld& tested = *test;
  for (const SettingOfTest& setting : settings) judge_setting(setting, tested, facts, pass, findings);
  // Any change of the transfer mode of GMAW is to be qualified again.
  const std::string& used = facts.schedule.transfer;
  if (!used.empty() && !tested.transfer.empty() && used != tested.transfer)
    findings.push_back(unlike_test("qualification.transfer", Severity::fail, "Transfer mode"_word, used,
                                   tested.transfer, facts, d1_1_source));
}

bool states_essential_settings(const TestedWeld& tested) {
  for (const SettingOfTest& setting : settings)
    if (tested.*setting.tested) return true;
  return false;
}

bool is_judged_by_test(const PassFacts& facts) {
  const PlanIndex::ScheduleParts& parts = facts.index.parts_of(facts.schedule);
  return parts.iso_test || (parts.d1_1_test && states_essential_settings(*parts.d1_1_test));
}

}  // namespace seamtakt
