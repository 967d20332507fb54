#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

// One arc alone: the source's duty over the whole shift is judged on the robot's timeline.
void judge_power_source(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.power_source || !facts.power_source->rated_current_A) return;
  const double rated = *facts.power_source->rated_current_A;
  const double duty = facts.power_source->rated_duty_pct.value_or(100);
  if (pass.current_A > rated)
    findings.push_back(
        {rated_current_limit.rule, Severity::fail, facts.place(), pass.current_A, rated,
         rated_current_limit.unit,
         Sentence("power-source.current.above-rating"_key, {{"current", UnitValue{pass.current_A, "A"}},
                                                            {"rated", UnitValue{rated, "A"}},
                                                            {"source", facts.power_source->id}}),
         rated_current_limit.source});
  const double allowed_s = longest_arc_s(rated, duty, pass.current_A);
  const double longest_s = longest_run_mm(facts.seam) / facts.schedule.travel_speed_mm_s;
  if (longest_s > allowed_s)
    findings.push_back(
        {single_arc_limit.rule, Severity::fail, facts.place(), longest_s, allowed_s, single_arc_limit.unit,
         Sentence("power-source.duty.single-arc"_key, {{"arc", UnitValue{longest_s, "s"}},
                                                       {"current", UnitValue{pass.current_A, "A"}},
                                                       {"allowed", UnitValue{allowed_s, "s"}},
                                                       {"source", facts.power_source->id},
                                                       {"period", UnitValue{duty_period_s / 60, "min"}}}),
         single_arc_limit.source});
}

}  // namespace seamtakt
