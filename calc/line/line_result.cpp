#include "line/line_result.hpp"

#include <algorithm>
#include <numeric>

#include "cell/timeline/cell_model.hpp"
#include "line/flow_recurrence.hpp"
#include "line/levelling.hpp"
#include "line/line_calendar.hpp"
#include "line/line_clock.hpp"
#include "line/order_times.hpp"
#include "line/unwelded.hpp"

namespace seamtakt {

namespace {

/// Services that all runs of one line may have: some tenths of a second.
constexpr double most_services = 2e6;

/// Released orders, and which weldment of the line's times each is.
struct Units {
  std::vector<Order> orders;
  std::vector<int> weldments;
  std::vector<std::uint32_t> random_stream_id;
};

std::vector<std::string> weldments_of(const Release& release) {
  std::vector<std::string> ids;
  const auto add = [&](const std::string& id) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  };
  for (const Order& order : release.orders) add(order.weldment);
  return ids;
}

/// As the cycles have it; a line without a stage for the cell needs none, and its units are unfinished all
/// the same where the plan's robots leave seams out.
UnweldedWeldments unwelded_weldments(const Plan& plan, const Evaluation& evaluation,
                                     const std::vector<std::string>& ids, const LineTimes& times) {
  UnweldedWeldments unwelded;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    UnweldedSeams seams;
    if (!times.cell_loads().empty()) {
      const CycleResult& cycle = times.cell_loads()[i].cycle;
      seams = {static_cast<int>(cycle.unwelded.size()), cycle.robot_seams};
    } else if (plan.cell && !plan.cell->robots.empty()) {
      const CompiledCell compiled = compile_cell(plan, *find_by_id(plan.weldments, ids[i]), evaluation);
      seams = {static_cast<int>(compiled.unwelded.size()), compiled.robot_seams};
    }
    if (seams.seams > 0) unwelded[ids[i]] = seams;
  }
  return unwelded;
}

class Day {
 public:
  Day(const Plan& plan, const Evaluation& evaluation, const Release& release, const LineRequest& request)
      : given_(release),
        request_(request),
        ids_(weldments_of(release)),
        times_(
            plan, evaluation, ids_, [&](const Weldment& weldment) { return request.cycle_of(weldment); },
            result_.findings),
        unwelded_(unwelded_weldments(plan, evaluation, ids_, times_)),
        release_(without_unwelded(release, unwelded_)) {
    const Line& line = *plan.line;
    pull_ = line.pull;
    result_.takt_s = line.takt_s;
    if (line.takt_s) result_.takt_limit_s = *line.takt_s * line.planning_pct / 100;
    result_.seed = result_.draw_seed = request.seed;
  }

  LineResult result() {
    result_.waiting = release_.waiting;
    add_findings(waiting_findings(release_, hours()));
    add_findings(unwelded_findings(release_, unwelded_));
    check_line_model(model_of(units_of(given_.released)), request_.plan_file);
    const Units all = repeated(units_of(given_.released), asked_units());
    result_.not_run = not_run_of(all);
    if (result_.takt_limit_s && result_.not_run > 0)
      result_.figures.takt_misses = static_cast<double>(result_.not_run);
    if (units_to_run() == 0) {
      if (request_.level) result_.levelled_orders = with_waiting({});
      return std::move(result_);
    }
    note_dues();
    note_pull();
    if (result_.not_run > 0) day_ = whole_day(all);
    Units day = units_of(release_.released);
    if (request_.level) day = levelled(day);
    run(repeated(day, units_to_run()));
    if (waits_for_carts()) result_.with_all_carts = figures_with_all_carts();
    return std::move(result_);
  }

 private:
  void add_findings(const Findings& findings) {
    result_.findings.insert(result_.findings.end(), findings.begin(), findings.end());
  }

  /// How many units are asked for, whether they are run or not.
  std::size_t asked_units() const { return request_.units > 0 ? request_.units : given_.released.size(); }
  std::size_t units_to_run() const { return asked_units() - result_.not_run; }

  std::size_t not_run_of(const Units& units) const {
    return static_cast<std::size_t>(
        std::count_if(units.orders.begin(), units.orders.end(),
                      [&](const Order& order) { return unwelded_.contains(order.weldment); }));
  }

  /// All units, with the times that they would take: of the cell with all its robots, where one is out.
  LineModel whole_day(const Units& units) const {
    if (!request_.with_all_robots) return model_of(units);
    const WholeCell whole = request_.with_all_robots();
    Findings unused;
    const LineTimes times(
        *whole.plan, whole.evaluation, ids_,
        [&](const Weldment& weldment) { return whole.cycle_of(weldment); }, unused);
    return times.model(units.weldments, units.random_stream_id, request_.changes);
  }

  const WorkHours* hours() const { return times_.hours().get(); }

  bool waits_for_carts() const {
    if (std::ranges::any_of(release_.released, [](const Order& order) { return order.available_s > 0; }))
      return true;
    return std::any_of(release_.waiting.begin(), release_.waiting.end(),
                       [](const WaitingUnit& unit) { return unit.unwelded_seams == 0; });
  }

  LineFigures figures_with_all_carts() const {
    std::vector<Order> welded;
    for (const Order& order : given_.orders)
      if (!unwelded_.contains(order.weldment)) welded.push_back(order);
    return figures(model_of(repeated(units_of(welded), request_.units > 0 ? units_to_run() : welded.size())));
  }

  Units units_of(const std::vector<Order>& orders) const {
    Units units{orders, {}, {}};
    for (std::size_t i = 0; i < orders.size(); ++i) {
      const auto at = std::find(ids_.begin(), ids_.end(), orders[i].weldment);
      units.weldments.push_back(static_cast<int>(at - ids_.begin()));
      units.random_stream_id.push_back(orders[i].number);
    }
    return units;
  }

  /// The day again and again; a serial of the second round ends in "/2".
  Units repeated(const Units& day, std::size_t count) const {
    Units units;
    for (std::size_t i = 0; i < count && !day.orders.empty(); ++i) {
      const std::size_t at = i % day.orders.size(), round = i / day.orders.size();
      units.orders.push_back(day.orders[at]);
      if (round > 0) begin_round(units.orders.back(), round);
      units.weldments.push_back(day.weldments[at]);
      units.random_stream_id.push_back(day.random_stream_id[at] +
                                       static_cast<std::uint32_t>(round * given_.orders.size()));
    }
    return units;
  }

  /// What comes again isn't ordered for a time, and its cart is there.
  static void begin_round(Order& order, std::size_t round) {
    order.serial += "/" + std::to_string(round + 1);
    order.due_key = never_due;
    order.available_s = 0;
  }

  LineModel model_of(const Units& units) const {
    LineModel model = times_.model(units.weldments, units.random_stream_id, request_.changes);
    OrderTimes times = order_times(units.orders, hours());
    model.due_s = std::move(times.due_s);
    model.available_s = std::move(times.available_s);
    return model;
  }

  /// Services of a run, and the stops to expect in them.
  static double draws_of(const LineModel& model) {
    return static_cast<double>(model.work_s.size()) + expected_stops(model);
  }

  int runs_for(const LineModel& model) const {
    const double services = 1 + draws_of(model) + (day_ ? draws_of(*day_) : 0);
    return std::clamp(static_cast<int>(most_services / services), 1, std::max(request_.runs, 1));
  }

  std::optional<TaktGoal> goal_of(const LineModel& model) const {
    if (!result_.takt_limit_s) return std::nullopt;
    return takt_goal(model, *result_.takt_limit_s);
  }

  LineFigures figures(const LineModel& model) const {
    LineFigures figures =
        line_figures(model, goal_of(model), request_.seed, runs_for(model), day_ ? &*day_ : nullptr);
    if (result_.takt_limit_s) figures.takt_misses += static_cast<double>(result_.not_run);
    return figures;
  }

  void note_dues() {
    if (dues_kept(release_.released)) return;
    result_.findings.push_back(
        {"line.due.order", request_.level ? Severity::note : Severity::warn, "orders", std::nullopt,
         std::nullopt, "",
         request_.level ? Sentence("line.due.order.levelled"_key) : Sentence("line.due.order"_key),
         "plan limit"});
  }

  /// A plan with a takt that doesn't say how assembly takes the units: they pile up behind the last stage,
  /// and hide later misses.
  void note_pull() {
    if (!result_.takt_s || !pull_.empty()) return;
    late_findings_.push_back({"line.pull.free", Severity::note, "line", std::nullopt, std::nullopt, "",
                              Sentence("line.pull.free"_key), "plan"});
  }

  /// Whoever hands the sequence on loses no unit: what waits is built once it can be.
  std::vector<Order> with_waiting(std::vector<Order> orders) const {
    for (const WaitingUnit& unit : release_.waiting)
      orders.insert(std::upper_bound(orders.begin(), orders.end(), unit.order,
                                     [](const Order& a, const Order& b) { return a.due_key < b.due_key; }),
                    unit.order);
    return orders;
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
      after.random_stream_id.push_back(day.random_stream_id[at]);
    }
    for (const Order& order : day.orders) result_.order_before.push_back(order.serial);
    result_.levelled_orders = with_waiting(after.orders);
    result_.levelled = Compared{figures(model_of(repeated(day, units_to_run()))),
                                figures(model_of(repeated(after, units_to_run())))};
    return after;
  }

  void run(const Units& units) {
    const LineModel model = model_of(units);
    result_.certain = is_certain(model) && (!day_ || is_certain(*day_));
    result_.figures = figures(model);
    result_.draw_seed = result_.figures.median_seed;
    LineTrace trace;
    const LineRun run = run_calendar(model, result_.draw_seed, trace);
    result_.makespan_s = ends_s(run.makespan_s);
    const double day_s = day_ ? run_line(*day_, result_.draw_seed).makespan_s : 0;
    result_.throughput_per_h = day_ ? finished_per_h(run, day_s) : throughput_per_h(run);
    result_.throughput_overall_per_h = finished_per_h(run, day_s);
    result_.worst_window = worst_window(run, request_.window_units);
    if (result_.worst_window) {
      result_.worst_window->start_s = ends_s(result_.worst_window->start_s);
      result_.worst_window->end_s = ends_s(result_.worst_window->end_s);
    }
    add_units(units, run, trace);
    add_stages(model, run);
    if (const auto goal = goal_of(model)) add_misses(model, *goal, run, trace);
    if (!day_) result_.cures = cures(model, goal_of(model), request_.seed, runs_for(model));
    judge_takt(model);
    if (hours()) add_clock(model, run, units.orders, result_);
    add_findings(late_findings_);
  }

  /// Working time as elapsed time.
  double ends_s(double work_s) const { return hours() ? hours()->end_s(work_s) : work_s; }
  double begins_s(double work_s) const { return hours() ? hours()->begin_s(work_s) : work_s; }

  void add_units(const Units& units, const LineRun& run, const LineTrace& trace) {
    double flow_s = 0;
    for (std::size_t i = 0; i < units.orders.size(); ++i) {
      const Order& order = units.orders[i];
      const UnitTimes& times = run.units[i];
      result_.units.push_back({order.serial,
                               order.weldment,
                               order.due,
                               begins_s(times.start_s),
                               ends_s(times.end_s),
                               times.scrapped,
                               times.reworks,
                               std::nullopt,
                               {},
                               times.end_s});
      // A unit without work that comes at a shift's end leaves where it came.
      UnitResult& unit = result_.units.back();
      unit.end_s = std::max(unit.end_s, unit.start_s);
      result_.scrapped += times.scrapped;
      result_.reworks += times.reworks;
      flow_s += times.end_s - times.start_s;
    }
    result_.flow_time_mean_s = flow_s / static_cast<double>(units.orders.size());
    if (run.makespan_s <= 0) return;
    result_.units_in_line = trace.units_in_line_s / run.makespan_s;
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
      if (model.stages[j].people >= 0) stage.no_person_pct = pct(times.no_person_s);
      stage.starved_pct = std::max(0.0, 100 - stage.busy_pct - stage.blocked_pct - stage.stopped_pct -
                                            stage.no_person_pct.value_or(0));
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
      unit.wanted_s = ends_s(miss.wanted_s);
      unit.missed_by_s = miss.left_s - miss.wanted_s;
      unit.cause = Sentence("line.miss"_key, {{"cause", word_of(miss.cause)}, {"stage", stage}});
      auto group =
          std::find_if(result_.misses_by_cause.begin(), result_.misses_by_cause.end(),
                       [&](const MissGroup& g) { return g.stage == stage && g.cause == miss.cause; });
      if (group == result_.misses_by_cause.end())
        group = result_.misses_by_cause.insert(group, {stage, miss.cause, 0, 0});
      ++group->misses;
      group->lost_s += miss.left_s - miss.wanted_s;
    }
    std::stable_sort(result_.misses_by_cause.begin(), result_.misses_by_cause.end(),
                     [](const MissGroup& a, const MissGroup& b) { return a.misses > b.misses; });
  }

  /// What the line gives where nobody holds it: assembly that pulls takes no more than its takt, so that any
  /// miss would look as if the line were too slow for it.
  double given_per_h(const LineModel& model) const {
    if (!model.pull) return result_.figures.throughput_per_h;
    LineModel free = model;
    free.pull.reset();
    return figures(free).throughput_per_h;
  }

  void judge_takt(const LineModel& model) {
    if (!result_.takt_limit_s || result_.units.size() < 2) return;
    const double wanted_per_h = 3600 / *result_.takt_limit_s, given_per_h = this->given_per_h(model);
    if (given_per_h < wanted_per_h * (1 - 1e-9))
      result_.findings.push_back(
          {"line.takt.rate", Severity::fail, "line", given_per_h, wanted_per_h, "1/h",
           Sentence("line.takt.rate"_key,
                    {{"given", UnitValue{given_per_h, "1/h"}}, {"wanted", UnitValue{wanted_per_h, "1/h"}}}),
           "plan limit"});
    else if (result_.figures.takt_misses > 0)
      result_.findings.push_back(
          {"line.takt.missed", Severity::warn, "line", result_.figures.takt_misses, 0, "",
           Sentence("line.takt.missed"_key, {{"late", UnitValue{result_.figures.takt_misses, "", 3}},
                                             {"units", result_.units.size() + result_.not_run}}),
           "plan limit"});
  }

  const Release& given_;
  const LineRequest& request_;
  LineResult result_;
  std::vector<std::string> ids_;
  LineTimes times_;
  UnweldedWeldments unwelded_;
  std::string pull_;
  Findings late_findings_;        ///< notes that follow the others
  Release release_;               ///< without the units of unwelded weldments
  std::optional<LineModel> day_;  ///< all units, where some aren't run
};

}  // namespace

LineResult simulate_line(const Plan& plan, const Evaluation& evaluation, const Release& release,
                         const LineRequest& request) {
  return Day(plan, evaluation, release, request).result();
}

}  // namespace seamtakt
