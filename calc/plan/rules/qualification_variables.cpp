#include <cctype>
#include <string_view>

#include "base/text/ascii.hpp"
#include "formula/metal/material_group.hpp"
#include "formula/tolerance/qualification_range.hpp"
#include "plan/rules/qualification_findings.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

// ISO 15614-1:2017, recalled. Clauses are those of the subjects, not checked against a copy.
constexpr const char *table_source = "ISO 15614-1:2017, level 2 (recalled)",
                     *group_source = "ISO 15614-1:2017, 8.3.1 (recalled)",
                     *position_source = "ISO 15614-1:2017, 8.4.2 (recalled)";

/// How far above the tested interpass temperature it depends on edition and level whether the test holds.
constexpr double interpass_margin_K = 50;

/// The main group of ISO 14175 in a gas's text: a capital and perhaps a digit that are a word or the
/// beginning of one with hyphens ("ISO 14175-M21-ArC-18" -> "M21", "C1" -> "C1"). Empty where there is none.
std::string_view gas_symbol(std::string_view text) {
  const auto ends_word = [&](std::size_t i) { return i >= text.size() || text[i] == ' ' || text[i] == '-'; };
  for (std::size_t at = 0; at < text.size(); ++at) {
    if ((at > 0 && !ends_word(at - 1)) ||
        std::string_view("IMCRNOZ").find(text[at]) == std::string_view::npos)
      continue;
    std::size_t end = at + 1;
    while (end < text.size() && std::isdigit(static_cast<unsigned char>(text[end]))) ++end;
    if (end > at + 1 && ends_word(end)) return text.substr(at, end - at);
  }
  return {};
}

/// Whether one of two designations is the other without its standard's number.
bool is_same_designation(std::string_view a, std::string_view b) {
  return a.find(b) != std::string_view::npos || b.find(a) != std::string_view::npos;
}

void judge_gas(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  if (!facts.gas || tested.gas.empty() || facts.gas->designation.empty()) return;
  const std::string_view used = gas_symbol(facts.gas->designation), with = gas_symbol(tested.gas);
  if (used == with && !used.empty()) return;
  if (used.empty() && is_same_designation(facts.gas->designation, tested.gas)) return;
  const bool are_known = !used.empty() && !with.empty();
  findings.push_back(unlike_test("qualification.gas", are_known ? Severity::fail : Severity::warn,
                                 "Shielding gas"_word, facts.gas->designation, tested.gas, facts,
                                 table_source));
}

// Fillers of the same strength and composition qualify one another, unless impact properties are required.
void judge_filler(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  const std::string& used = facts.wire.classification;
  if (used.empty() || tested.filler.empty() || is_same_designation(used, tested.filler)) return;
  findings.push_back(unlike_test("qualification.filler",
                                 tested.impact_tested.value_or(false) ? Severity::fail : Severity::warn,
                                 "Filler metal"_word, used, tested.filler, facts, table_source));
}

// Each degree of mechanisation is qualified by itself; the plan knows robots and hands.
void judge_mechanisation(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  if (tested.mechanisation.empty()) return;
  const std::string text = lower_case(tested.mechanisation);
  const auto says = [&](const char* word) { return text.find(word) != std::string::npos; };
  const bool by_hand = says("manual") || says("partly") || says("semi");
  const bool by_machine = says("automatic") && !says("semi") ? true : says("robot") || says("fully");
  if (!by_hand && !by_machine) return;
  if (by_hand == (facts.seam.by == "manual")) return;
  findings.push_back(unlike_test("qualification.mechanisation", Severity::fail, "Mechanisation"_word,
                                 facts.seam.by, tested.mechanisation, facts, table_source));
}

// Dip is qualified by itself; globular, spray and pulsed transfer qualify one another.
void judge_transfer(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  const std::string& used = facts.schedule.transfer;
  if (used.empty() || tested.transfer.empty() || (used == "dip") == (tested.transfer == "dip")) return;
  findings.push_back(unlike_test("qualification.transfer", Severity::fail, "Transfer mode"_word, used,
                                 tested.transfer, facts, table_source));
}

void judge_groups(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  if (tested.group.empty()) return;
  for (std::size_t i = 0; i < std::size(facts.metals); ++i) {
    if (i > 0 && facts.metals[i] == facts.metals[0]) continue;
    const std::string_view group = material_group_of(facts.metals[i]->standard);
    if (group.empty() || group_cover(tested.group, group) != GroupCover::not_covered) continue;
    findings.push_back(unlike_test("qualification.material-group", Severity::fail, "Material group"_word,
                                   std::string(group) + " (" + facts.metals[i]->id + ")", tested.group, facts,
                                   group_source));
  }
}

void judge_joint(const PassFacts& facts, const TestedWeld&, Findings& findings) {
  if (!facts.seam.groove || facts.index.parts_of(facts.schedule).iso_ranges.joint != "fillet") return;
  findings.push_back({"qualification.joint",
                      Severity::fail,
                      facts.place(),
                      {},
                      {},
                      "",
                      Sentence("qualification.joint"_key, {{"qualification", facts.schedule.qualification}}),
                      table_source});
}

// A test in one position holds for all, but not downwards (PG).
void judge_position(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  const std::string& used = facts.seam.position;
  if (used.empty() || tested.position.empty() || used == tested.position) return;
  if ((used == "PG") == (tested.position == "PG")) return;
  findings.push_back(unlike_test("qualification.position", Severity::fail, "Position"_word, used,
                                 tested.position, facts, position_source));
}

void judge_runs(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  if (tested.runs.empty()) return;
  const bool is_multi = facts.seam.schedules.size() > 1;
  if (is_multi == (tested.runs == "multi")) return;
  findings.push_back(unlike_test("qualification.runs", Severity::warn, "Number of runs"_word,
                                 is_multi ? "multi" : "single", tested.runs, facts, table_source));
}

void judge_throat(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  const Seam& seam = facts.seam;
  if (!tested.throat_mm || seam.groove || seam.schedules.size() > 1) return;
  const RangeRule rule = throat_rule(facts.index.parts_of(facts.schedule).iso_ranges);
  if (!rule.has_limit()) return;
  if (seam.throat_mm || seam.leg_mm)
    judge_qualified_range("qualification.throat", "Throat as drawn"_word, "mm",
                          seam.throat_mm ? *seam.throat_mm : *seam.leg_mm * throat_per_leg(seam),
                          qualified_range(rule, *tested.throat_mm), facts, findings);
}

void judge_interpass(const PassFacts& facts, const TestedWeld& tested, Findings& findings) {
  if (!tested.interpass_C || !facts.schedule.limits || !facts.schedule.limits->interpass_C) return;
  const std::optional<double> highest = facts.schedule.limits->interpass_C->upper;
  if (!highest || *highest <= *tested.interpass_C) return;
  const bool is_near = *highest <= *tested.interpass_C + interpass_margin_K;
  findings.push_back(
      {"qualification.interpass", is_near ? Severity::warn : Severity::fail, facts.place(), *highest,
       *tested.interpass_C, "C",
       Sentence(is_near ? "qualification.interpass.near"_key : "qualification.interpass.above"_key,
                {{"highest", UnitValue{*highest, "C"}},
                 {"qualification", facts.schedule.qualification},
                 {"tested", UnitValue{*tested.interpass_C, "C"}}}),
       table_source});
}

}  // namespace

void judge_qualification_variables(const PassFacts& facts, const PassEvaluation&, Findings& findings) {
  const TestedWeld* const test = facts.index.parts_of(facts.schedule).iso_test;
  if (!test) return;
  for (const auto judge : {judge_transfer, judge_gas, judge_filler, judge_mechanisation, judge_groups,
                           judge_joint, judge_position, judge_runs, judge_throat, judge_interpass})
    judge(facts, *test, findings);
}

}  // namespace seamtakt
