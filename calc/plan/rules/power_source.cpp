#include "base/units/units.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

// One arc alone: the source's duty over the whole shift is judged on the robot's timeline.
void judge_power_source(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.power_source || !facts.power_source->rated_current_A) return;
  const double rated = *facts.power_source->rated_current_A;
  const double duty = facts.power_source->rated_duty_pct.value_or(100);
  if (pass.current_A > rated)
    findings.push_back({rated_current_limit.rule, Severity::fail, facts.place(), pass.current_A, rated,
                        rated_current_limit.unit,
                        "Current of " + rounded_text(pass.current_A, 4) + " A is above the " +
                            rounded_text(rated, 4) + " A that " + facts.power_source->id + " is rated for.",
                        rated_current_limit.source});
  const double allowed_s = longest_arc_s(rated, duty, pass.current_A);
  const double longest_s = longest_run_mm(facts.seam) / facts.schedule.travel_speed_mm_s;
  if (longest_s > allowed_s)
    findings.push_back(
        {single_arc_limit.rule, Severity::fail, facts.place(), longest_s, allowed_s, single_arc_limit.unit,
         "One arc of " + rounded_text(longest_s, 4) + " s at " + rounded_text(pass.current_A, 4) +
             " A is longer than the " + rounded_text(allowed_s, 4) + " s that the duty cycle of " +
             facts.power_source->id + " allows in 10 min.",
         single_arc_limit.source});
}

}  // namespace seamtakt
