#include <algorithm>

#include "formula/metal/haz_hardness.hpp"
#include "formula/uncertainty/guard_band.hpp"
#include "plan/evaluate/heat_uncertainty.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "plan/rules/rules.hpp"
#include "records/passes/pass_review.hpp"
#include "records/passes/recorded_value.hpp"

namespace seamtakt {

namespace {

constexpr const char* cooling_source = "en-1011-2, Annex D (part read)";
constexpr const char* guard_rule = "ILAC-G8:09/2019, 4.2.2; plan limit";

/// Judges one value; a value within its uncertainty of a limit leaves the verdict open.
void judge(PassReview& review, const LimitedQuantity& quantity, Word what, double value,
           std::optional<double> U, const Interval& limit) {
  const std::size_t before = review.findings.size();
  judge_interval(quantity.record_rule, what, quantity.unit, value, U, limit,
                 guarded_decision(review.plan->plan()), review.place, review.findings);
  for (std::size_t i = before; i < review.findings.size(); ++i) {
    if (review.findings[i].severity != Severity::warn) continue;
    review.findings[i].source = guard_rule;
    add_rule(review.record.undecided_by, review.findings[i].rule);
  }
}

std::optional<double> expanded(const PassReview& review, const char* quantity, double value) {
  if (quantity == nullptr) return std::nullopt;
  const auto u = relative_uncertainty(review.plan->plan(), review.measured_robot(), quantity, value);
  return u ? std::optional<double>(coverage_factor * *u * value) : std::nullopt;
}

/// "wire-feed-speed", of the rule "record.wire-feed-speed".
Word unlogged_name(const LimitedQuantity& quantity) {
  constexpr std::string_view beginning = "record.";
  return Word::of_table(quantity.record_rule + beginning.size());
}

void judge_means(PassReview& review, const ScheduleLimits& limits) {
  std::vector<Sentence> not_logged;
  for (const LimitedQuantity& each : limited_quantities) {
    const auto& limit = limits.*each.limit;
    if (!limit || (each.recorded != Recorded::steady_mean && each.recorded != Recorded::reading)) continue;
    if (const auto value = recorded_value(review.record, each)) {
      judge(review, each, recorded_label(each), *value, expanded(review, each.instrument, *value), *limit);
    } else {
      not_logged.emplace_back(unlogged_name(each));
    }
  }
  if (!not_logged.empty() && review.record.steady.time_s > 0)
    review.add("record.limit.not-logged", Severity::note,
               Sentence("record.limit.not-logged"_key, {{"names", std::move(not_logged)}}), plan_limit);
}

void judge_heat_input(PassReview& review, const ScheduleLimits& limits) {
  if (!limits.heat_input_kJ_mm) return;
  constexpr const LimitedQuantity& quantity = limited_quantity(&ScheduleLimits::heat_input_kJ_mm);
  const PassRecord& record = review.record;
  if (const auto value = recorded_value(record, quantity)) {
    judge(review, quantity, recorded_label(quantity), *value, record.U_heat_input_kJ_mm,
          *limits.heat_input_kJ_mm);
  } else {
    review.undecide("record.heat-input.unknown",
                    "The schedule limits the heat input, and the log gives none."_word, plan_limit);
  }
}

/// In the cases of the plan (cooling_sides). A logged temperature leaves no colder and no hotter case.
void judge_cooling_time(PassReview& review, const ScheduleLimits& limits) {
  if (!limits.cooling_time_s) return;
  const PassRecord& record = review.record;
  if (!record.cooling_time_s) {
    review.undecide("record.cooling-time.unknown",
                    "The schedule limits the cooling time t8/5, and the log gives none."_word, plan_limit);
    return;
  }
  constexpr const LimitedQuantity& quantity = limited_quantity(&ScheduleLimits::cooling_time_s);
  const bool is_logged = record.interpass_C.has_value();
  const CoolingCases cases = cooling_cases(*review.seam(), *record.cooling_from_C,
                                           is_logged ? std::nullopt : upper_interpass_C(*review.schedule()));
  const double Q = *record.heat_input_kJ_mm;
  const std::size_t before = review.findings.size();
  for (const CoolingSide& side : cooling_sides) {
    if (!((*limits.cooling_time_s).*side.bound)) continue;
    const CoolingCase& at = cases.*side.at;
    judge(review, quantity, is_logged ? side.what_logged : side.what, cooling_time(Q, at).time_s,
          U_cooling_time_s(Q, at, measured_with(review)), side.of(*limits.cooling_time_s));
  }
  for (std::size_t i = before; i < review.findings.size(); ++i)
    review.findings[i].source = std::string(cooling_source) + "; " + review.findings[i].source;
}

/// An estimate never fails a pass: within its scatter above the limit it is a note, beyond that a warn.
void judge_hardness(PassReview& review, const ScheduleLimits& limits) {
  const auto& hardness = review.record.haz_hardness_HV;
  if (!limits.hardness_HV || !limits.hardness_HV->upper || !hardness) return;
  const double limit = *limits.hardness_HV->upper;
  if (*hardness <= limit) return;
  Finding& finding = review.add(
      "record.hardness.high", *hardness > limit + haz_hardness_scatter_HV ? Severity::warn : Severity::note,
      Sentence("record.hardness.high"_key, {{"hardness", UnitValue{*hardness, "HV"}},
                                            {"limit", UnitValue{limit, "HV"}},
                                            {"scatter", UnitValue{haz_hardness_scatter_HV, "HV"}}}),
      "Yurioka et al. 1987 (recalled); plan limit");
  finding.value = *hardness;
  finding.limit = limit;
  finding.unit = "HV";
}

}  // namespace

void judge_limits(PassReview& review) {
  const Schedule* schedule = review.schedule();
  if (schedule == nullptr || !schedule->limits) return;
  if (review.record.steady.time_s <= 0)
    review.undecide("record.steady.none",
                    "No arc is longer than its start and crater times together: nothing steady that limits "
                    "could judge."_word);
  judge_means(review, *schedule->limits);
  judge_heat_input(review, *schedule->limits);
  judge_cooling_time(review, *schedule->limits);
  judge_hardness(review, *schedule->limits);
}

void decide_verdict(PassReview& review, std::size_t first_finding) {
  if (review.schedule() == nullptr) return;
  PassRecord& record = review.record;
  for (std::size_t i = first_finding; i < review.findings.size(); ++i)
    if (review.findings[i].severity == Severity::fail) add_rule(record.failed_by, review.findings[i].rule);
  record.verdict = !record.failed_by.empty()      ? Verdict::fail
                   : !record.undecided_by.empty() ? Verdict::undecided
                                                  : Verdict::pass;
}

void add_rule(std::vector<std::string>& rules, const std::string& rule) {
  if (std::find(rules.begin(), rules.end(), rule) == rules.end()) rules.push_back(rule);
}

}  // namespace seamtakt
