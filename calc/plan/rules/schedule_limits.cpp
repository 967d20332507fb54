#include "plan/limited_quantities.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

void judge_schedule_limits(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.schedule.limits) return;
  const ScheduleLimits& limits = *facts.schedule.limits;
  const bool guarded = guarded_decision(facts.plan);
  // What has an uncertainty is listed last.
  for (const bool is_uncertain : {false, true})
    for (const LimitedQuantity& each : limited_quantities) {
      const auto& limit = limits.*each.limit;
      if (!limit || !each.has_plain_rule() || (each.uncertainty != nullptr) != is_uncertain) continue;
      judge_interval(each.pass_rule, each.label_in_plan(), each.unit, each.planned(facts.schedule, pass),
                     is_uncertain ? pass.*each.uncertainty : std::nullopt, *limit, guarded, facts, findings);
    }
}

}  // namespace seamtakt
