#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

/// A limit of a schedule with the value of the pass that it judges.
struct LimitedValue {
  std::optional<Interval> ScheduleLimits::*limit;
  const char* rule;
  Word what;
  const char* unit;
  double (*value)(const PassFacts&, const PassEvaluation&);
};

const LimitedValue limited_values[] = {
    {&ScheduleLimits::current_A, "limit.current", "Current"_word, "A",
     [](const PassFacts&, const PassEvaluation& pass) { return pass.current_A; }},
    {&ScheduleLimits::voltage_V, "limit.voltage", "Arc voltage"_word, "V",
     [](const PassFacts&, const PassEvaluation& pass) { return pass.voltage_V; }},
    {&ScheduleLimits::wire_feed_speed_m_min, "limit.wire-feed-speed", "Wire feed speed"_word, "m/min",
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.wire_feed_speed_m_min; }},
    {&ScheduleLimits::travel_speed_mm_s, "limit.travel-speed", "Travel speed"_word, "mm/s",
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.travel_speed_mm_s; }},
    {&ScheduleLimits::gas_flow_l_min, "limit.gas-flow", "Gas flow"_word, "l/min",
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.gas_flow_l_min; }},
    {&ScheduleLimits::interpass_C, "limit.preheat", "Preheat"_word, "C",
     [](const PassFacts& facts, const PassEvaluation&) { return facts.schedule.preheat_C; }},
};

}  // namespace

void judge_schedule_limits(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.schedule.limits) return;
  const ScheduleLimits& limits = *facts.schedule.limits;
  const bool guarded = guarded_decision(facts.plan);
  for (const LimitedValue& each : limited_values)
    if (const auto& limit = limits.*each.limit)
      judge_interval(each.rule, each.what, each.unit, each.value(facts, pass), {}, *limit, guarded, facts,
                     findings);
  if (limits.heat_input_kJ_mm)
    judge_interval("limit.heat-input", "Heat input"_word, "kJ/mm", pass.heat_input_kJ_mm, pass.U_heat_input_kJ_mm,
                   *limits.heat_input_kJ_mm, guarded, facts, findings);
}

}  // namespace seamtakt
