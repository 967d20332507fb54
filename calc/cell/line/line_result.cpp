#include "cell/line/line_result.hpp"

#include <algorithm>
#include <numeric>

#include "base/units.hpp"
#include "cell/line/levelling.hpp"
#include "cell/line/line_calendar.hpp"

namespace seamtakt {

namespace {

/// Services that all runs of one line may have: some tenths of a second.
constexpr double most_services = 2e6;

/// Released orders, and which weldment of the line's times each is.
struct Units {
  std::vector<Order> orders;
  std::vector<int> weldments;
  std::vector<std::uint32_t> luck;
};

std::vector<std::string> weldments_of(const Release& release) {
  std::vector<std::string> ids;
  const auto add = [&](const std::string& id) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  };
  for (const Order& order : release.orders) add(order.weldment);
  return ids;
}

class Day {
 public:
  Day(const Plan& plan, const Evaluation& evaluation, const Release& release, const LineRequest& request)
      : release_(release),
        request_(request),
        ids_(weldments_of(release)),
        times_(
            plan, evaluation, ids_, [&](const Weldment& weldment) { return request.cycle_of(weldment); },
            result_.findings) {
    const Line& line = *plan.line;
    result_.takt_s = line.takt_s;
    if (line.takt_s) result_.takt_limit_s = *line.takt_s * line.planning_pct / 100;
  }

  LineResult result() {
    result_.waiting = release_.waiting;
    const Findings waiting = waiting_findings(release_);
    result_.findings.insert(result_.findings.end(), waiting.begin(), waiting.end());
    check_line_model(model_of(units_of(release_.released)), request_.plan_file);
    if (release_.released.empty()) return std::move(result_);
    note_dues();
    Units day = units_of(release_.released);
    if (request_.level) day = levelled(day);
    run(repeated(day));
    if (!release_.waiting.empty())
      result_.with_all_carts = figures(model_of(repeated(units_of(release_.orders))));
    return std::move(result_);
  }

 private:
  Units units_of(const std::vector<Order>& orders) const {
    Units units{orders, {}, {}};
    for (std::size_t i = 0; i < orders.size(); ++i) {
      const auto at = std::find(ids_.begin(), ids_.end(), orders[i].weldment);
      units.weldments.push_back(static_cast<int>(at - ids_.begin()));
      units.luck.push_back(orders[i].number);
    }
    return units;
  }

  /// The day again and again; a serial of the second round ends in "/2".
  Units repeated(const Units& day) const {
    if (request_.units == 0) return day;
    Units units;
    for (std::size_t i = 0; i < request_.units; ++i) {
      const std::size_t at = i % day.orders.size(), round = i / day.orders.size();
      units.orders.push_back(day.orders[at]);
      if (round > 0) units.orders.back().serial += "/" + std::to_string(round + 1);
      units.weldments.push_back(day.weldments[at]);
      units.luck.push_back(day.luck[at] + static_cast<std::uint32_t>(round * release_.orders.size()));
    }
    return units;
  }

  LineModel model_of(const Units& units) const {
    return times_.model(units.weldments, units.luck, request_.changes);
  }

  int runs_for(const LineModel& model) const {
    const double services = static_cast<double>(std::max<std::size_t>(model.work_s.size(), 1));
    return std::clamp(static_cast<int>(most_services / services), 1, std::max(request_.runs, 1));
  }

  std::optional<TaktGoal> goal_of(const LineModel& model) const {
    if (!result_.takt_limit_s) return std::nullopt;
    return takt_goal(model, *result_.takt_limit_s);
  }

  LineFigures figures(const LineModel& model) const {
    return line_figures(model, goal_of(model), request_.seed, runs_for(model));
  }

  void note_dues() {
    if (dues_kept(release_.released)) return;
    result_.findings.push_back(
        {"line.due.order", request_.level ? Severity::note : Severity::warn, "orders", std::nullopt,
         std::nullopt, "",
         request_.level
             ? "The given order has units behind others that are due later: levelling puts that right."
             : "The order has units behind others that are due later.",
         "plan limit"});
  }

  Units levelled(const Units& day) {
    LevelRequest level;
    level.goal = goal_of(model_of(day));
    level.seed = request_.seed;
    level.changes = request_.changes;
    const std::vector<int> sequence = level_orders(day.orders, day.weldments, times_, level);
    Units after;
    for (const int i : sequence) {
      const auto at = static_cast<std::size_t>(i);
      after.orders.push_back(day.orders[at]);
      after.weldments.push_back(day.weldments[at]);
      after.luck.push_back(day.luck[at]);
    }
    for (const Order& order : day.orders) result_.order_before.push_back(order.serial);
    result_.levelled = Compared{figures(model_of(repeated(day))), figures(model_of(repeated(after)))};
    return after;
  }

  void run(const Units& units) {
    const LineModel model = model_of(units);
    LineTrace trace;
    const LineRun run = run_calendar(model, request_.seed, trace);
    result_.makespan_s = run.makespan_s;
    result_.throughput_per_h = throughput_per_h(run);
    result_.worst_window = worst_window(run, request_.window_units);
    add_units(units, run, trace);
    add_stages(model, run);
    if (const auto goal = goal_of(model)) add_misses(model, *goal, run, trace);
    result_.figures = figures(model);
    result_.cures = cures(model, goal_of(model), request_.seed, runs_for(model));
    judge_takt();
  }

  void add_units(const Units& units, const LineRun& run, const LineTrace& trace) {
    double flow_s = 0;
    for (std::size_t i = 0; i < units.orders.size(); ++i) {
      const Order& order = units.orders[i];
      const UnitTimes& times = run.units[i];
      result_.units.push_back({order.serial, order.weldment, order.due, times.start_s, times.end_s,
                               times.scrapped, times.reworks, std::nullopt, ""});
      result_.scrapped += times.scrapped;
      result_.reworks += times.reworks;
      flow_s += times.end_s - times.start_s;
    }
    result_.flow_time_mean_s = flow_s / static_cast<double>(units.orders.size());
    if (run.makespan_s <= 0) return;
    result_.units_in_line = trace.units_in_line_s / run.makespan_s;
    const auto good = static_cast<double>(units.orders.size() - static_cast<std::size_t>(result_.scrapped));
    result_.throughput_overall_per_h = 3600 * good / run.makespan_s;
  }

  void add_stages(const LineModel& model, const LineRun& run) {
    double most_pct = -1;
    for (std::size_t j = 0; j < model.stage_count(); ++j) {
      const StageTimes& times = run.stages[j];
      const double whole_s = model.stages[j].servers * run.makespan_s;
      const auto pct = [&](double time_s) { return whole_s > 0 ? 100 * time_s / whole_s : 0; };
      StageResult stage{
          model.stages[j].id, model.stages[j].servers, pct(times.work_s), pct(times.blocked_s), 0,
          pct(times.stop_s)};
      stage.starved_pct = std::max(0.0, 100 - stage.busy_pct - stage.blocked_pct - stage.stopped_pct);
      const double used_pct = stage.busy_pct + stage.stopped_pct;
      if (used_pct > most_pct) result_.bottleneck = stage.stage;
      most_pct = std::max(most_pct, used_pct);
      result_.stages.push_back(stage);
    }
  }

  void add_misses(const LineModel& model, const TaktGoal& goal, const LineRun& run, const LineTrace& trace) {
    const TaktCount count = count_takt(run, goal);
    result_.takt_misses = count.misses;
    result_.takt_lost_s = count.lost_s;
    result_.intervals_over_takt = count.intervals_over_takt;
    for (const TaktMiss& miss : explain_misses(run, trace, model.stage_count(), goal)) {
      const std::string& stage = model.stages[static_cast<std::size_t>(miss.stage)].id;
      UnitResult& unit = result_.units[miss.unit];
      unit.wanted_s = miss.wanted_s;
      unit.cause = std::string(to_string(miss.cause)) + " at " + stage;
      auto group = std::find_if(
          result_.misses_by_cause.begin(), result_.misses_by_cause.end(),
          [&](const MissGroup& g) { return g.stage == stage && g.cause == to_string(miss.cause); });
      if (group == result_.misses_by_cause.end())
        group = result_.misses_by_cause.insert(group, {stage, to_string(miss.cause), 0, 0});
      ++group->misses;
      group->lost_s += miss.left_s - miss.wanted_s;
    }
    std::stable_sort(result_.misses_by_cause.begin(), result_.misses_by_cause.end(),
                     [](const MissGroup& a, const MissGroup& b) { return a.misses > b.misses; });
  }

  void judge_takt() {
    if (!result_.takt_limit_s || result_.units.size() < 2) return;
    const double wanted_per_h = 3600 / *result_.takt_limit_s, given_per_h = result_.throughput_per_h;
    if (given_per_h < wanted_per_h * (1 - 1e-9))
      result_.findings.push_back({"line.takt.rate", Severity::fail, "line", given_per_h, wanted_per_h, "1/h",
                                  "The line gives " + rounded_text(given_per_h, 4) +
                                      " units an hour; the takt wants " + rounded_text(wanted_per_h, 4) + ".",
                                  "plan limit"});
    else if (*result_.takt_misses > 0)
      result_.findings.push_back({"line.takt.missed", Severity::warn, "line", *result_.takt_misses, 0, "",
                                  "On the whole the line keeps takt, but " +
                                      std::to_string(*result_.takt_misses) + " of " +
                                      std::to_string(result_.units.size()) + " units come late.",
                                  "plan limit"});
  }

  const Release& release_;
  const LineRequest& request_;
  LineResult result_;
  std::vector<std::string> ids_;
  LineTimes times_;
};

}  // namespace

LineResult simulate_line(const Plan& plan, const Evaluation& evaluation, const Release& release,
                         const LineRequest& request) {
  return Day(plan, evaluation, release, request).result();
}

}  // namespace seamtakt
