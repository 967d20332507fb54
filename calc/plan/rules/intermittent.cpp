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

namespace {

/// The longest gaps between runs that EN 1993-1-8, 4.3.2.2 (recalled) allows for the thinner part.
struct LongestGaps {
  double tension_mm, compression_mm;
};

LongestGaps longest_gaps(const Seam& seam) {
  constexpr double most_mm = 200, in_tension = 16, in_compression = 12, of_width = 0.25;
  const double thinner = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  double compression_mm = std::min(in_compression * thinner, most_mm);
  if (seam.flange_width_mm) compression_mm = std::min(compression_mm, of_width * *seam.flange_width_mm);
  return {std::min(in_tension * thinner, most_mm), compression_mm};
}

}  // namespace

// The plan doesn't know what a seam carries: the shorter of the two gaps is taken, both are shown, and it is
// a note.
void judge_run_gaps(const Plan& plan, Findings& findings) {
  if (!severity_by_code(plan, "EN 1090-2", Severity::note)) return;
  for (const Weldment& weldment : plan.weldments) {
    std::size_t seams = 0;
    const Seam* worst = nullptr;
    for (const Seam& seam : weldment.seams) {
      if (!seam.intermittent || seam.groove) continue;
      const double over_mm = seam.intermittent->gap_mm - longest_gaps(seam).compression_mm;
      if (over_mm <= 0) continue;
      ++seams;
      if (!worst || over_mm > worst->intermittent->gap_mm - longest_gaps(*worst).compression_mm)
        worst = &seam;
    }
    if (!worst) continue;
    const LongestGaps longest = longest_gaps(*worst);
    findings.push_back(
        {"fillet.runs.far-apart", Severity::note, weldment.id, worst->intermittent->gap_mm,
         longest.compression_mm, "mm",
         Sentence("fillet.runs.far-apart"_key, {{"seams", seams},
                                                {"seam", worst->id},
                                                {"gap", UnitValue{worst->intermittent->gap_mm, "mm", 3}},
                                                {"compression", UnitValue{longest.compression_mm, "mm", 3}},
                                                {"tension", UnitValue{longest.tension_mm, "mm", 3}}}),
         "EN 1993-1-8:2005, 4.3.2.2 (recalled)"});
  }
}

}  // namespace seamtakt
