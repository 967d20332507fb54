#include <algorithm>

#include "plan/rules/rules.hpp"

namespace seamtakt {

// EN 1993-1-8:2005, 4.5.1: a fillet shorter than 30 mm or 6 throats doesn't carry load.
void judge_intermittent(const SeamFacts& facts, Findings& findings) {
  if (!facts.seam.intermittent || !facts.figures.throat_needed_mm) return;
  const double run = facts.seam.intermittent->length_mm;
  constexpr double shortest_mm = 30;
  const double least = std::max(shortest_mm, 6 * *facts.figures.throat_needed_mm);
  if (run >= least) return;
  findings.push_back({"fillet.run.too-short", Severity::warn, facts.place(), run, least, "mm",
                      Sentence("fillet.run.too-short"_key, {{"run", UnitValue{run, "mm"}},
                                                            {"least", UnitValue{least, "mm"}},
                                                            {"shortest", UnitValue{shortest_mm, "mm"}}}),
                      "EN 1993-1-8:2005, 4.5.1"});
}

}  // namespace seamtakt
