#include "plan/rules/acceptance.hpp"

#include <algorithm>
#include <array>

namespace seamtakt {

namespace {

constexpr std::array<std::string_view, 3> other_families = {"cycle.", "line.", "record."};

bool is_at(std::string_view where, std::string_view weldment) {
  return where.starts_with(weldment) && (where.size() == weldment.size() || where[weldment.size()] == '/');
}

}  // namespace

bool AcceptanceScope::covers(const Acceptance& acceptance) const {
  if (family_.empty())
    return std::none_of(other_families.begin(), other_families.end(),
                        [&](std::string_view family) { return acceptance.rule.starts_with(family); });
  return acceptance.rule.starts_with(family_) && is_at(acceptance.where, weldment_);
}

void apply_acceptances(const Plan& plan, const AcceptanceScope& scope, Findings& findings) {
  Findings vanished;
  for (const Acceptance& accepted : plan.accepted) {
    if (!scope.covers(accepted)) continue;
    bool met = false;
    for (Finding& finding : findings) {
      if (finding.rule != accepted.rule || finding.where != accepted.where) continue;
      met = true;
      finding.severity = Severity::note;
      finding.sentence = Sentence("finding.accepted"_key, {{"finding", std::move(finding.sentence)},
                                                           {"by", accepted.by},
                                                           {"date", accepted.date},
                                                           {"why", accepted.why}});
    }
    if (!met)
      vanished.push_back({"acceptance.without-finding",
                          Severity::note,
                          accepted.where,
                          {},
                          {},
                          "",
                          Sentence("acceptance.without-finding"_key, {{"rule", accepted.rule}}),
                          "plan limit"});
  }
  findings.insert(findings.end(), vanished.begin(), vanished.end());
}

}  // namespace seamtakt
