#pragma once

#include <optional>

#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

/// What a cooling time of a pass is computed for, beside its heat input.
struct CoolingCase {
  double thickness_mm = 0, start_C = 20, f2 = 1, f3 = 1;
};
CoolingCase nominal_cooling(const PassFacts& facts);  ///< thinner plate, as preheated
CoolingCase fastest_cooling(const PassFacts& facts);  ///< thicker plate, cold, low end of the shape factor
CoolingCase slowest_cooling(const PassFacts& facts);  ///< thinner plate, hot, high end

/// Expanded uncertainties (k = 2, jcgm-100, 5.1.2) from what current, voltage and travel speed are measured
/// with; empty where the plan states no instrument for any of them. That of a cooling time belongs to that
/// time alone: it grows with the time itself, and with its regime (Q in 3D, Q^2 in 2D).
std::optional<double> U_heat_input_kJ_mm(const PassFacts& facts, const PassEvaluation& pass);
std::optional<double> U_cooling_time_s(const PassFacts& facts, const PassEvaluation& pass,
                                       const CoolingCase& at);

}  // namespace seamtakt
