#include "plan/uncertainty/open_limits.hpp"

#include <algorithm>
#include <cmath>

#include "formula/tolerance/essential_variable.hpp"
#include "plan/evaluate/pass_uncertainty.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

/// What a quarter is taken of.
double extent_of_limit(const Interval& limit) {
  if (limit.lower && limit.upper) return *limit.upper - *limit.lower;
  return std::abs(limit.upper ? *limit.upper : limit.lower.value_or(0));
}

struct OpenName {
  OpenLimit limit;
  Word word;
};
constexpr OpenName open_names[] = {{OpenLimit::current, "current"_word},
                                   {OpenLimit::heat_input, "heat input"_word},
                                   {OpenLimit::cooling_fastest, "fastest cooling time"_word},
                                   {OpenLimit::cooling_slowest, "slowest cooling time"_word},
                                   {OpenLimit::qualified_heat_input, "qualified heat input"_word},
                                   {OpenLimit::qualified_current, "qualified current"_word}};

std::vector<Sentence> open_names_of(std::uint8_t limits) {
  std::vector<Sentence> said;
  for (const OpenName& name : open_names)
    if (limits & static_cast<std::uint8_t>(name.limit)) said.emplace_back(name.word);
  return said;
}

/// Of the heat inputs that a procedure test qualifies; empty where the test knows its wire feed.
std::optional<Interval> qualified_by_heat_alone(const PassFacts& facts) {
  const TestedWeld* const test = facts.index.parts_of(facts.schedule).iso_test;
  if (!test || test->wire_feed_speed_m_min) return std::nullopt;
  const auto range = qualified_heat_input(facts, *test);
  return range ? std::optional<Interval>(Interval{range->low, range->high}) : std::nullopt;
}

/// Of the currents that a test by AWS D1.1 qualifies, likewise.
std::optional<Interval> qualified_by_current_alone(const PassFacts& facts) {
  const TestedWeld* const test = facts.index.parts_of(facts.schedule).d1_1_test;
  if (!test || !test->current_A || test->wire_feed_speed_m_min) return std::nullopt;
  const auto allowed = allowed_change("aws-d1-1", "current_A");
  if (!allowed) return std::nullopt;
  return Interval{*test->current_A * (1 - allowed->decrease_pct / 100),
                  *test->current_A * (1 + allowed->increase_pct / 100)};
}

}  // namespace

bool is_left_open(const PassFacts& facts, std::optional<double> U, const Interval& limit) {
  if (!guarded_decision(facts.plan) || !U || !(limit.lower || limit.upper)) return false;
  return melting_law_uncertainty(facts.schedule, facts.wire) > 0 &&
         *U > most_of_limit * extent_of_limit(limit);
}

std::uint8_t open_limits(const PassFacts& facts, const PassEvaluation& pass) {
  if (!guarded_decision(facts.plan)) return 0;
  std::uint8_t open = 0;
  const auto look_at = [&](OpenLimit limit, std::optional<double> U, const std::optional<Interval>& at) {
    if (at && is_left_open(facts, U, *at))
      open = static_cast<std::uint8_t>(open | static_cast<std::uint8_t>(limit));
  };
  look_at(OpenLimit::qualified_heat_input, pass.U_heat_input_kJ_mm, qualified_by_heat_alone(facts));
  look_at(OpenLimit::qualified_current, pass.U_current_A, qualified_by_current_alone(facts));
  if (!facts.schedule.limits) return open;
  const ScheduleLimits& limits = *facts.schedule.limits;
  look_at(OpenLimit::current, pass.U_current_A, limits.current_A);
  look_at(OpenLimit::heat_input, pass.U_heat_input_kJ_mm, limits.heat_input_kJ_mm);
  if (!limits.cooling_time_s || !pass.cooling_time_s) return open;
  const CoolingCases cases = cooling_cases(facts);
  if (limits.cooling_time_s->lower)
    look_at(OpenLimit::cooling_fastest, U_cooling_time_s(facts, pass, cases.fastest), limits.cooling_time_s);
  if (limits.cooling_time_s->upper)
    look_at(OpenLimit::cooling_slowest, U_cooling_time_s(facts, pass, cases.slowest), limits.cooling_time_s);
  return open;
}

void OpenLimitTally::add(const PassFacts& facts, const PassEvaluation& pass) {
  if (pass.left_open == 0) return;
  add({1, pass.left_open, 100 * pass.U_current_A.value_or(0) / pass.current_A}, open_[facts.schedule.id]);
}

void OpenLimitTally::add(const Open& more, Open& to) {
  to.passes += more.passes;
  to.limits = static_cast<std::uint8_t>(to.limits | more.limits);
  to.U_current_pct = std::max(to.U_current_pct, more.U_current_pct);
}

void OpenLimitTally::add(const OpenLimitTally& other) {
  for (const auto& [schedule, open] : other.open_) add(open, open_[schedule]);
}

void OpenLimitTally::report(const Plan& plan, Findings& findings) const {
  for (const Schedule& schedule : plan.schedules) {
    const auto at = open_.find(schedule.id);
    if (at == open_.end()) continue;
    const Open& open = at->second;
    findings.push_back(
        {"schedule.current.to-measure",
         Severity::warn,
         schedule.id,
         open.U_current_pct,
         {},
         "%",
         Sentence("schedule.current.to-measure"_key, {{"schedule", schedule.id},
                                                      {"U", UnitValue{open.U_current_pct, "%", 3}},
                                                      {"passes", open.passes},
                                                      {"names", open_names_of(open.limits)},
                                                      {"share", UnitValue{100 * most_of_limit, "%", 3}}}),
         "common practice, no source"});
  }
}

}  // namespace seamtakt
