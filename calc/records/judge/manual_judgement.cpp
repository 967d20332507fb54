#include "records/judge/manual_judgement.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/time/log_time.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

constexpr const char* welder_source = "ISO 9606-1 (recalled)";
/// By which a date at the place may differ from UTC.
constexpr std::int64_t hour_ns = std::int64_t{3'600} * 1'000'000'000, widest_zone_ns = 14 * hour_ns;
/// By which hand and robot may weld apart where no unit times are given (common practice, no source).
constexpr std::int64_t without_unit_times_ns = 31 * 24 * hour_ns;

/// A time in which a unit was there, and by how much a date may differ from it.
struct Stay {
  std::int64_t from_ns = 0, to_ns = 0, margin_ns = 0;
};

std::string day_of(std::int64_t ns) {
  return utc_text_of_ns(ns).substr(0, 10);
}

/// The one of the unit's passes, else the plan's only one.
std::string weldment_of(const std::string& unit, const std::vector<PassRecord>& passes,
                        const PlannedPasses* plan) {
  for (const PassRecord& pass : passes)
    if (pass.unit_serial == unit && !pass.weldment.empty()) return pass.weldment;
  return plan != nullptr ? std::string(plan->only_weldment()) : "";
}

/// One seam on its way to its verdict.
class ManualReview {
 public:
  ManualReview(ManualSeam& seam, const std::vector<PassRecord>& passes, const PlannedPasses* plan,
               const ManualBasis& basis, Findings& findings)
      : seam_(seam),
        passes_(passes),
        plan_(plan),
        basis_(basis),
        findings_(findings),
        place_(manual_place(seam)) {}

  void run() {
    seam_.failed_by.clear();
    seam_.undecided_by.clear();
    check_result();
    if (plan_ == nullptr) return;
    check_welder();
    check_schedule();
    check_date();
  }

 private:
  void add(const char* rule, Severity severity, Sentence sentence, const char* source) {
    findings_.push_back(
        {rule, severity, place_, std::nullopt, std::nullopt, "", std::move(sentence), source});
  }
  void fail(const char* rule, Sentence sentence, const char* source = plan_limit) {
    add_rule(seam_.failed_by, rule);
    add(rule, Severity::fail, std::move(sentence), source);
  }
  void undecide(const char* rule, Sentence sentence, const char* source = plan_limit) {
    add_rule(seam_.undecided_by, rule);
    add(rule, Severity::warn, std::move(sentence), source);
  }

  void check_result() {
    const auto said = [&] { return printable(seam_.result, 40); };
    const ManualResult result = manual_result(seam_.result);
    if (result == ManualResult::bad)
      fail(manual_failed_rule, Sentence("manual.result.fail"_key, {{"result", said()}}));
    if (result == ManualResult::unclear)
      undecide(manual_unclear_rule, seam_.result.empty()
                                        ? Sentence("The manual seam has no result."_word)
                                        : Sentence("manual.result.unclear"_key, {{"result", said()}}));
  }

  void check_welder() {
    if (seam_.welder.empty())
      return undecide(manual_welder_rule, "The manual seam names no welder."_word, welder_source);
    if (basis_.welders.empty() || !is_calendar_date(seam_.date)) return;
    const bool is_valid = std::any_of(basis_.welders.begin(), basis_.welders.end(), [&](const Welder& each) {
      return each.name == seam_.welder && each.valid_from <= seam_.date && seam_.date <= each.valid_until;
    });
    if (!is_valid)
      fail("manual.welder.not-valid",
           Sentence("manual.welder.not-valid"_key, {{"date", printable(seam_.date, 20)}}), welder_source);
  }

  void check_schedule() {
    if (seam_.schedule.empty())
      return undecide("manual.schedule.unknown", "The manual seam names no schedule."_word);
    if (find_by_id(plan_->plan().schedules, seam_.schedule) == nullptr)
      return undecide("manual.schedule.unknown",
                      Sentence("manual.schedule.unknown"_key, {{"schedule", printable(seam_.schedule, 60)}}));
    const auto planned = plan_->find(seam_.weldment, seam_.seam, seam_.pass.value_or(1));
    if (planned && planned->schedule->id != seam_.schedule)
      add("manual.schedule.other", Severity::warn,
          Sentence("manual.schedule.other"_key, {{"welded", printable(seam_.schedule, 60)},
                                                 {"planned", printable(planned->schedule->id, 60)}}),
          plan_limit);
  }

  void check_date() {
    if (!is_calendar_date(seam_.date))
      return undecide("manual.date.missing",
                      seam_.date.empty()
                          ? Sentence("The manual seam has no date."_word)
                          : Sentence("manual.date.missing"_key, {{"date", printable(seam_.date, 40)}}),
                      no_source);
    const std::vector<Stay> stays = stays_of(seam_.unit_serial);
    const auto holds_it = [&](const Stay& stay) {
      return day_of(stay.from_ns - stay.margin_ns) <= seam_.date &&
             seam_.date <= day_of(stay.to_ns + stay.margin_ns);
    };
    if (stays.empty() || std::any_of(stays.begin(), stays.end(), holds_it)) return;
    undecide("manual.date.outside",
             Sentence("manual.date.outside"_key, {{"date", seam_.date},
                                                  {"start", day_of(stays.front().from_ns)},
                                                  {"end", day_of(stays.back().to_ns)}}),
             no_source);
  }

  /// When the unit was there: by the unit times, else by the days of its robots' passes.
  std::vector<Stay> stays_of(const std::string& serial) const {
    std::vector<Stay> stays;
    for (const UnitTime& unit : basis_.units)
      if (unit.unit_serial == serial && !unit.counts_seconds)
        stays.push_back({unit.start_ns, unit.end_ns, widest_zone_ns});
    if (!stays.empty()) return stays;
    std::string first, last;
    for (const PassRecord& pass : passes_) {
      if (pass.unit_serial != serial || pass.date.empty()) continue;
      if (first.empty() || pass.date < first) first = pass.date;
      last = std::max(last, pass.date);
    }
    LogTime from, to;
    if (!first.empty() && parse_iso8601(first + "T00:00:00Z", from) && parse_iso8601(last + "T00:00:00Z", to))
      stays.push_back({from.ns, to.ns, without_unit_times_ns});
    return stays;
  }

  ManualSeam& seam_;
  const std::vector<PassRecord>& passes_;
  const PlannedPasses* plan_;
  const ManualBasis& basis_;
  Findings& findings_;
  std::string place_;
};

}  // namespace

ManualResult manual_result(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  for (const char* good : {"pass", "passed", "ok", "accepted", "accept", "good"})
    if (text == good) return ManualResult::good;
  for (const char* bad : {"fail", "failed", "nok", "not ok", "rejected", "reject", "bad"})
    if (text == bad) return ManualResult::bad;
  return ManualResult::unclear;
}

std::string manual_place(const ManualSeam& seam) {
  PassRecord record;
  record.unit_serial = seam.unit_serial;
  record.weldment = seam.weldment;
  record.seam = seam.seam;
  record.pass = seam.pass.value_or(1);
  return record.place();
}

void judge_manual(std::vector<ManualSeam>& seams, const std::vector<PassRecord>& passes,
                  const PlannedPasses* plan, const ManualBasis& basis, Findings& findings) {
  for (ManualSeam& seam : seams) {
    if (seam.weldment.empty()) seam.weldment = weldment_of(seam.unit_serial, passes, plan);
    ManualReview(seam, passes, plan, basis, findings).run();
  }
}

}  // namespace seamtakt
