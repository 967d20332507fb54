#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "base/units/units.hpp"
#include "formula/valid_range.hpp"
#include "plan/approval.hpp"
#include "plan/fit/fit_seam.hpp"
#include "plan/planned_current.hpp"
#include "plan/window/seam_alone.hpp"

namespace seamtakt {

namespace {

struct Chosen {
  const Weldment* weldment;
  const Seam* seam;
};

std::vector<Chosen> chosen_seams(const Plan& plan, const std::vector<std::string>& places) {
  std::set<std::string> wanted;
  for (const std::string& place : places) wanted.insert(seam_alone(plan, place, "--seam").place());
  std::vector<Chosen> chosen;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      if (!seam.schedules.empty() && (places.empty() || wanted.contains(seam_place(weldment.id, seam.id))))
        chosen.push_back({&weldment, &seam});
      else if (!places.empty() && wanted.contains(seam_place(weldment.id, seam.id)))
        throw InputError(
            "--seam", Sentence("fit.seam-without-schedule"_key, {{"seam", seam_place(weldment.id, seam.id)}}),
            "a seam with at least one schedule to begin from"_word);
  return chosen;
}

/// Where a schedule is used: seams, and the tacks of seams.
std::map<std::string, std::vector<std::string>> users_of_schedules(const Plan& plan) {
  std::map<std::string, std::vector<std::string>> users;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      const std::string place = seam_place(weldment.id, seam.id);
      std::set<std::string> used(seam.schedules.begin(), seam.schedules.end());
      for (const std::string& schedule : used) users[schedule].push_back(place);
      if (seam.tacks && !seam.tacks->schedule.empty())
        users[seam.tacks->schedule].push_back(place + " tacks");
    }
  return users;
}

/// Other seams that are still on a schedule that `place` had.
std::vector<std::string> left_on(const std::map<std::string, std::vector<std::string>>& users,
                                 const std::string& schedule, const std::string& place) {
  std::vector<std::string> left;
  if (const auto found = users.find(schedule); found != users.end())
    std::copy_if(found->second.begin(), found->second.end(), std::back_inserter(left),
                 [&](const std::string& user) { return user != place; });
  return left;
}

/// Writes fitted settings into the plan, as the next revision of a schedule where the schedule may not
/// change.
class FittedPlan {
 public:
  explicit FittedPlan(const Plan& plan) : plan_(plan), users_(users_of_schedules(plan)) {}

  /// Before anything is applied: a seam that takes an existing schedule uses it too, so it must stay
  /// unchanged.
  void keep_what_is_taken(const FittedSeam& report) {
    if (report.is_existing) users_[report.after.schedule].push_back(seam_place(report.weldment, report.seam));
  }

  /// Puts the ids of new schedules into the report.
  void apply(FittedSeam& report) {
    Seam& seam = *find_by_id(find_by_id(plan_.weldments, report.weldment)->seams, report.seam);
    if (report.is_existing)
      std::replace(seam.schedules.begin(), seam.schedules.end(), report.before.schedule,
                   report.after.schedule);
    for (const FitChange& change : report.changes) {
      const std::string id = schedule_for(change, seam_place(report.weldment, report.seam));
      set_passes(seam.schedules, change.schedule, id, change.settings.passes);
      if (change.schedule == report.after.schedule) {
        report.after.schedule = id;
        report.after.revision = find_by_id(plan_.schedules, id)->revision;
      }
    }
  }

  Plan take() { return std::move(plan_); }

 private:
  std::string schedule_for(const FitChange& change, const std::string& place) {
    Schedule& planned = *find_by_id(plan_.schedules, change.schedule);
    const FitPoint& s = change.settings;
    if (planned.wire_feed_speed_m_min == s.wire_feed_speed_m_min &&
        planned.arc_voltage_V == s.arc_voltage_V && planned.travel_speed_mm_s == s.travel_speed_mm_s)
      return planned.id;  // only the number of passes changes
    const auto key =
        std::tuple(change.schedule, s.wire_feed_speed_m_min, s.arc_voltage_V, s.travel_speed_mm_s);
    if (const auto known = made_.find(key); known != made_.end()) return known->second;
    const std::vector<std::string>& users = users_[change.schedule];
    const bool is_free = planned.status != "approved" && planned.status != "reviewed";
    if (is_free && users.size() == 1 && users.front() == place) {
      apply_settings(planned, s);
      ++planned.revision;
      return planned.id;
    }
    return made_[key] = add_revision(planned, s);
  }

  std::string add_revision(const Schedule& planned, const FitPoint& settings) {
    Schedule next = planned;
    ++next.revision;
    next.id = free_id(planned.id + "-r" + std::to_string(next.revision));
    next.status = "draft";
    if (next.revision_of.empty()) next.revision_of = planned.id;  // the family's first id
    clear_approval(next);
    apply_settings(next, settings);
    // Beside the schedule that it follows, where a person looks for it.
    auto place = std::find_if(plan_.schedules.begin(), plan_.schedules.end(),
                              [&](const Schedule& schedule) { return schedule.id == planned.id; });
    return plan_.schedules.insert(place + 1, std::move(next))->id;
  }

  std::string free_id(const std::string& wanted) const {
    if (!find_by_id(plan_.schedules, wanted)) return wanted;
    for (int k = 2;; ++k)
      if (std::string id = wanted + "." + std::to_string(k); !find_by_id(plan_.schedules, id)) return id;
  }

  Plan plan_;
  std::map<std::string, std::vector<std::string>> users_;
  std::map<std::tuple<std::string, double, double, double>, std::string> made_;
};

/// What is printed must still be enough: rounded to three digits, away from the limit.
UnitValue enough(const FitLimit& limit) {
  const double needed = *limit.needed;
  if (needed == 0) return limit_value(limit, needed, 3);
  constexpr double rounding = 1e-9;
  const double unit = std::pow(10, std::floor(std::log10(std::abs(needed))) - 2);
  const double steps = needed / unit;
  const double rounded = limit.is_upper ? std::ceil(steps - rounding) : std::floor(steps + rounding);
  return limit_value(limit, rounded * unit, 3);
}

Sentence need_of(const FitLimit& limit) {
  std::vector<Argument> arguments{{"what", limit.what}, {"needed", enough(limit)}};
  if (limit.needed_with.empty())
    return Sentence(limit.is_upper ? "fit.limit.needed-up-to"_key : "fit.limit.needed-down-to"_key,
                    std::move(arguments));
  std::vector<Sentence> others;
  for (const BrokenLimit& broken : limit.needed_with) others.push_back(broken.sentence);
  arguments.emplace_back("others", std::move(others));
  return Sentence(limit.is_upper ? "fit.limit.needed-up-to.with"_key : "fit.limit.needed-down-to.with"_key,
                  std::move(arguments));
}

Sentence conflict_sentence(const std::vector<FitLimit>& conflicts) {
  std::vector<Sentence> limits, needs, causes;
  for (const FitLimit& limit : conflicts) {
    (limit.bound ? limits : causes).push_back(limit.sentence);
    if (limit.needed) needs.push_back(need_of(limit));
  }
  // What no settings mend is a finding's whole sentence.
  if (!causes.empty()) return Sentence("fit.no-settings.whatever"_key, {{"causes", std::move(causes)}});
  if (needs.empty()) return Sentence("fit.no-settings"_key, {{"limits", std::move(limits)}});
  return Sentence("fit.no-settings.needs"_key, {{"limits", std::move(limits)}, {"needs", std::move(needs)}});
}

void add_findings(const std::vector<SeamFit>& fits, const Plan& plan, Findings& findings) {
  std::set<std::string> assumed, measured;
  for (const SeamFit& fit : fits) {
    assumed.insert(fit.assumed_ranges.begin(), fit.assumed_ranges.end());
    if (!fit.report.has_settings)
      findings.push_back({"fit.no-settings",
                          Severity::fail,
                          seam_place(fit.report.weldment, fit.report.seam),
                          {},
                          {},
                          "",
                          conflict_sentence(fit.report.conflicts),
                          "plan limit"});
    if (fit.report.is_existing)
      findings.push_back(remark(
          "fit.existing-schedule", seam_place(fit.report.weldment, fit.report.seam),
          Sentence("fit.existing-schedule"_key, {{"schedule", fit.report.after.schedule}}), "plan limit"));
    if (fit.is_short_of_preheat)
      findings.push_back(remark("fit.preheat-short", seam_place(fit.report.weldment, fit.report.seam),
                                Sentence("fit.preheat-short"_key), "EN 1011-2:2001, C.3 (method B)"));
    if (const auto& others = fit.report.other_schedules; !others.empty())
      findings.push_back(remark("fit.other-schedule", seam_place(fit.report.weldment, fit.report.seam),
                                Sentence("fit.other-schedule"_key, {{"schedules", comma_list(others)}}),
                                "plan limit"));
    for (const FitChange& change : fit.report.changes) {
      if (stated_current_A(*find_by_id(plan.schedules, change.schedule))) measured.insert(change.schedule);
      if (change.schedule != fit.report.before.schedule)
        findings.push_back(
            remark("fit.other-passes-changed", seam_place(fit.report.weldment, fit.report.seam),
                   Sentence("fit.other-passes-changed"_key, {{"schedule", change.schedule}}), "plan limit"));
    }
  }
  for (const std::string& schedule : assumed)
    findings.push_back(remark("fit.range.assumed", schedule,
                              Sentence("fit.range.assumed"_key, {{"schedule", schedule},
                                                                 {"from", UnitValue{fit_assumed_from, ""}},
                                                                 {"to", UnitValue{fit_assumed_to, ""}}}),
                              "common practice, no source"));
  for (const std::string& schedule : measured)
    findings.push_back(remark("fit.current.to-measure", schedule,
                              Sentence("fit.current.to-measure"_key, {{"schedule", schedule}}), "derived"));
}

}  // namespace

std::optional<FitObjective> fit_objective_of(std::string_view name) {
  for (const FitObjective objective : {FitObjective::time, FitObjective::heat, FitObjective::cost})
    if (name == to_string(objective)) return objective;
  return std::nullopt;
}

const char* to_string(FitObjective objective) {
  switch (objective) {
    case FitObjective::heat:
      return "heat";
    case FitObjective::cost:
      return "cost";
    case FitObjective::time:
      break;
  }
  return "time";
}

std::optional<FitHold> fit_hold_of(std::string_view name) {
  for (const FitHold hold : fit_holds)
    if (name == to_string(hold)) return hold;
  return std::nullopt;
}

const char* to_string(FitHold hold) {
  switch (hold) {
    case FitHold::wire_feed:
      return "wire-feed";
    case FitHold::voltage:
      return "voltage";
    case FitHold::travel_speed:
      return "travel-speed";
    case FitHold::passes:
      break;
  }
  return "passes";
}

Plan take_over(const Plan& plan, std::vector<FittedSeam> seams) {
  FittedPlan fitted(plan);
  for (const FittedSeam& seam : seams) fitted.keep_what_is_taken(seam);
  for (FittedSeam& seam : seams) fitted.apply(seam);
  return fitted.take();
}

FitResult fit(const Plan& plan, const FitOptions& options, ThreadPool& pool) {
  const std::vector<Chosen> chosen = chosen_seams(plan, options.seams);
  std::vector<SeamFit> fits(chosen.size());
  pool.parallel_for(chosen.size(), 1, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      fits[i] = fit_seam(plan, *chosen[i].weldment, *chosen[i].seam, options);
  });
  FittedPlan fitted(plan);
  FitResult result;
  for (const SeamFit& fit : fits) fitted.keep_what_is_taken(fit.report);
  for (SeamFit& fit : fits) fitted.apply(fit.report);
  add_findings(fits, plan, result.findings);
  result.plan = fitted.take();
  const auto users = users_of_schedules(result.plan);
  for (SeamFit& fit : fits) {
    FittedSeam& report = fit.report;
    if (report.is_changed)
      report.left_as_they_are =
          left_on(users, report.before.schedule, seam_place(report.weldment, report.seam));
    result.seams.push_back(std::move(report));
  }
  return result;
}

}  // namespace seamtakt
