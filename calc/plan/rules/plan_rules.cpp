#include <set>
#include <utility>

#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

Word status_word(const Schedule& schedule) {
  if (schedule.status.empty()) return "without a status"_word;
  return schedule.status == "reviewed" ? "reviewed"_word : "draft"_word;
}

Word basis_word(const BaseMetal& metal) {
  if (metal.composition_basis.empty()) return "of unstated basis"_word;
  return metal.composition_basis == "typical" ? "typical"_word : "standard-maximum"_word;
}

}  // namespace

void judge_schedule_status(const Plan& plan, const PlanIndex& index, Findings& findings) {
  std::set<std::string_view> told;
  std::string_view last;  // seam after seam mostly has the same
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (const std::string& id : seam.schedules) {
        if (id == std::exchange(last, id)) continue;
        const Schedule* schedule = index.schedule(id);
        if (!schedule || schedule->status == "approved" || !told.insert(schedule->id).second) continue;
        findings.push_back({"schedule.status.not-approved",
                            Severity::note,
                            schedule->id,
                            {},
                            {},
                            "",
                            Sentence("schedule.status.not-approved"_key,
                                     {{"schedule", schedule->id},
                                      {"revision", schedule->revision},
                                      {"status", status_word(*schedule)}}),
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
                          Sentence("qualification.date.in-future"_key, {{"qualification", qualification.id},
                                                                        {"date", qualification.date},
                                                                        {"today", date}}),
                          "plan limit"});
    else if (!qualification.last_used.empty() && qualification.last_used > date)
      findings.push_back({"qualification.last-used.in-future",
                          Severity::warn,
                          qualification.id,
                          {},
                          {},
                          "",
                          Sentence("qualification.last-used.in-future"_key,
                                   {{"qualification", qualification.id},
                                    {"date", qualification.last_used},
                                    {"today", date}}),
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
           Sentence("composition.basis.no-certificate"_key,
                    {{"material", metal.id}, {"basis", basis_word(metal)}}),
           "common practice, no source"});
}

}  // namespace seamtakt
