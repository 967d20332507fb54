#include "plan/evaluate/pass_uncertainty.hpp"
#include "plan/limited_quantities.hpp"
#include "plan/rules/rules.hpp"
#include "plan/uncertainty/open_limits.hpp"

namespace seamtakt {

void judge_cooling_time(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.schedule.limits || !facts.schedule.limits->cooling_time_s) return;
  if (!pass.cooling_time_s) return;  // no ferritic steel: the note on the metal says so
  constexpr const LimitedQuantity& quantity = limited_quantity(&ScheduleLimits::cooling_time_s);
  const Interval& limit = *facts.schedule.limits->cooling_time_s;
  const bool guarded = guarded_decision(facts.plan);
  for (const CoolingSide& side : cooling_sides) {
    if (!(limit.*side.bound) || is_open(pass, side.open)) continue;
    // Each is guarded by the uncertainty of its own: the slowest's is that of a longer time than the nominal.
    const auto guard = guarded ? cooling_guard(facts, pass, cooling_cases(facts).*side.at) : std::nullopt;
    const auto U = guard ? std::optional<double>((*guard).*side.guard) : std::nullopt;
    judge_interval(quantity.pass_rule, side.what, quantity.unit, *(pass.*side.time_s), U, side.of(limit),
                   guarded, facts, findings);
  }
}

}  // namespace seamtakt
