#include "plan/qualification_basis.hpp"

#include <set>
#include <string_view>

#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

Finding said_of(const Qualification& qualification, Severity severity, std::string text, const char* source) {
  return {"qualification.basis", severity, qualification.id, {}, {}, "", std::move(text), source};
}

}  // namespace

// "No finding" must not mean "nothing was judged": each qualification that a schedule rests on and that isn't
// judged is said.
void judge_qualification_basis(const Plan& plan, Findings& findings) {
  std::set<std::string_view> used;
  for (const Schedule& schedule : plan.schedules)
    if (!schedule.qualification.empty()) used.insert(schedule.qualification);
  for (const Qualification& qualification : plan.qualifications) {
    if (!used.contains(qualification.id)) continue;
    const std::string& basis = qualification.basis;
    const std::string begin = "Qualification " + qualification.id;
    switch (qualification_route(basis)) {
      case QualificationRoute::judged:
        if (!qualification.tested)
          findings.push_back(said_of(qualification, Severity::warn,
                                     begin + " isn't judged: it says nothing of what was tested.",
                                     "ISO 15614-1:2017, level 2 (recalled)"));
        break;
      case QualificationRoute::known:
        findings.push_back(
            said_of(qualification, Severity::note,
                    begin + " by " + basis +
                        " isn't judged: whether execution class and grade admit that route, and its ranges.",
                    basis.find("ISO") != std::string::npos ? "EN 1090-2, 7.4.1 (recalled)"
                                                           : "AWS D1.1, prequalified procedures (recalled)"));
        break;
      case QualificationRoute::other:
        findings.push_back(said_of(qualification, Severity::warn,
                                   begin + (basis.empty() ? " isn't judged: it states no basis."
                                                          : " isn't judged: the ranges of its basis, " +
                                                                basis + ", aren't known here."),
                                   "common practice, no source"));
    }
  }
}

}  // namespace seamtakt
