#include "plan/rules/rules.hpp"

namespace seamtakt {

// A tack that is larger than the seam shows through it: the seam's profile can't cover it.
void judge_tacks(const SeamFacts& facts, Findings& findings) {
  if (!facts.seam.tacks) return;
  const Tacks& tacks = *facts.seam.tacks;
  if (facts.figures.leg_needed_mm && tacks.leg_mm > *facts.figures.leg_needed_mm)
    findings.push_back(
        {"tack.leg.too-large", Severity::warn, facts.place(), tacks.leg_mm, *facts.figures.leg_needed_mm,
         "mm",
         Sentence("tack.leg.too-large"_key, {{"tack", UnitValue{tacks.leg_mm, "mm", 3}},
                                             {"leg", UnitValue{*facts.figures.leg_needed_mm, "mm", 3}}}),
         "common practice, no source"});
  // Steels that need preheat crack from short, fast-cooled tacks first.
  constexpr double shortest_mm = 10;
  if (tacks.count > 0 && tacks.length_mm > 0 && tacks.length_mm < shortest_mm)
    findings.push_back({"tack.length.short", Severity::warn, facts.place(), tacks.length_mm, shortest_mm,
                        "mm",
                        Sentence("tack.length.short"_key, {{"length", UnitValue{tacks.length_mm, "mm", 3}},
                                                           {"least", UnitValue{shortest_mm, "mm", 3}}}),
                        "common practice, no source"});
}

}  // namespace seamtakt
