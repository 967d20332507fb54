#include "plan/qualification_basis.hpp"

#include <set>
#include <string_view>

#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

Finding said_of(const Qualification& qualification, Severity severity, SentenceKey key, const char* source) {
  std::vector<Argument> arguments{{"qualification", qualification.id}};
  if (!qualification.basis.empty()) arguments.emplace_back("basis", qualification.basis);
  return {"qualification.basis",
          severity,
          qualification.id,
          {},
          {},
          "",
          Sentence(key, std::move(arguments)),
          source};
}

}  // namespace

// "No finding" must not mean "nothing was judged": each qualification of a schedule that isn't judged is
// reported.
void judge_qualification_basis(const Plan& plan, Findings& findings) {
  std::set<std::string_view> used;
  for (const Schedule& schedule : plan.schedules)
    if (!schedule.qualification.empty()) used.insert(schedule.qualification);
  for (const Qualification& qualification : plan.qualifications) {
    if (!used.contains(qualification.id)) continue;
    const std::string& basis = qualification.basis;
    switch (qualification_route(basis)) {
      case QualificationRoute::judged:
        if (!qualification.tested)
          findings.push_back(said_of(qualification, Severity::warn, "qualification.basis.not-tested"_key,
                                     "ISO 15614-1:2017, level 2 (recalled)"));
        break;
      case QualificationRoute::d1_1:
        if (!qualification.tested || !states_essential_settings(*qualification.tested))
          findings.push_back(said_of(qualification, Severity::warn, "qualification.basis.not-tested"_key,
                                     "AWS D1.1, essential variables of GMAW and FCAW (recalled)"));
        break;
      case QualificationRoute::known:
        findings.push_back(said_of(qualification, Severity::note, "qualification.basis.other-route"_key,
                                   "EN 1090-2, 7.4.1 (recalled)"));
        break;
      case QualificationRoute::prequalified:
        findings.push_back(said_of(qualification, Severity::note, "qualification.basis.other-route"_key,
                                   "AWS D1.1, prequalified procedures (recalled)"));
        break;
      case QualificationRoute::other:
        findings.push_back(
            said_of(qualification, Severity::warn,
                    basis.empty() ? "qualification.basis.none"_key : "qualification.basis.unknown"_key,
                    "common practice, no source"));
    }
  }
}

}  // namespace seamtakt
