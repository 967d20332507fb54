#include "plan/rules/rules.hpp"

namespace seamtakt {

bool guarded_decision(const Plan& plan) {
  return plan.measuring && plan.measuring->decision == "guarded";
}

void judge_interval(const char* rule, Word what, const char* unit, double value, std::optional<double> U,
                    const Interval& limit, bool guarded, const std::string& place, Findings& findings,
                    const char* source) {
  const auto add = [&](const char* suffix, Severity severity, double bound, SentenceKey key) {
    findings.push_back(
        {std::string(rule) + suffix, severity, place, value, bound, unit,
         Sentence(key,
                  {{"what", what}, {"value", UnitValue{value, unit}}, {"limit", UnitValue{bound, unit}}}),
         source});
  };
  const double guard = guarded && U ? *U : 0;
  if (limit.lower && value < *limit.lower)
    add(".low", Severity::fail, *limit.lower, "limit.below"_key);
  else if (limit.upper && value > *limit.upper)
    add(".high", Severity::fail, *limit.upper, "limit.above"_key);
  else if (limit.lower && value < *limit.lower + guard)
    add(".guard-band", Severity::warn, *limit.lower, "limit.near-lower"_key);
  else if (limit.upper && value > *limit.upper - guard)
    add(".guard-band", Severity::warn, *limit.upper, "limit.near-upper"_key);
}

}  // namespace seamtakt
