#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

// A rating belongs to its duty: at less duty the source gives more, up to what its plate states.
void judge_highest_current(const PassFacts& facts, const PowerSource& source, double current_A,
                           Findings& findings) {
  if (!source.max_current_A || current_A <= *source.max_current_A) return;
  findings.push_back(
      {max_current_limit.rule, Severity::fail, facts.place(), current_A, *source.max_current_A,
       max_current_limit.unit,
       Sentence("power-source.current.above-maximum"_key, {{"current", UnitValue{current_A, "A"}},
                                                           {"most", UnitValue{*source.max_current_A, "A"}},
                                                           {"source", source.id}}),
       max_current_limit.source});
}

}  // namespace

// One arc alone: the source's duty over the whole shift is judged on the robot's timeline.
void judge_power_source(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.power_source) return;
  judge_highest_current(facts, *facts.power_source, pass.current_A, findings);
  if (!facts.power_source->rated_current_A) return;
  const double rated = *facts.power_source->rated_current_A;
  const double duty = facts.power_source->rated_duty_pct.value_or(100);
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
