#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"
#include "plan/uncertainty/open_limits.hpp"

namespace seamtakt {

namespace {

bool has_size(const Seam& seam) {
  return seam.groove || seam.leg_mm || seam.throat_mm;
}

bool has_heat_limit(const Schedule& schedule, const PassEvaluation& pass) {
  if (!schedule.limits) return false;
  if (schedule.limits->heat_input_kJ_mm && !is_open(pass, OpenLimit::heat_input)) return true;
  const auto& cooling = schedule.limits->cooling_time_s;
  if (!cooling || !pass.cooling_time_s) return false;
  const bool is_none_open =
      !is_open(pass, OpenLimit::cooling_fastest) && !is_open(pass, OpenLimit::cooling_slowest);
  return is_none_open || (cooling->lower && !is_open(pass, OpenLimit::cooling_fastest)) ||
         (cooling->upper && !is_open(pass, OpenLimit::cooling_slowest));
}

bool has_position(const Schedule& schedule, const Seam& seam) {
  return schedule.use && !schedule.use->positions.empty() && !seam.position.empty();
}

}  // namespace

std::uint8_t judged_by(const PassFacts& facts, const PassEvaluation& pass) {
  std::uint8_t bits = 0;
  const auto add = [&](JudgedBy by, bool is_judged) {
    if (is_judged) bits = static_cast<std::uint8_t>(bits | static_cast<std::uint8_t>(by));
  };
  add(JudgedBy::size, has_size(facts.seam));
  add(JudgedBy::heat, has_heat_limit(facts.schedule, pass));
  add(JudgedBy::position, has_position(facts.schedule, facts.seam));
  add(JudgedBy::qualification, is_judged_by_test(facts));
  return bits;
}

}  // namespace seamtakt
