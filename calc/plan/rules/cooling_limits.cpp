#include <algorithm>

#include "plan/evaluate/pass_uncertainty.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

// A lower limit is judged on the fastest cooling (cold, thicker plate, low end of the span of the shape
// factor), an upper limit on the slowest (hot, thinner plate, high end).
void judge_cooling_time(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.schedule.limits || !facts.schedule.limits->cooling_time_s) return;
  if (!pass.cooling_time_s) return;  // no ferritic steel: the note on the metal says so
  const Interval& limit = *facts.schedule.limits->cooling_time_s;
  const bool guarded = guarded_decision(facts.plan);
  // Each is guarded by the uncertainty of its own: the slowest's is that of a longer time than the nominal.
  const auto U_of = [&](const CoolingCase& at) {
    return guarded ? U_cooling_time_s(facts, pass, at) : std::nullopt;
  };
  if (limit.lower)
    judge_interval("limit.cooling-time", "Fastest cooling time t8/5 (cold, thicker plate)"_word, "s",
                   *pass.cooling_time_fastest_s, U_of(fastest_cooling(facts)), {limit.lower, {}}, guarded,
                   facts, findings);
  if (limit.upper)
    judge_interval("limit.cooling-time", "Slowest cooling time t8/5 (hot, thinner plate)"_word, "s",
                   *pass.cooling_time_slowest_s, U_of(slowest_cooling(facts)), {{}, limit.upper}, guarded,
                   facts, findings);
}

void judge_hardness(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.schedule.limits || !facts.schedule.limits->hardness_HV || !pass.haz_hardness_HV) return;
  judge_interval("limit.hardness", "Estimated HAZ hardness (scatter +-56 HV)"_word, "HV", *pass.haz_hardness_HV,
                 {}, *facts.schedule.limits->hardness_HV, false, facts, findings);
}

}  // namespace seamtakt
