#include "base/units/units.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

// A tack that is larger than the seam shows through it: the seam's profile can't cover it.
void judge_tacks(const SeamFacts& facts, Findings& findings) {
  if (!facts.seam.tacks) return;
  const Tacks& tacks = *facts.seam.tacks;
  if (facts.figures.leg_needed_mm && tacks.leg_mm > *facts.figures.leg_needed_mm)
    findings.push_back({"tack.leg.too-large", Severity::warn, facts.place(), tacks.leg_mm,
                        *facts.figures.leg_needed_mm, "mm",
                        "Tacks of leg " + rounded_text(tacks.leg_mm, 3) + " mm stand out of a seam of leg " +
                            rounded_text(*facts.figures.leg_needed_mm, 3) + " mm.",
                        "common practice, no source"});
  // Steels that need preheat crack from short, fast-cooled tacks first.
  constexpr double shortest_mm = 10;
  if (tacks.count > 0 && tacks.length_mm > 0 && tacks.length_mm < shortest_mm)
    findings.push_back({"tack.length.short", Severity::warn, facts.place(), tacks.length_mm, shortest_mm,
                        "mm",
                        "Tacks of " + rounded_text(tacks.length_mm, 3) + " mm are shorter than " +
                            rounded_text(shortest_mm, 3) + " mm.",
                        "common practice, no source"});
}

}  // namespace seamtakt
