#include <algorithm>

#include "base/units.hpp"
#include "formula/preheat.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

void judge_preheat(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!pass.preheat_needed_C) return;
  const double given = facts.schedule.preheat_C, needed = *pass.preheat_needed_C;
  // What the method gives at or below a shop's 20 C asks for no preheat.
  if (needed <= std::max(given, 20.0)) return;
  const double thicker = std::max(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]);
  const bool in_range =
      outside_preheat_range(pass.CET, thicker, *facts.wire.hydrogen_ml_100g, pass.heat_input_kJ_mm, "")
          .empty();
  std::string text =
      "Preheat is " + rounded_text(given, 4) + " C, method B asks for " + rounded_text(needed, 4) + " C";
  text += in_range ? "." : ", but the pass lies outside the method's range.";
  for (const BaseMetal* metal : facts.metals)
    if (metal->composition_basis == "standard-maximum") {
      text += " The composition is the standard's maximum: the delivered plate will need less.";
      break;
    }
  findings.push_back({in_range ? "preheat.below-needed" : "preheat.below-needed-outside-range",
                      in_range ? Severity::fail : Severity::note, facts.place(), given, needed, "C", text,
                      "EN 1011-2:2001, C.3 (method B)"});
}

}  // namespace seamtakt
