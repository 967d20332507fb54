#include "plan/limited_quantities.hpp"
#include "plan/rules/rules.hpp"
#include "plan/uncertainty/open_limits.hpp"

namespace seamtakt {

namespace {

/// The heat input rests on the others and is listed last.
bool is_last(const LimitedQuantity& quantity) {
  return quantity.limit == &ScheduleLimits::heat_input_kJ_mm;
}

bool is_unjudged(const LimitedQuantity& quantity, const PassEvaluation& pass) {
  if (quantity.limit == &ScheduleLimits::current_A) return is_open(pass, OpenLimit::current);
  return is_last(quantity) && is_open(pass, OpenLimit::heat_input);
}

}  // namespace

void judge_schedule_limits(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.schedule.limits) return;
  const ScheduleLimits& limits = *facts.schedule.limits;
  const bool guarded = guarded_decision(facts.plan);
  for (const bool last : {false, true})
    for (const LimitedQuantity& each : limited_quantities) {
      const auto& limit = limits.*each.limit;
      if (!limit || !each.has_plain_rule() || is_last(each) != last || is_unjudged(each, pass)) continue;
      judge_interval(each.pass_rule, each.label_in_plan(), each.unit, each.planned(facts.schedule, pass),
                     each.uncertainty ? pass.*each.uncertainty : std::nullopt, *limit, guarded, facts,
                     findings);
    }
}

}  // namespace seamtakt
