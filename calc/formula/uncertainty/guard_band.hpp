#pragma once

#include <optional>

#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/uncertainty/special_functions.hpp"

namespace seamtakt {

/// A decision on a measured value that says how its uncertainty counts.
/// The guard band is the expanded uncertainty, w = U = 2 u (k = 2), subtracted from each tolerance limit.
/// Source: ilac-g8 (ILAC-G8:09/2019), 4.2.2, page 8; probability: jcgm-106 (JCGM 106:2012), 7.3 and 7.4.
/// Holds for a value whose errors are normally distributed, without prior knowledge of what is measured.

/// A limit that is empty isn't judged. Both are in the value's unit.
template <class Real>
struct Limits {
  std::optional<Real> lower, upper;
};

/// pass: inside the acceptance interval. fail: beyond a tolerance limit. undecided: inside the limits, but
/// nearer to one than the guard band.
enum class GuardDecision { pass, fail, undecided };

inline const char* to_string(GuardDecision decision) {
  switch (decision) {
    case GuardDecision::pass:
      return "pass";
    case GuardDecision::fail:
      return "fail";
    case GuardDecision::undecided:
      return "undecided";
  }
  return "";
}

inline constexpr double coverage_factor = 2;

/// Acceptance interval: the limits reduced by the guard band. Where the band is wider than half the distance
/// between the limits its lower end is above its upper end: nothing can be accepted.
/// u: standard uncertainty, >= 0, in the limits' unit.
template <class Real>
Limits<Real> acceptance_interval(const Real& u, const Limits<Real>& tolerance) {
  const Real guard_band = u * coverage_factor;
  Limits<Real> acceptance;
  if (tolerance.lower) acceptance.lower = Real(*tolerance.lower + guard_band);
  if (tolerance.upper) acceptance.upper = Real(*tolerance.upper - guard_band);
  return acceptance;
}

/// A value on a limit is inside it.
inline GuardDecision decision_with_guard_band(double value, double u, const Limits<double>& tolerance) {
  if ((tolerance.lower && value < *tolerance.lower) || (tolerance.upper && value > *tolerance.upper))
    return GuardDecision::fail;
  const Limits<double> acceptance = acceptance_interval(u, tolerance);
  if ((acceptance.lower && value < *acceptance.lower) || (acceptance.upper && value > *acceptance.upper))
    return GuardDecision::undecided;
  return GuardDecision::pass;
}

/// Probability that the true value is inside the limits. u > 0; a side without limit counts as infinitely
/// far.
template <class Real>
Real probability_of_conformity(const Real& value, const Real& u, const Limits<Real>& tolerance) {
  if (!tolerance.lower && !tolerance.upper) return Real(1.0);
  if (!tolerance.lower) return normal_probability(Real((*tolerance.upper - value) / u));
  if (!tolerance.upper) return normal_probability(Real((value - *tolerance.lower) / u));
  const Real above_lower = (value - *tolerance.lower) / u;
  const Real below_upper = (*tolerance.upper - value) / u;
  // The difference of the two smaller probabilities, so that a small result keeps its digits.
  if (value_of(above_lower) > value_of(below_upper))
    return Real(normal_probability(below_upper) - normal_probability(Real(-above_lower)));
  return Real(normal_probability(above_lower) - normal_probability(Real(-below_upper)));
}

inline constexpr FormulaNote acceptance_lower_note{"guard-band.acceptance-lower",
                                                   "acceptance",
                                                   "AL = lower + 2*u",
                                                   "ilac-g8",
                                                   "4.2.2, page 8",
                                                   "guard band equal to the expanded uncertainty, k = 2",
                                                   "exact for its definition",
                                                   SourceBasis::part_read};

inline constexpr FormulaNote acceptance_upper_note{"guard-band.acceptance-upper",
                                                   "acceptance",
                                                   "AU = upper - 2*u",
                                                   "ilac-g8",
                                                   "4.2.2, page 8",
                                                   "guard band equal to the expanded uncertainty, k = 2",
                                                   "exact for its definition",
                                                   SourceBasis::part_read};

inline constexpr FormulaNote conformity_note{
    "guard-band.probability",
    "probability_of_conformity",
    "p = Phi((upper - y)/u) - Phi((lower - y)/u)",
    "jcgm-106",
    "7.3, 7.4",
    "normally distributed errors, no prior knowledge; a side without limit counts as infinitely far",
    "exact for its assumptions",
    SourceBasis::part_read};

}  // namespace seamtakt
