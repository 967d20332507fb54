#include "plan/rules/rules.hpp"

namespace seamtakt {

void judge_schedule_status(std::span<const Schedule* const> used, Findings& findings) {
  for (const Schedule* schedule : used) {
    if (schedule->status == "approved") continue;
    findings.push_back({"schedule.status.not-approved",
                        Severity::note,
                        schedule->id,
                        {},
                        {},
                        "",
                        "Schedule " + schedule->id + " revision " + std::to_string(schedule->revision) +
                            " is " + (schedule->status.empty() ? "without a status" : schedule->status) +
                            ", and seams use it.",
                        "ISO 15609-1"});
  }
}

// EN ISO 9606 and ISO 14732 let a qualification run on only while it is used every six months; the same habit
// is applied to a procedure's last use as a reminder.
void judge_qualification_dates(const Plan& plan, std::string_view date, Findings& findings) {
  if (date.empty()) return;
  for (const Qualification& qualification : plan.qualifications)
    if (!qualification.date.empty() && qualification.date > date)
      findings.push_back({"qualification.date.in-future",
                          Severity::warn,
                          qualification.id,
                          {},
                          {},
                          "",
                          "Qualification " + qualification.id + " is dated " + qualification.date +
                              ", after " + std::string(date) + ".",
                          "plan limit"});
    else if (!qualification.last_used.empty() && qualification.last_used > date)
      findings.push_back({"qualification.last-used.in-future",
                          Severity::warn,
                          qualification.id,
                          {},
                          {},
                          "",
                          "Qualification " + qualification.id + " was last used on " +
                              qualification.last_used + ", after " + std::string(date) + ".",
                          "plan limit"});
}

void judge_composition_basis(const Plan& plan, Findings& findings) {
  for (const BaseMetal& metal : plan.base_metals)
    if (metal.composition_basis != "certificate")
      findings.push_back(
          {"composition.basis.no-certificate",
           Severity::note,
           metal.id,
           {},
           {},
           "",
           "The composition of " + metal.id + " is " +
               (metal.composition_basis.empty() ? "of unstated basis" : metal.composition_basis) +
               ": carbon equivalents, preheat and hardness from it may lie far from the delivered plate's.",
           "common practice, no source"});
}

}  // namespace seamtakt
