#pragma once

#include <limits>
#include <optional>

#include "base/sentences/sentence.hpp"
#include "formula/tolerance/qualification_range.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/pass_facts.hpp"
#include "plan/window/judged.hpp"

namespace seamtakt {

/// Limits by which rules judge a pass or a seam, each written once: the rule reports planned values beyond
/// it, and it bounds the operating window. (A schedule's own limits are in limited_quantities.hpp, those of a
/// fillet's excess in largest_fillet.hpp.)
struct RuleLimit {
  const char* rule;
  Word what;
  const char *key, *unit;  ///< of the value that is judged
  const char* source;
  Judged judged;
};

inline constexpr RuleLimit preheat_limit{"preheat.below-needed",
                                         "Preheat needed (method B)"_word,
                                         "preheat_needed_C",
                                         "C",
                                         "EN 1011-2:2001, C.3 (method B)",
                                         Judged::preheat};

/// What the plate has at the least when it is welded (degC): the preheat, or the shop's temperature.
double preheat_given_C(const Schedule& schedule);

inline constexpr RuleLimit max_current_limit{
    "power-source.current.above-maximum",   "Current"_word, "current_A", "A",
    "IEC 60974-1, rating plate (recalled)", Judged::current};

inline constexpr RuleLimit single_arc_limit{"power-source.duty.single-arc",
                                            "Longest single arc"_word,
                                            "arc_time_s",
                                            "s",
                                            "power-source makers' duty-cycle rule I2 = I1*sqrt(D1/D2)",
                                            Judged::single_arc};

/// The period that a duty cycle counts in.
inline constexpr double duty_period_s = 600;

/// How long an arc may burn within that period (s); infinity where the source needs no pause at that current.
double longest_arc_s(double rated_current_A, double rated_duty_pct, double current_A);

/// Length of a seam's runs, which are equally long (mm); 0 where the seam has none.
double longest_run_mm(const Seam& seam);

inline constexpr RuleLimit qualified_heat_limit{"qualification.heat-input",
                                                "Heat input, as qualified"_word,
                                                "heat_input_kJ_mm",
                                                "kJ/mm",
                                                "ISO 15614-1:2017, level 2 (recalled)",
                                                Judged::heat_input};

/// The heat inputs that it qualifies (kJ/mm); empty where the test states none, or the standard no limit.
std::optional<QualifiedRange<double>> qualified_heat_input(const PassFacts& facts, const TestedWeld& tested);

/// The hardness measured in a pass's procedure test (HV) where it is above the schedule's limit: whatever the
/// pass, as a colder one is harder still. Empty where it isn't, or nothing was measured or limited.
std::optional<double> measured_above_limit_HV(const PassFacts& facts);
/// The least heat input (kJ/mm) from which a measured hardness that keeps the upper limit holds for the pass:
/// that of the test weld. Empty where there is none, or the pass may cool faster in spite of its heat (a
/// thicker plate than the tested one, less preheat, as far as the test states them).
std::optional<double> measured_hardness_from_kJ_mm(const PassFacts& facts);
/// Whether it holds for a pass with this heat input.
bool measured_hardness_covers(const PassFacts& facts, double heat_input_kJ_mm);

/// Below this share of the size asked for a difference is rounding of the figures and not an undersize.
inline constexpr double size_tolerance = 1e-9;

/// The drawing's requirements for a seam's size, and the result of the passes together.
struct SizeLimit {
  const RuleLimit& limit;
  double needed, obtained;  ///< obtained: after `less`
  double less = 0;          ///< what the largest gap takes off
  std::optional<double> U;  ///< expanded, of the obtained size

  bool is_undersize() const { return obtained < needed * (1 - size_tolerance); }
};

inline constexpr RuleLimit leg_limit{"fillet.leg.undersize", "Fillet leg"_word, "leg_mm", "mm",
                                     "plan limit",           Judged::leg};
inline constexpr RuleLimit leg_at_gap_limit{"fillet.leg.undersize-at-gap-max",
                                            "Fillet leg at the largest gap"_word,
                                            "leg_mm",
                                            "mm",
                                            "plan limit",
                                            Judged::leg};
inline constexpr RuleLimit throat_limit{
    "fillet.throat.undersize", "Fillet throat"_word, "throat_mm", "mm", "plan limit", Judged::throat};
inline constexpr RuleLimit throat_at_gap_limit{"fillet.throat.undersize-at-gap-max",
                                               "Fillet throat at the largest gap"_word,
                                               "throat_mm",
                                               "mm",
                                               "plan limit",
                                               Judged::throat};
inline constexpr RuleLimit groove_limit{
    "groove.area.underfilled", "Area of all passes"_word, "area_mm2", "mm2", "plan limit", Judged::area};

/// By how much the largest gap that the plan allows is wider than the gap as drawn (mm).
double more_gap_mm(const Seam& seam);
/// Throat over leg of a fillet with equal legs.
double throat_per_leg(const Seam& seam);

/// Calls visit(SizeLimit) for each limit that the seam's drawing states.
template <class Visit>
void each_size_limit(const Seam& seam, const SeamEvaluation& figures, const Visit& visit) {
  if (seam.groove) {
    visit(SizeLimit{groove_limit, figures.area_needed_mm2, figures.area_mm2, 0, {}});
    return;
  }
  if (!figures.leg_mm) return;
  // The same seam at the largest gap: the gap is deducted from the leg.
  const double more_gap = more_gap_mm(seam);
  if (seam.leg_mm) {
    visit(SizeLimit{leg_limit, *seam.leg_mm, *figures.leg_mm, 0, figures.U_leg_mm});
    if (more_gap > 0)
      visit(SizeLimit{leg_at_gap_limit, *seam.leg_mm, *figures.leg_mm - more_gap, more_gap, {}});
  }
  if (seam.throat_mm) {
    visit(SizeLimit{throat_limit, *seam.throat_mm, *figures.throat_mm, 0, {}});
    const double less = more_gap * throat_per_leg(seam);
    if (more_gap > 0)
      visit(SizeLimit{throat_at_gap_limit, *seam.throat_mm, *figures.throat_mm - less, less, {}});
  }
}

}  // namespace seamtakt
