#include "records/keep/effective_revision.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <stdexcept>

#include "base/json/json_document.hpp"
#include "ledger/body/canonical_json.hpp"
#include "plan/approval.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/plan_file.hpp"
#include "records/judge/completeness.hpp"
#include "records/keep/record_changes.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

constexpr const char* in_force_rule = "record.schedule.not-in-force";
constexpr const char* changed_rule = "record.schedule.changed";

std::string_view date_of(const std::string& effective_from) {
  return std::string_view(effective_from).substr(0, 10);
}

/// Whether `a` supersedes `b`: it is no draft where the other one is, came into force later, has the higher
/// revision.
bool supersedes(const Schedule& a, const Schedule& b) {
  const bool a_draft = a.status == "draft", b_draft = b.status == "draft";
  if (a_draft != b_draft) return b_draft;
  if (date_of(a.effective_from) != date_of(b.effective_from))
    return date_of(a.effective_from) > date_of(b.effective_from);
  return a.revision > b.revision;
}

/// Whether `each` is an approved revision of the same family that `named` replaces: it holds until that comes
/// into force. Later ones don't hold for a seam that names `named`.
bool is_earlier_revision(const Schedule& each, const Schedule& named) {
  return family_of(each) == family_of(named) && each.revision < named.revision && each.status == "approved";
}

/// Canonical: the order of a file's keys says nothing of the schedule, and neither does the digest over it.
std::string text_of(Schedule schedule) {
  schedule.approved_sha256.clear();
  std::string text;
  write_object(schedule, text);
  return canonical_json(parse_json(text, "schedule"));
}

Finding finding(const char* rule, std::string where, Sentence sentence) {
  return {rule,
          Severity::warn,
          std::move(where),
          std::nullopt,
          std::nullopt,
          "",
          std::move(sentence),
          "common practice, no source"};
}

/// Schedules edited under the same revision: it is unknown which of the two a weld was made by.
void find_changed_schedules(AuditResult& audited, const Plan& plan, const StoreHistory& history) {
  std::set<std::string> used;
  for (const PassRecord& pass : audited.passes) used.insert(pass.schedule);
  for (const StoreHistory::Revision& kept : history.schedules) {
    const Schedule* now = find_by_id(plan.schedules, kept.schedule.id);
    if (now == nullptr || !used.contains(now->id) || now->revision != kept.schedule.revision ||
        text_of(*now) == text_of(kept.schedule))
      continue;
    audited.findings.push_back(
        finding(changed_rule, now->id,
                Sentence("record.schedule.changed"_key,
                         {{"schedule", now->id}, {"revision", now->revision}, {"record", kept.seq}})));
  }
}

void mark_not_in_force(AuditResult& audited, const Plan& plan, const StoreHistory& history) {
  for (PassRecord& pass : audited.passes) {
    if (pass.date.empty() || pass.schedule.empty() ||
        effective_revision(plan, history, pass.schedule, pass.date) != nullptr)
      continue;
    if (pass.verdict == Verdict::pass) pass.verdict = Verdict::undecided;
    add_rule(pass.undecided_by, in_force_rule);
    audited.findings.push_back(finding(
        in_force_rule, pass.place(),
        Sentence("record.schedule.not-in-force"_key, {{"schedule", pass.schedule}, {"date", pass.date}})));
  }
}

/// Replaces the passes of some days, and their findings, by those of another plan.
void take_days(AuditResult& into, AuditResult&& from, const std::set<std::string>& days) {
  if (into.passes.size() != from.passes.size())
    throw std::logic_error("an audit of the same logs has other passes");
  std::set<std::string> places;
  for (std::size_t i = 0; i < into.passes.size(); ++i) {
    if (!days.contains(into.passes[i].date)) continue;
    places.insert(into.passes[i].place());
    into.passes[i] = std::move(from.passes[i]);
  }
  std::erase_if(into.findings, [&](const Finding& each) { return places.contains(each.where); });
  for (Finding& each : from.findings)
    if (places.contains(each.where)) into.findings.push_back(std::move(each));
}

/// The schedule that a record keeps; empty where it keeps none.
std::optional<Schedule> schedule_of(const LedgerRow& row) {
  const JsonDocument body(row.body, "record " + std::to_string(row.seq));
  const auto results = body.root().member("results");
  const auto kept = results ? results->member("schedule") : std::nullopt;
  if (!kept) return std::nullopt;
  Schedule schedule;
  ReadContext context(body.file(), *kept);
  read_object(schedule, *kept, context);
  return schedule;
}

}  // namespace

StoreHistory history_of(const Ledger& ledger, const Plan& plan) {
  StoreHistory history;
  for (const Schedule& schedule : plan.schedules)
    for (const std::uint64_t seq : ledger.backend().find("schedule", schedule.id)) {
      if (changes_of(ledger, seq).is_void()) continue;
      const LedgerRow row = ledger.record(seq);
      if (auto kept = schedule_of(row)) history.schedules.push_back({seq, std::move(*kept)});
    }
  for (const Instrument& instrument : plan.instruments)
    for (const std::uint64_t seq : ledger.backend().find("instrument", instrument.id)) {
      if (changes_of(ledger, seq).is_void()) continue;
      const JsonNode body = corrected_body(ledger, ledger.record(seq));
      history.calibrations.push_back({seq, instrument.id, body_text(body, "results.certificate"),
                                      body_text(body, "results.date"), body_text(body, "results.due")});
    }
  return history;
}

const Schedule* effective_revision(const Plan& plan, const StoreHistory& history, std::string_view id,
                                   std::string_view day) {
  const Schedule* named = find_by_id(plan.schedules, id);
  const bool waits = named != nullptr && date_of(named->effective_from) > day;
  const Schedule* best = nullptr;
  const auto consider = [&](const Schedule& each) {
    if (date_of(each.effective_from) > day) return;
    if (each.id != id && !(waits && is_earlier_revision(each, *named))) return;
    if (best == nullptr || supersedes(each, *best)) best = &each;
  };
  for (const Schedule& each : plan.schedules) consider(each);
  for (const StoreHistory::Revision& each : history.schedules) consider(each.schedule);
  return best;
}

const StoreHistory::Calibration* calibration_in_force(const StoreHistory& history,
                                                      std::string_view instrument, std::string_view day) {
  const StoreHistory::Calibration* best = nullptr;
  for (const StoreHistory::Calibration& each : history.calibrations)
    if (each.instrument == instrument && each.date <= day && (best == nullptr || each.date >= best->date))
      best = &each;
  return best;
}

Plan plan_in_force(const Plan& plan, const StoreHistory& history, std::string_view day) {
  Plan then = plan;
  for (Schedule& schedule : then.schedules)
    if (const Schedule* in_force = effective_revision(plan, history, schedule.id, day)) {
      const std::string id = schedule.id;  // seams name it, whichever revision of its family was in force
      schedule = *in_force;
      schedule.id = id;
    }
  for (Instrument& instrument : then.instruments)
    if (const auto* calibration = calibration_in_force(history, instrument.id, day)) {
      instrument.due = calibration->due;
      instrument.certificate = calibration->certificate;
    }
  return then;
}

AuditResult judged_in_force(AuditResult audited, const Plan& plan, const StoreHistory& history,
                            const std::function<AuditResult(const Plan&)>& audit_again) {
  const std::string written = write_plan(plan);
  std::map<std::string, std::set<std::string>> days_by_plan;
  std::set<std::string> days;
  for (const PassRecord& pass : audited.passes)
    if (!pass.date.empty()) days.insert(pass.date);
  std::map<std::string, Plan> plans;
  for (const std::string& day : days) {
    Plan then = plan_in_force(plan, history, day);
    const std::string text = write_plan(then);
    if (text == written) continue;
    days_by_plan[text].insert(day);
    plans.emplace(text, std::move(then));
  }
  for (const auto& [text, of_plan] : days_by_plan) {
    AuditResult again = audit_again(plans.at(text));
    if (of_plan == days && days.size() > 0 && days_by_plan.size() == 1 &&
        std::none_of(audited.passes.begin(), audited.passes.end(),
                     [](const auto& pass) { return pass.date.empty(); }))
      audited = std::move(again);
    else
      take_days(audited, std::move(again), of_plan);
  }
  mark_not_in_force(audited, plan, history);
  // Passes that another audit judged, or that aren't judged any more, count for their units.
  restate_completeness(audited.units, audited.passes, {audited.manual, {}, audited.stored},
                       PlannedPasses(plan), audited.findings);
  find_changed_schedules(audited, plan, history);
  return audited;
}

}  // namespace seamtakt
