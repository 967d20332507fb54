#include "plan/evaluate/largest_fillet.hpp"

#include <algorithm>
#include <vector>

#include "formula/size/fillet.hpp"
#include "formula/tolerance/imperfection.hpp"

namespace seamtakt {

namespace {

// What a fillet is larger than drawn is wasted wire, heat and distortion: common practice, no source.
constexpr double usual_excess_mm = 1, usual_excess_share = 0.25;

std::vector<LargestFillet> limits_of(const Seam& seam) {
  const double needed = throat_needed_mm(seam);
  std::vector<LargestFillet> limits;
  if (seam.leg_max_mm)
    limits.push_back({.rule = "fillet.leg.above-max",
                      .what = "Fillet leg"_word,
                      .source = "plan limit",
                      .is_leg = true,
                      .limit_mm = *seam.leg_max_mm});
  if (seam.throat_max_mm)
    limits.push_back({.rule = "fillet.throat.above-max",
                      .what = "Fillet throat"_word,
                      .source = "plan limit",
                      .limit_mm = *seam.throat_max_mm});
  if (const auto excess = excess_throat(seam, needed))
    limits.push_back({.rule = "fillet.throat.excess",
                      .what = "Fillet throat by quality level"_word,
                      .source = excess->source,
                      .limit_mm = needed + excess->excess_mm});
  const double more_gap = std::max(0.0, seam.gap_max_mm.value_or(seam.gap_mm) - seam.gap_mm);
  limits.push_back(
      {.rule = "fillet.throat.oversize",
       .what = Sentence("fillet.throat.usual"_key, {{"share", UnitValue{100 * usual_excess_share, "%"}},
                                                    {"least", UnitValue{usual_excess_mm, "mm"}}}),
       .source = "common practice, no source",
       .limit_mm = needed + std::max(usual_excess_mm, usual_excess_share * needed),
       .less_mm = fillet_throat_of_leg_mm(more_gap, seam.dihedral_deg),
       .is_stated = false});
  return limits;
}

/// What the limit allows the throat at the gap as drawn.
double as_throat_mm(const LargestFillet& limit, const Seam& seam) {
  if (limit.is_leg) return fillet_throat_of_leg_mm(limit.limit_mm, seam.dihedral_deg);
  return limit.limit_mm + limit.less_mm;
}

}  // namespace

double throat_needed_mm(const Seam& seam) {
  return seam.throat_mm ? *seam.throat_mm : fillet_throat_of_leg_mm(*seam.leg_mm, seam.dihedral_deg);
}

std::optional<ExcessThroat> excess_throat(const Seam& seam, double throat_needed_mm) {
  if (seam.quality.empty()) return std::nullopt;
  const double thinner = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  const ImperfectionJudgement judged = judge_imperfection("excess_throat", {seam.quality, thinner, false});
  if (judged.permission != Permission::limited) return std::nullopt;
  const bool is_recalled = judged.rule->basis == SourceBasis::recalled;
  return ExcessThroat{
      imperfection_limit_mm(*judged.rule, throat_needed_mm),
      is_recalled ? "ISO 5817:2014, Table 1, 5214 (recalled)" : "ISO 5817:2014, Table 1, 5214"};
}

std::optional<LargestFillet> largest_fillet(const Seam& seam,
                                            const std::function<bool(std::string_view)>& is_skipped) {
  if (seam.groove) return std::nullopt;
  std::optional<LargestFillet> least;
  for (LargestFillet& limit : limits_of(seam))
    if (!is_skipped(limit.rule) && (!least || as_throat_mm(limit, seam) < as_throat_mm(*least, seam)))
      least = std::move(limit);
  return least;
}

}  // namespace seamtakt
