#include <map>

#include "plan/approval.hpp"
#include "plan/plan_index.hpp"
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

std::optional<Severity> severity_by_code(const Plan& plan, std::string_view code, Severity under_the_code) {
  if (plan.code.empty()) return Severity::note;
  if (plan.code != code) return std::nullopt;
  return under_the_code;
}

void judge_schedule_status(std::span<const Schedule* const> used, Findings& findings) {
  for (const Schedule* schedule : used) {
    if (schedule->status == "approved") continue;
    findings.push_back({"schedule.status.not-approved",
                        Severity::note,
                        schedule->id,
                        {},
                        {},
                        "",
                        Sentence("schedule.status.not-approved"_key, {{"schedule", schedule->id},
                                                                      {"revision", schedule->revision},
                                                                      {"status", status_word(*schedule)}}),
                        "ISO 15609-1"});
  }
}

// A program that knows the locks refuses such an edit: the file was changed by another way.
void judge_approved_changes(const Plan& plan, Findings& findings) {
  for (const Schedule& schedule : plan.schedules)
    if (is_changed_since_approval(plan, schedule))
      findings.push_back({"plan.approved.changed",
                          Severity::fail,
                          schedule.id,
                          {},
                          {},
                          "",
                          Sentence("plan.approved.changed"_key,
                                   {{"schedule", schedule.id}, {"revision", schedule.revision}}),
                          "common practice, no source"});
}

// EN ISO 9606 and ISO 14732 let a qualification run on only while it is used every six months; the same habit
// is applied to a procedure's last use as a reminder.
void judge_qualification_dates(const Plan& plan, std::string_view date, Findings& findings) {
  if (date.empty()) return;
  for (const Qualification& qualification : plan.qualifications)
    if (!qualification.date.empty() && qualification.date > date)
      findings.push_back(
          {"qualification.date.in-future",
           Severity::warn,
           qualification.id,
           {},
           {},
           "",
           Sentence("qualification.date.in-future"_key,
                    {{"qualification", qualification.id}, {"date", qualification.date}, {"today", date}}),
           "plan limit"});
    else if (!qualification.last_used.empty() && qualification.last_used > date)
      findings.push_back(
          {"qualification.last-used.in-future",
           Severity::warn,
           qualification.id,
           {},
           {},
           "",
           Sentence(
               "qualification.last-used.in-future"_key,
               {{"qualification", qualification.id}, {"date", qualification.last_used}, {"today", date}}),
           "plan limit"});
}

void judge_composition_basis(const Plan& plan, Findings& findings) {
  for (const BaseMetal& metal : plan.base_metals)
    if (metal.composition_basis != "certificate")
      findings.push_back({"composition.basis.no-certificate",
                          Severity::note,
                          metal.id,
                          {},
                          {},
                          "",
                          Sentence("composition.basis.no-certificate"_key,
                                   {{"material", metal.id}, {"basis", basis_word(metal)}}),
                          "common practice, no source"});
}

// A log tells its passes by these numbers: one too few or one twice gives a record to the wrong pass.
void judge_job_numbers(const Plan& plan, Findings& findings) {
  constexpr const char* source = "common practice, no source";
  for (const Weldment& weldment : plan.weldments) {
    std::map<std::string_view, std::string> first_place;
    for (const Seam& seam : weldment.seams) {
      const std::size_t jobs = seam.jobs.size(), passes = seam.schedules.size();
      if (jobs > 0 && jobs != passes)
        findings.push_back({"seam.jobs.count", Severity::warn, seam_place(weldment.id, seam.id),
                            static_cast<double>(jobs), static_cast<double>(passes), "",
                            Sentence("seam.jobs.count"_key, {{"jobs", jobs}, {"passes", passes}}), source});
      for (std::size_t i = 0; i < jobs && i < passes; ++i) {
        const std::string place = pass_place(weldment.id, seam.id, static_cast<int>(i) + 1);
        const auto [first, is_new] = first_place.emplace(seam.jobs[i], place);
        if (is_new) continue;
        findings.push_back(
            {"seam.jobs.repeated", Severity::warn, place, std::nullopt, std::nullopt, "",
             Sentence("seam.jobs.repeated"_key, {{"job", seam.jobs[i]}, {"place", first->second}}), source});
      }
    }
  }
}

}  // namespace seamtakt
