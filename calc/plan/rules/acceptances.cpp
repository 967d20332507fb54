#include <algorithm>

#include "plan/rules/rules.hpp"

namespace seamtakt {

void apply_acceptances(const Plan& plan, Findings& findings) {
  Findings vanished;
  for (const Acceptance& accepted : plan.accepted) {
    bool met = false;
    for (Finding& finding : findings) {
      if (finding.rule != accepted.rule || finding.where != accepted.where) continue;
      met = true;
      finding.severity = Severity::note;
      finding.text += " Accepted by " + accepted.by + " on " + accepted.date + ": " + accepted.why;
    }
    if (!met)
      vanished.push_back({"acceptance.without-finding", Severity::note, accepted.where, {}, {}, "",
                          "The accepted finding " + accepted.rule + " isn't there any more; drop its acceptance.",
                          "plan limit"});
  }
  findings.insert(findings.end(), vanished.begin(), vanished.end());
}

}  // namespace seamtakt
