#include "formula/metal/preheat.hpp"

#include <algorithm>

#include "plan/evaluate/joint_metals.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

SentenceKey sentence_key(const PassFacts& facts, const PassEvaluation& pass) {
  const auto is_maximum = [](const BaseMetal* metal) {
    return metal->composition_basis == "standard-maximum";
  };
  const bool has_maximum = std::any_of(std::begin(facts.metals), std::end(facts.metals), is_maximum);
  if (pass.preheat_at_edge)
    return has_maximum ? "preheat.below-needed.edge.standard-maximum"_key : "preheat.below-needed.edge"_key;
  return has_maximum ? "preheat.below-needed.standard-maximum"_key : "preheat.below-needed"_key;
}

}  // namespace

// An estimate: a shortfall is a warning, and within what the method can tell (5 K) a note.
void judge_preheat(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!pass.preheat_needed_C) return;
  const double given = facts.schedule.preheat_C, needed = *pass.preheat_needed_C;
  const double shortfall_K = needed - preheat_given_C(facts.schedule);
  if (shortfall_K <= 0) return;
  findings.push_back({preheat_limit.rule, shortfall_K > preheat_tolerance_K ? Severity::warn : Severity::note,
                      facts.place(), given, needed, preheat_limit.unit,
                      Sentence(sentence_key(facts, pass),
                               {{"given", UnitValue{given, "C"}}, {"needed", UnitValue{needed, "C"}}}),
                      preheat_limit.source});
}

}  // namespace seamtakt
