#pragma once

#include <optional>

#include "base/sentences/sentence.hpp"
#include "formula/heat/cooling_time.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/pass_facts.hpp"
#include "plan/window/judged.hpp"

namespace seamtakt {

/// What a cooling time of a pass is computed for, beside its heat input.
struct CoolingCase {
  double thickness_mm = 0, start_C = 20, f2 = 1, f3 = 1;
};

/// t8/5 by EN 1011-2, annex D. heat_input_kJ_mm > 0.
template <class Real>
CoolingTime<Real> cooling_time(const Real& heat_input_kJ_mm, const CoolingCase& at) {
  return cooling_time<Real>(heat_input_kJ_mm, Real(at.thickness_mm), Real(at.start_C), Real(at.f2),
                            Real(at.f3));
}

/// The cases that a pass is judged in. "Hot" is the upper interpass temperature, where it is above the cold
/// one and below the formula's range.
struct CoolingCases {
  CoolingCase nominal;  ///< thinner plate, cold
  CoolingCase fastest;  ///< thicker plate, cold, low end of the shape factor's span
  CoolingCase slowest;  ///< thinner plate, hot, high end
};

/// `cold_C`: preheat, or the temperature that was logged before the pass. `upper_interpass_C`: empty where
/// none is stated, or where the logged temperature leaves no hotter case. The joint must be one that shape
/// factors are known for, and the seam must have its thicknesses.
CoolingCases cooling_cases(const Seam& seam, double cold_C, std::optional<double> upper_interpass_C);
/// As planned.
CoolingCases cooling_cases(const PassFacts& facts);

/// The upper interpass temperature of a schedule (degC); empty where none is stated.
std::optional<double> upper_interpass_C(const Schedule& schedule);

/// What a guarded decision keeps free between a cooling time and its limits (s).
struct CoolingGuard {
  double below_s = 0;  ///< from the time down to a lower limit
  double above_s = 0;  ///< from the time up to an upper one
};

/// How a limit of the cooling time is judged: its lower end on the fastest cooling, its upper end on the
/// slowest.
struct CoolingSide {
  std::optional<double> Interval::*bound;
  CoolingCase CoolingCases::*at;
  std::optional<double> PassEvaluation::*time_s;
  Word what;         ///< from the planned temperatures
  Word what_logged;  ///< from a logged one
  Judged judged;
  OpenLimit open;
  double CoolingGuard::*guard;

  /// This end of the limit alone.
  Interval of(const Interval& limit) const {
    Interval end;
    end.*bound = limit.*bound;
    return end;
  }
};
inline constexpr CoolingSide cooling_sides[] = {
    {&Interval::lower, &CoolingCases::fastest, &PassEvaluation::cooling_time_fastest_s,
     "Fastest cooling time t8/5 (cold, thicker plate)"_word,
     "Fastest cooling time t8/5 (from the logged temperature, thicker plate)"_word, Judged::cooling_fastest,
     OpenLimit::cooling_fastest, &CoolingGuard::below_s},
    {&Interval::upper, &CoolingCases::slowest, &PassEvaluation::cooling_time_slowest_s,
     "Slowest cooling time t8/5 (hot, thinner plate)"_word,
     "Slowest cooling time t8/5 (from the logged temperature, thinner plate)"_word, Judged::cooling_slowest,
     OpenLimit::cooling_slowest, &CoolingGuard::above_s},
};

}  // namespace seamtakt
