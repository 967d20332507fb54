#include "formula/metal/preheat.hpp"

#include "base/units/units.hpp"
#include "plan/evaluate/joint_metals.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

// An estimate: a shortfall is a warning, and within what the method can tell (5 K) a note.
void judge_preheat(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!pass.preheat_needed_C) return;
  const double given = facts.schedule.preheat_C, needed = *pass.preheat_needed_C;
  const double shortfall_K = needed - preheat_given_C(facts.schedule);
  if (shortfall_K <= 0) return;
  std::string text =
      "Preheat is " + rounded_text(given, 4) + " C, method B asks for " + rounded_text(needed, 4) + " C";
  text += pass.preheat_at_edge ? " at the edge of its range." : ".";
  for (const BaseMetal* metal : facts.metals)
    if (metal->composition_basis == "standard-maximum") {
      text += " The composition is the standard's maximum: the delivered plate will need less.";
      break;
    }
  findings.push_back({preheat_limit.rule, shortfall_K > preheat_tolerance_K ? Severity::warn : Severity::note,
                      facts.place(), given, needed, preheat_limit.unit, text, preheat_limit.source});
}

}  // namespace seamtakt
