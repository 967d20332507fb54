#include <algorithm>

#include "base/units/units.hpp"
#include "formula/heat/cooling_time.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "formula/uncertainty/guard_band.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"
#include "plan/rules/rules.hpp"
#include "records/passes/pass_review.hpp"

namespace seamtakt {

namespace {

constexpr const char* cooling_source = "en-1011-2, Annex D (part read)";
constexpr const char* guard_rule = "ILAC-G8:09/2019, 4.2.2; plan limit";

/// A limit of the schedule and the value of the record that it judges.
struct Limited {
  std::optional<Interval> ScheduleLimits::*limit;
  const char *rule, *what, *unit;
  std::optional<double> (*value)(const PassRecord&);
  const char* instrument;  ///< quantity whose uncertainty counts; nullptr: none is known
};

const Limited limited_values[] = {
    {&ScheduleLimits::current_A, "record.current", "Mean current of the steady part", "A",
     [](const PassRecord& record) { return record.steady.current_A; }, "current"},
    {&ScheduleLimits::voltage_V, "record.voltage", "Mean voltage of the steady part", "V",
     [](const PassRecord& record) { return record.steady.voltage_V; }, "voltage"},
    {&ScheduleLimits::wire_feed_speed_m_min, "record.wire-feed-speed",
     "Mean wire feed speed of the steady part", "m/min",
     [](const PassRecord& record) { return record.steady.wire_feed_speed_m_min; }, "wire_feed_speed"},
    {&ScheduleLimits::travel_speed_mm_s, "record.travel-speed", "Mean travel speed of the steady part",
     "mm/s", [](const PassRecord& record) { return record.steady.travel_speed_mm_s; }, "travel_speed"},
    {&ScheduleLimits::gas_flow_l_min, "record.gas-flow", "Mean gas flow of the steady part", "l/min",
     [](const PassRecord& record) { return record.steady.gas_flow_l_min; }, nullptr},
    {&ScheduleLimits::interpass_C, "record.interpass", "Interpass temperature", "C",
     [](const PassRecord& record) { return record.interpass_C; }, nullptr},
};

/// Judges one value; what lies within its uncertainty of a limit leaves the verdict open.
void judge(PassReview& review, const char* rule, const char* what, const char* unit, double value,
           std::optional<double> U, const Interval& limit) {
  const std::size_t before = review.findings.size();
  judge_interval(rule, what, unit, value, U, limit, guarded_decision(review.plan->plan()), review.place,
                 review.findings);
  for (std::size_t i = before; i < review.findings.size(); ++i) {
    if (review.findings[i].severity != Severity::warn) continue;
    review.findings[i].source = guard_rule;
    add_rule(review.record.undecided_by, review.findings[i].rule);
  }
}

std::optional<double> expanded(const PassReview& review, const char* quantity, double value) {
  if (quantity == nullptr) return std::nullopt;
  const std::string robot = review.robot != nullptr ? review.robot->id : review.record.robot;
  const auto u = relative_uncertainty(review.plan->plan(), robot, quantity, value);
  return u ? std::optional<double>(coverage_factor * *u * value) : std::nullopt;
}

void judge_means(PassReview& review, const ScheduleLimits& limits) {
  std::string not_logged;
  for (const Limited& each : limited_values) {
    const auto& limit = limits.*each.limit;
    if (!limit) continue;
    if (const auto value = each.value(review.record)) {
      judge(review, each.rule, each.what, each.unit, *value, expanded(review, each.instrument, *value),
            *limit);
    } else {
      not_logged += (not_logged.empty() ? "" : ", ") + std::string(each.rule).substr(7);
    }
  }
  if (!not_logged.empty() && review.record.steady.time_s > 0)
    review.add("record.limit.not-logged", Severity::note,
               "The schedule limits what the log doesn't tell: " + not_logged + ".", plan_limit);
}

void judge_heat_input(PassReview& review, const ScheduleLimits& limits) {
  if (!limits.heat_input_kJ_mm) return;
  const PassRecord& record = review.record;
  if (record.heat_input_kJ_mm) {
    judge(review, "record.heat-input", "Heat input of the whole pass", "kJ/mm", *record.heat_input_kJ_mm,
          record.U_heat_input_kJ_mm, *limits.heat_input_kJ_mm);
  } else {
    review.undecide("record.heat-input.unknown",
                    "The schedule limits the heat input, and the log gives none.", plan_limit);
  }
}

std::optional<double> upper_interpass_C(const ScheduleLimits& limits) {
  return limits.interpass_C ? limits.interpass_C->upper : std::nullopt;
}

/// A lower limit is judged on the fastest cooling (cold, thicker plate, low end of the shape factor's span),
/// an upper one on the slowest (hot, thinner plate, high end). A logged temperature leaves no colder and no
/// hotter case.
void judge_cooling_time(PassReview& review, const ScheduleLimits& limits) {
  if (!limits.cooling_time_s) return;
  const PassRecord& record = review.record;
  if (!record.cooling_time_s) {
    review.undecide("record.cooling-time.unknown",
                    "The schedule limits the cooling time t8/5, and the log gives none.", plan_limit);
    return;
  }
  const Seam& seam = *review.seam();
  const ShapeFactors shape = *shape_factors_of(seam.joint);
  const double Q = *record.heat_input_kJ_mm, cold = *record.cooling_from_C;
  const auto [thinner, thicker] = std::minmax_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  const auto upper = upper_interpass_C(limits);
  const bool is_logged = record.interpass_C.has_value();
  const double hot = !is_logged && upper && *upper < preheat_below_C ? std::max(*upper, cold) : cold;
  const CoolingTime<double> fastest = cooling_time(Q, *thicker, cold, shape.f2_low, shape.f3);
  const CoolingTime<double> slowest = cooling_time(Q, *thinner, hot, shape.f2_high, shape.f3);
  // The time goes with Q in three-dimensional and with Q squared in two-dimensional heat flow.
  const auto U_of = [&](const CoolingTime<double>& time) {
    return record.U_heat_input_kJ_mm
               ? std::optional<double>((time.is_2d ? 2 : 1) * *record.U_heat_input_kJ_mm / Q * time.time_s)
               : std::nullopt;
  };
  const std::size_t before = review.findings.size();
  if (limits.cooling_time_s->lower)
    judge(review, "record.cooling-time",
          is_logged ? "Fastest cooling time t8/5 (from the logged temperature, thicker plate)"
                    : "Fastest cooling time t8/5 (cold, thicker plate)",
          "s", fastest.time_s, U_of(fastest), {limits.cooling_time_s->lower, {}});
  if (limits.cooling_time_s->upper)
    judge(review, "record.cooling-time",
          is_logged ? "Slowest cooling time t8/5 (from the logged temperature, thinner plate)"
                    : "Slowest cooling time t8/5 (hot, thinner plate)",
          "s", slowest.time_s, U_of(slowest), {{}, limits.cooling_time_s->upper});
  for (std::size_t i = before; i < review.findings.size(); ++i)
    review.findings[i].source = std::string(cooling_source) + "; " + review.findings[i].source;
}

/// An estimate fails nothing: within its scatter above the limit a note, beyond that a warn.
void judge_hardness(PassReview& review, const ScheduleLimits& limits) {
  const auto& hardness = review.record.haz_hardness_HV;
  if (!limits.hardness_HV || !limits.hardness_HV->upper || !hardness) return;
  const double limit = *limits.hardness_HV->upper;
  if (*hardness <= limit) return;
  Finding& finding = review.add(
      "record.hardness.high", *hardness > limit + haz_hardness_scatter_HV ? Severity::warn : Severity::note,
      "Estimated HAZ hardness of the record is " + rounded_text(*hardness, 4) + " HV, above the limit of " +
          rounded_text(limit, 4) + " HV (its scatter is 56 HV either way).",
      "yurioka-1987 (recalled); plan limit");
  finding.value = *hardness;
  finding.limit = limit;
  finding.unit = "HV";
}

}  // namespace

void judge_limits(PassReview& review) {
  const Schedule* schedule = review.schedule();
  if (schedule == nullptr || !schedule->limits) return;
  if (review.record.steady.time_s <= 0)
    review.undecide(
        "record.steady.none",
        "No arc is longer than its start and crater times together: nothing steady that limits could judge.");
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
