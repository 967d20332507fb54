#include "plan/fit/fit_seam.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

#include "plan/evaluate/evaluate.hpp"
#include "plan/evaluate/pass_uncertainty.hpp"
#include "plan/fit/fit_existing.hpp"
#include "plan/planned_current.hpp"
#include "plan/rules/rules.hpp"
#include "plan/uncertainty/open_limits.hpp"
#include "plan/window/seam_alone.hpp"

namespace seamtakt {

namespace {

constexpr int most_passes_ever = 20;
constexpr double coarse_steps = 10, fine_steps = 50;  ///< a unit: 0.1 and 0.02
/// A gain below this share isn't worth a new schedule.
constexpr double worthwhile = 1e-3;

bool is_size(Judged judged) {
  return judged == Judged::leg || judged == Judged::throat || judged == Judged::area;
}

void drop_size_bounds(WindowProblem& problem) {
  std::vector<WindowLimit> limits;
  std::vector<WindowBound> bounds;
  for (std::size_t k = 0; k < problem.limits.size(); ++k) {
    if (is_size(problem.model.bounds[k].judged)) continue;
    limits.push_back(problem.limits[k]);
    bounds.push_back(problem.model.bounds[k]);
  }
  problem.limits = std::move(limits);
  problem.model.bounds = std::move(bounds);
}

/// Expanded uncertainty of what a bound judges, as a share of it.
double uncertain_share(Judged judged, const PassFacts& facts, const PassEvaluation& pass) {
  switch (judged) {
    case Judged::current:
      return pass.U_current_A.value_or(0) / pass.current_A;
    case Judged::heat_input:
      return pass.U_heat_input_kJ_mm.value_or(0) / pass.heat_input_kJ_mm;
    case Judged::cooling_fastest:
      return U_cooling_time_s(facts, pass, cooling_cases(facts).fastest).value_or(0) /
             *pass.cooling_time_fastest_s;
    case Judged::cooling_slowest:
      return U_cooling_time_s(facts, pass, cooling_cases(facts).slowest).value_or(0) /
             *pass.cooling_time_slowest_s;
    default:
      return 0;
  }
}

/// Whether the present settings leave the limit behind a bound open: it isn't judged, nor kept away from.
bool is_left_open(Judged judged, const PassEvaluation& pass) {
  switch (judged) {
    case Judged::current:
      return is_open(pass, OpenLimit::current);
    case Judged::heat_input:
      return is_open(pass, OpenLimit::heat_input);
    case Judged::cooling_fastest:
      return is_open(pass, OpenLimit::cooling_fastest);
    case Judged::cooling_slowest:
      return is_open(pass, OpenLimit::cooling_slowest);
    default:
      return false;
  }
}

/// Bounds tightened by the expanded uncertainty at the present settings, as a guarded decision requires: a
/// value and its uncertainty, a share of it, lie inside.
void draw_in(WindowModel& model, const PassFacts& facts, const PassEvaluation& pass,
             const SeamEvaluation& seam) {
  for (WindowBound& bound : model.bounds) {
    if (is_left_open(bound.judged, pass)) continue;
    const double share = std::min(uncertain_share(bound.judged, facts, pass), 0.9);
    bound.bound /= bound.is_upper ? 1 + share : 1 - share;
    if (bound.judged != Judged::leg) continue;
    const double U = seam.U_leg_mm.value_or(0);
    bound.bound += bound.is_upper ? -U : U;
  }
}

/// Sets the preheat that may be needed at most; infinity: any.
void allow_preheat(FitSearch& search, double most_C) {
  for (std::size_t k = 0; k < search.limits.size(); ++k)
    if (search.model.bounds[k].judged == Judged::preheat) {
      search.model.bounds[k].bound = most_C;
      search.limits[k].bound = most_C;
    }
}

/// Lets the estimated hardness be any: beyond its limit it is a warning. False where it has no limit.
bool allow_hardness(FitSearch& search) {
  bool has_limit = false;
  for (WindowBound& bound : search.model.bounds) {
    const bool is_upper = bound.judged == Judged::hardness_highest;
    if (!is_upper && bound.judged != Judged::hardness_lowest) continue;
    has_limit = true;
    bound.plate_time_s.fill(is_upper ? 0 : std::numeric_limits<double>::infinity());
  }
  return has_limit;
}

WindowRange range_of(const std::optional<Interval>& limit, double setting, bool& assumed) {
  const bool has_both = limit && limit->lower && limit->upper;
  assumed = assumed || !has_both;
  const double lower = limit && limit->lower ? *limit->lower : fit_assumed_from * setting;
  const double upper = limit && limit->upper ? *limit->upper : fit_assumed_to * setting;
  return {lower, std::max(lower, upper)};
}

FitPoint present_point(const PassFacts& facts, const PassEvaluation& pass, std::size_t passes) {
  FitPoint point;
  point.wire_feed_speed_m_min = facts.schedule.wire_feed_speed_m_min;
  point.arc_voltage_V = facts.schedule.arc_voltage_V;
  point.travel_speed_mm_s = facts.schedule.travel_speed_mm_s;
  point.current_A = pass.current_A;
  point.arc_power_W = pass.arc_power_kW * 1000;
  point.melting_rate_kg_h = pass.melting_rate_kg_h;
  point.heat_input_kJ_mm = pass.heat_input_kJ_mm;
  point.passes = static_cast<int>(passes);
  return point;
}

/// Enough passes of the least bead to fill the seam half as much again.
int passes_worth_trying(const FitSearch& search, double area_needed_mm2) {
  const FeedFigures feed = feed_figures(search.model, search.wire_feed_speed_m_min.lower);
  const double least_bead_mm2 = deposit_area_mm2(feed.deposition_rate_kg_h, search.travel_speed_mm_s.upper,
                                                 search.model.weld_metal_density_g_cm3);
  const double most = std::ceil(1.5 * area_needed_mm2 / least_bead_mm2) + 1;
  return std::clamp(static_cast<int>(std::min<double>(most, most_passes_ever)), search.present.passes,
                    std::max(search.present.passes, most_passes_ever));
}

struct Found {
  FitPoint point;
  double steps, volts_off_line;
  FitSearch search;           ///< in which it is the best
  bool keeps_preheat = true;  ///< of the schedule
};

std::optional<Found> search_all(const FitSearch& search) {
  for (const WindowBound& bound : search.model.bounds)
    if (bound.judged == Judged::always) return std::nullopt;
  for (const double steps : {coarse_steps, fine_steps})
    for (const double volts : volts_off_line_of(search))
      if (const auto point = best_point(search, steps, volts)) return Found{*point, steps, volts, search};
  return std::nullopt;
}

/// Fits the passes of one seam, schedule by schedule, in a plan of its own.
class SeamFitter {
 public:
  SeamFitter(const Plan& plan, const Weldment& weldment, const Seam& seam, const FitOptions& options)
      : alone_(seam_alone(plan, weldment, seam)), options_(options) {
    fit_.report.weldment = weldment.id;
    fit_.report.seam = seam.id;
  }

  SeamFit run() {
    const Evaluation planned = evaluate(alone_.plan);
    const std::string main = main_schedule(planned);
    fit_.report.before = settings_of(main);
    fit_.report.has_settings = true;
    // What fails and what the plan states of the largest fillet: the quality level's limit is among the
    // fails.
    const bool has_largest = alone_.seam().leg_max_mm || alone_.seam().throat_max_mm;
    const bool is_broken =
        any_failed(planned.findings) || warns_of_preheat(planned.findings) ||
        (has_largest && !window_problem(alone_, main).keeps_limits(true)) ||
        (options_.margin_pct > 0 && !keeps_margin(options_, window_problem(alone_, main), true));
    if (is_broken && takes_existing(main, planned)) return std::move(fit_);
    for (const std::string& schedule : other_schedules(main)) {
      if (!passes_fail(planned, schedule) || fit_group(schedule, false)) continue;
      fit_.report.has_settings = false;
      return std::move(fit_);
    }
    fit_.report.has_settings = fit_group(main, true);
    if (fit_.report.has_settings) fit_.report.after = settings_of(main);
    fit_.report.is_changed = fit_.report.has_settings && !fit_.report.changes.empty();
    return std::move(fit_);
  }

 private:
  /// The one that lays most; of equals the later one.
  std::string main_schedule(const Evaluation& planned) const {
    std::string main;
    double most = -1;
    for (const std::string& schedule : alone_.seam().schedules) {
      double area = 0;
      for (const PassEvaluation& pass : planned.passes)
        if (pass.schedule == schedule) area += pass.deposit_area_mm2;
      if (area < most) continue;
      most = area;
      main = schedule;
    }
    return main;
  }

  std::vector<std::string> other_schedules(const std::string& main) const {
    std::vector<std::string> others;
    for (const std::string& schedule : alone_.seam().schedules)
      if (schedule != main && std::find(others.begin(), others.end(), schedule) == others.end())
        others.push_back(schedule);
    return others;
  }

  bool passes_fail(const Evaluation& planned, const std::string& schedule) const {
    std::vector<std::string> places = judged_places(alone_, passes_with(alone_.seam(), schedule));
    places.erase(places.begin());  // the seam's own
    return std::any_of(planned.findings.begin(), planned.findings.end(), [&](const Finding& finding) {
      return finding.severity == Severity::fail &&
             std::find(places.begin(), places.end(), finding.where) != places.end();
    });
  }

  /// Takes a schedule of the plan, unchanged, in place of `main`; false where none keeps all limits.
  bool takes_existing(const std::string& main, const Evaluation& planned) {
    const std::vector<FitSettings> fitting = schedules_that_fit(alone_, main, planned, options_);
    if (fitting.empty()) return false;
    for (const FitSettings& each : std::span(fitting).subspan(1))
      fit_.report.other_schedules.push_back(each.schedule);
    fit_.report.after = fitting.front();
    fit_.report.is_existing = fit_.report.is_changed = true;
    return true;
  }

  FitSettings settings_of(const std::string& main) const {
    return fit_settings(alone_, evaluate(alone_.plan), main);
  }

  Interval with_margin(Interval limit) const {
    const double share = options_.margin_pct / 100;
    if (limit.lower) *limit.lower *= 1 + share;
    if (limit.upper) *limit.upper *= 1 - share;
    return limit;
  }

  FitSearch search_of(const std::string& schedule, const WindowProblem& problem, const Evaluation& evaluation,
                      bool with_size) {
    const PlanIndex index(alone_.plan);
    const int first = problem.passes.front();
    const PassFacts facts = pass_facts(alone_.plan, index, alone_.weldment(), alone_.seam(), first);
    const ScheduleLimits limits = facts.schedule.limits.value_or(ScheduleLimits{});
    FitSearch search;
    search.model = problem.model;
    search.limits = problem.limits;
    search.rates = fit_rates(facts);
    search.options = options_;
    for (WindowBound& bound : search.model.bounds) bound.bound *= margin_factor(options_, bound);
    search.present =
        present_point(facts, evaluation.passes[static_cast<std::size_t>(first - 1)], problem.passes.size());
    search.voltage_V = with_margin(limits.voltage_V.value_or(Interval{}));
    bool assumed = false;
    const auto range = [&](FitHold axis, const std::optional<Interval>& limit, double setting) {
      if (options_.is_held(axis)) return WindowRange{setting, setting};
      return range_of(limit ? std::optional(with_margin(*limit)) : limit, setting, assumed);
    };
    search.wire_feed_speed_m_min =
        range(FitHold::wire_feed, limits.wire_feed_speed_m_min, facts.schedule.wire_feed_speed_m_min);
    search.travel_speed_mm_s =
        range(FitHold::travel_speed, limits.travel_speed_mm_s, facts.schedule.travel_speed_mm_s);
    if (assumed) fit_.assumed_ranges.push_back(schedule);
    search.least_passes = search.most_passes = search.present.passes;
    if (!with_size || options_.is_held(FitHold::passes)) return search;
    search.least_passes = 1;
    search.most_passes = passes_worth_trying(search, evaluation.seams.front().area_needed_mm2);
    return search;
  }

  std::optional<Found> found_with_margin(const FitSearch& search, const Evaluation& evaluation,
                                         int pass) const {
    if (guarded_decision(alone_.plan)) {
      const PlanIndex index(alone_.plan);
      FitSearch guarded = search;
      draw_in(guarded.model, pass_facts(alone_.plan, index, alone_.weldment(), alone_.seam(), pass),
              evaluation.passes[static_cast<std::size_t>(pass - 1)], evaluation.seams.front());
      if (auto found = search_all(guarded)) return found;
    }
    return search_all(search);
  }

  /// Inside the schedule's preheat where settings are; else needing no more preheat than the planned ones do;
  /// else wherever the limits are kept.
  std::optional<Found> found_by_preheat(const FitSearch& search, const Evaluation& evaluation,
                                        int pass) const {
    if (auto found = found_with_margin(search, evaluation, pass)) return found;
    const auto& needed = evaluation.passes[static_cast<std::size_t>(pass - 1)].preheat_needed_C;
    for (const double most_C : {needed.value_or(0), std::numeric_limits<double>::infinity()}) {
      FitSearch eased = search;
      allow_preheat(eased, most_C);
      if (auto found = found_with_margin(eased, evaluation, pass)) {
        found->keeps_preheat = false;
        return found;
      }
    }
    return std::nullopt;
  }

  /// Without a warning of the estimated hardness where settings are; else with one.
  std::optional<Found> found_by_estimates(const FitSearch& search, const Evaluation& evaluation,
                                          int pass) const {
    if (auto found = found_by_preheat(search, evaluation, pass)) return found;
    FitSearch eased = search;
    return allow_hardness(eased) ? found_by_preheat(eased, evaluation, pass) : std::nullopt;
  }

  bool fit_group(const std::string& schedule, bool with_size) {
    WindowProblem problem = window_problem(alone_, schedule);
    if (!with_size) drop_size_bounds(problem);
    const Evaluation evaluation = evaluate(alone_.plan);
    const FitSearch search = search_of(schedule, problem, evaluation, with_size);
    const auto found = found_by_estimates(search, evaluation, problem.passes.front());
    const bool keeps_limits = problem.keeps_limits(true) && keeps_margin(options_, problem, true);
    if (!found) {
      if (keeps_limits) return true;  // as planned, it keeps the limits outside of the assumed range
      FitSearch eased = search;
      allow_preheat(eased, std::numeric_limits<double>::infinity());
      allow_hardness(eased);
      fit_.report.conflicts = conflicting_limits(eased);
      return false;
    }
    if (with_size)
      fit_.report.binding = binding_limits(found->search, found->point, found->steps, found->volts_off_line);
    const double planned = fit_measure(options_.objective, search.rates, search.present);
    const double fitted = fit_measure(options_.objective, search.rates, found->point);
    fit_.is_short_of_preheat = fit_.is_short_of_preheat || !found->keeps_preheat;
    const bool cures_preheat = found->keeps_preheat && warns_of_preheat(evaluation.findings);
    if (keeps_limits && !cures_preheat && !(fitted < planned * (1 - worthwhile))) return true;
    apply_settings(*find_by_id(alone_.plan.schedules, schedule), found->point);
    set_passes(alone_.seam().schedules, schedule, schedule, found->point.passes);
    fit_.report.changes.push_back({schedule, found->point});
    return true;
  }

  SeamAlone alone_;
  const FitOptions& options_;
  SeamFit fit_;
};

}  // namespace

void apply_settings(Schedule& schedule, const FitPoint& settings) {
  schedule.wire_feed_speed_m_min = settings.wire_feed_speed_m_min;
  schedule.arc_voltage_V = settings.arc_voltage_V;
  schedule.travel_speed_mm_s = settings.travel_speed_mm_s;
  set_stated_current(schedule, settings.current_A);
}

void set_passes(std::vector<std::string>& schedules, const std::string& from, const std::string& to,
                int passes) {
  std::vector<std::string> result;
  std::size_t after_last = 0;
  int placed = 0;
  for (const std::string& schedule : schedules) {
    if (schedule != from) {
      result.push_back(schedule);
      continue;
    }
    if (placed >= passes) continue;
    result.push_back(to);
    ++placed;
    after_last = result.size();
  }
  const auto more = static_cast<std::size_t>(std::max(0, passes - placed));
  result.insert(result.begin() + static_cast<std::ptrdiff_t>(after_last), more, to);
  schedules = std::move(result);
}

SeamFit fit_seam(const Plan& plan, const Weldment& weldment, const Seam& seam, const FitOptions& options) {
  return SeamFitter(plan, weldment, seam, options).run();
}

}  // namespace seamtakt
