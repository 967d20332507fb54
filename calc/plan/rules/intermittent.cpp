#include <algorithm>

#include "base/units/units.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

// EN 1993-1-8:2005, 4.5.1: a fillet shorter than 30 mm or 6 throats doesn't carry load.
void judge_intermittent(const SeamFacts& facts, Findings& findings) {
  if (!facts.seam.intermittent || !facts.figures.throat_needed_mm) return;
  const double run = facts.seam.intermittent->length_mm;
  const double least = std::max(30.0, 6 * *facts.figures.throat_needed_mm);
  if (run >= least) return;
  findings.push_back({"fillet.run.too-short", Severity::warn, facts.place(), run, least, "mm",
                      "A run of " + rounded_text(run, 4) + " mm is shorter than the " +
                          rounded_text(least, 4) +
                          " mm (30 mm or 6 throats) from which a fillet is taken to carry load.",
                      "EN 1993-1-8:2005, 4.5.1"});
}

}  // namespace seamtakt
