#include <algorithm>

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

namespace {

/// Least length of a tack by EN 1011-2, clause 13 (read): 50 mm, or four times the thicker part below 12 mm.
double recommended_tack_mm(const Seam& seam) {
  constexpr double thick_from_mm = 12, usual_mm = 50, times_thickness = 4;
  const double thicker = *std::max_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  return thicker < thick_from_mm ? times_thickness * thicker : usual_mm;
}

}  // namespace

// Robot frames are usually tacked by 20 to 30 mm: said once a weldment, and not where a trial shows that they
// hold.
void judge_tack_lengths(const Plan& plan, Findings& findings) {
  for (const Weldment& weldment : plan.weldments) {
    std::size_t seams = 0;
    double length_mm = 0, least_mm = 0;  // of the seam that is shortest of what is recommended
    for (const Seam& seam : weldment.seams) {
      if (!seam.tacks || seam.tacks->count == 0 || seam.tacks->length_mm <= 0 || !seam.tacks->tested.empty())
        continue;
      const double recommended_mm = recommended_tack_mm(seam);
      if (seam.tacks->length_mm >= recommended_mm) continue;
      if (seams++ > 0 && recommended_mm - seam.tacks->length_mm <= least_mm - length_mm) continue;
      length_mm = seam.tacks->length_mm;
      least_mm = recommended_mm;
    }
    if (seams == 0) continue;
    findings.push_back(
        {"tack.length.below-recommended", Severity::note, weldment.id, length_mm, least_mm, "mm",
         Sentence("tack.length.below-recommended"_key, {{"seams", seams},
                                                        {"length", UnitValue{length_mm, "mm", 3}},
                                                        {"least", UnitValue{least_mm, "mm", 3}}}),
         "EN 1011-2:2001, 13"});
  }
}

}  // namespace seamtakt
