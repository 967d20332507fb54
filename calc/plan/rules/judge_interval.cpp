#include "base/units/units.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

std::string sentence(const char* what, double value, const char* unit, const char* relation, double limit) {
  std::string text = std::string(what) + " is " + rounded_text(value, 4);
  if (*unit) text += std::string(" ") + unit;
  text += std::string(", ") + relation + " " + rounded_text(limit, 4);
  if (*unit) text += std::string(" ") + unit;
  return text + ".";
}

}  // namespace

bool guarded_decision(const Plan& plan) {
  return plan.measuring && plan.measuring->decision == "guarded";
}

void judge_interval(const char* rule, const char* what, const char* unit, double value,
                    std::optional<double> U, const Interval& limit, bool guarded, const std::string& place,
                    Findings& findings, const char* source) {
  const auto add = [&](const char* suffix, Severity severity, double bound, const char* relation) {
    findings.push_back({std::string(rule) + suffix, severity, place, value, bound, unit,
                        sentence(what, value, unit, relation, bound), source});
  };
  const double guard = guarded && U ? *U : 0;
  if (limit.lower && value < *limit.lower)
    add(".low", Severity::fail, *limit.lower, "below the lower limit of");
  else if (limit.upper && value > *limit.upper)
    add(".high", Severity::fail, *limit.upper, "above the upper limit of");
  else if (limit.lower && value < *limit.lower + guard)
    add(".guard-band", Severity::warn, *limit.lower, "within its uncertainty of the lower limit of");
  else if (limit.upper && value > *limit.upper - guard)
    add(".guard-band", Severity::warn, *limit.upper, "within its uncertainty of the upper limit of");
}

}  // namespace seamtakt
