#include "plan/rules/severity.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

Severity severity_named(const std::string& name) {
  if (name == "fail") return Severity::fail;
  return name == "warn" ? Severity::warn : Severity::note;
}

}  // namespace

void apply_severities(const Plan& plan, Findings& findings) {
  if (!plan.severity) return;
  for (Finding& finding : findings) {
    const auto* const rule =
        std::find_if(std::begin(recommending_rules), std::end(recommending_rules),
                     [&](const RecommendingRule& each) { return finding.rule == each.rule; });
    if (rule == std::end(recommending_rules)) continue;
    if (const std::string& chosen = *plan.severity.*rule->chosen; !chosen.empty())
      finding.severity = severity_named(chosen);
  }
}

}  // namespace seamtakt
