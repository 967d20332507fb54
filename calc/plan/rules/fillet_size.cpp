#include <algorithm>
#include <cmath>
#include <numbers>

#include "plan/evaluate/largest_fillet.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

// Below this share of the size asked for, a difference is rounding of the figures and not an undersize.
constexpr double size_tolerance = 1e-9;

void judge_size(const SeamFacts& facts, const char* rule, Word what, double obtained, double needed,
                std::optional<double> U, Findings& findings) {
  if (obtained < needed * (1 - size_tolerance)) {
    findings.push_back({rule, Severity::fail, facts.place(), obtained, needed, "mm",
                        Sentence("fillet.size.undersize"_key, {{"what", what},
                                                               {"obtained", UnitValue{obtained, "mm", 3}},
                                                               {"needed", UnitValue{needed, "mm", 3}}}),
                        "plan limit"});
    return;
  }
  if (guarded_decision(facts.plan) && U && obtained < needed + *U)
    findings.push_back(
        {std::string(rule) + ".guard-band", Severity::warn, facts.place(), obtained, needed, "mm",
         Sentence("fillet.size.guard-band"_key, {{"what", what},
                                                 {"obtained", UnitValue{obtained, "mm", 3}},
                                                 {"needed", UnitValue{needed, "mm", 3}}}),
         "plan limit"});
}

}  // namespace

void judge_fillet_size(const SeamFacts& facts, Findings& findings) {
  const SeamEvaluation& seam = facts.figures;
  if (!seam.leg_mm) return;
  if (facts.seam.leg_mm)
    judge_size(facts, "fillet.leg.undersize", "Fillet leg"_word, *seam.leg_mm, *facts.seam.leg_mm, seam.U_leg_mm,
               findings);
  if (facts.seam.throat_mm)
    judge_size(facts, "fillet.throat.undersize", "Fillet throat"_word, *seam.throat_mm, *facts.seam.throat_mm, {},
               findings);

  // The same seam where the parts meet worst: the leg loses what the gap takes.
  if (!facts.seam.gap_max_mm || *facts.seam.gap_max_mm <= facts.seam.gap_mm) return;
  const double more_gap = *facts.seam.gap_max_mm - facts.seam.gap_mm;
  const double half_angle = facts.seam.dihedral_deg / 2 * std::numbers::pi / 180;
  const double leg = *seam.leg_mm - more_gap, throat = *seam.throat_mm - more_gap * std::cos(half_angle);
  if (facts.seam.leg_mm)
    judge_size(facts, "fillet.leg.undersize-at-gap-max", "Fillet leg at the largest gap"_word, leg,
               *facts.seam.leg_mm, {}, findings);
  if (facts.seam.throat_mm)
    judge_size(facts, "fillet.throat.undersize-at-gap-max", "Fillet throat at the largest gap"_word, throat,
               *facts.seam.throat_mm, {}, findings);
}

// Excess at the gap as drawn: where the parts meet better than at the largest gap the throat is largest.
void judge_excess_throat(const SeamFacts& facts, Findings& findings) {
  if (facts.seam.quality.empty() || !facts.figures.throat_mm) return;
  const double obtained = *facts.figures.throat_mm, needed = *facts.figures.throat_needed_mm;
  if (obtained <= needed) return;
  const auto allowed = excess_throat(facts.seam, needed);
  if (!allowed || obtained <= (needed + allowed->excess_mm) * (1 + size_tolerance)) return;
  findings.push_back({"fillet.throat.excess", Severity::fail, facts.place(), obtained,
                      needed + allowed->excess_mm, "mm",
                      Sentence("fillet.throat.excess"_key, {{"throat", UnitValue{obtained, "mm", 3}},
                                                            {"level", facts.seam.quality},
                                                            {"excess", UnitValue{allowed->excess_mm, "mm", 3}},
                                                            {"needed", UnitValue{needed, "mm", 3}}}),
                      allowed->source});
}

void judge_groove_fill(const SeamFacts& facts, Findings& findings) {
  if (!facts.seam.groove || facts.figures.area_mm2 >= facts.figures.area_needed_mm2 * (1 - size_tolerance))
    return;
  findings.push_back({"groove.area.underfilled", Severity::fail, facts.place(), facts.figures.area_mm2,
                      facts.figures.area_needed_mm2, "mm2",
                      Sentence("groove.area.underfilled"_key,
                               {{"area", UnitValue{facts.figures.area_mm2, "mm2"}},
                                {"needed", UnitValue{facts.figures.area_needed_mm2, "mm2"}}}),
                      "plan limit"});
}

}  // namespace seamtakt
