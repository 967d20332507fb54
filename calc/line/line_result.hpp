#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "line/line_figures.hpp"
#include "line/line_times.hpp"
#include "line/release.hpp"
#include "line/takt_count.hpp"

namespace seamtakt {

/// The plan with all its robots, where the line runs without one of them.
struct WholeCell {
  const Plan* plan = nullptr;
  Evaluation evaluation;
  std::function<CycleResult(const Weldment&)> cycle_of;
};

struct LineRequest {
  std::string plan_file = "plan";  ///< for messages
  std::size_t units = 0;           ///< the orders again and again until so many; 0: each once
  std::uint64_t seed = 1;
  int runs = 200;  ///< with different random_stream_id, for means and cures; fewer for long runs
  bool level = false;
  int window_units = 10;
  ConsumableChanges changes;
  /// A weldment's cycle in the cell: order given or best.
  std::function<CycleResult(const Weldment&)> cycle_of;
  /// Asked where a robot is out and units therefore aren't run: how long all orders take with it.
  std::function<WholeCell()> with_all_robots;
};

/// Shares of the stage's servers' working time from 0 to the makespan; together 100.
struct StageResult {
  std::string stage;
  int servers = 1;
  double busy_pct = 0;                    ///< work
  double blocked_pct = 0;                 ///< done, and the unit can't leave
  double starved_pct = 0;                 ///< no unit
  double stopped_pct = 0;                 ///< repairs, wire, tip and fixture changes
  std::optional<double> no_person_pct{};  ///< a unit, and nobody to work at it; empty: it needs no people
};

struct UnitResult {
  std::string serial, weldment, due;
  double start_s = 0, end_s = 0;  ///< elapsed since the start, nights included
  bool scrapped = false;
  int reworks = 0;
  std::optional<double> wanted_s;          ///< of a unit that missed takt: when it was due, elapsed
  Sentence cause;                          ///< of the miss: "repair at cell"
  double left_work_s = 0;                  ///< its end in working time
  std::optional<double> missed_by_s{};     ///< of a unit that missed takt: working time that it came late
  std::string start_clock{}, end_clock{};  ///< "2026-11-25T06:00:30"; empty without a calendar
  std::optional<double> late_s{};          ///< of an order that is late: on the clock, after it was due
  std::optional<double> late_pct{};        ///< share of the runs in which it is late; empty: not judged
};

struct MissGroup {
  std::string stage;
  MissCause cause = MissCause::work;
  int misses = 0;
  double lost_s = 0;
};

/// The line before and after a change of the sequence or the release.
struct Compared {
  LineFigures before, after;
};

/// The result of a day on the line. `figures` are over all runs and decide; times, shares and causes of units
/// and stages are those of one draw, the median one by throughput, whose seed is `draw_seed`.
///
/// Units of a weldment with unwelded seams aren't run: they wait, and line.weldment.unwelded (fail) says so.
/// Where part of the day isn't run because of them, throughput is finished_per_h() over the time that all
/// orders would take: with all robots where one is out, else with what robots can weld of each unit. Takt
/// misses of `figures` count a unit that isn't run as one, and there are no improvements: the seams come
/// first.
///
/// With a calendar, times of units and the makespan are elapsed ones from its start, so that start + time is
/// the clock's; rates, shares, takt and times in the line count working time.
struct LineResult {
  std::vector<UnitResult> units;  ///< in the order of release
  std::size_t not_run = 0;        ///< units that aren't run for unwelded seams
  LineFigures figures;            ///< over the runs
  bool certain = false;           ///< the line is deterministic: one run is enough
  std::uint64_t seed = 1;         ///< of the first run
  std::uint64_t draw_seed = 1;
  double makespan_s = 0;
  double throughput_per_h = 0;          ///< throughput_per_h() of the draw, finished_per_h() as above
  double throughput_overall_per_h = 0;  ///< units that left right / makespan
  std::optional<double> takt_s;         ///< the plan's
  std::optional<double> takt_limit_s;   ///< its planning share, which is what units are judged on
  std::optional<int> takt_misses, intervals_over_takt;
  std::optional<double> takt_lost_s;
  std::vector<MissGroup> misses_by_cause;  ///< most first
  std::optional<WorstWindow> worst_window;
  std::vector<StageResult> stages;
  std::string bottleneck;       ///< the stage whose servers are busy or stopped for the largest share
  double units_in_line = 0;     ///< mean over the makespan, integrated over time
  double flow_time_mean_s = 0;  ///< from start to end, scrap too
  int scrapped = 0, reworks = 0;
  std::vector<Improvement> cures;
  std::vector<WaitingUnit> waiting;
  std::optional<LineFigures> with_all_carts;  ///< had no unit waited for its cart
  std::optional<Compared> levelled;
  std::vector<std::string> order_before;  ///< serials, where levelled
  /// The orders as levelled, each once; those of units that wait are the last of their due date. Empty where
  /// not levelled.
  std::vector<Order> levelled_orders;
  std::string calendar_start;           ///< "2026-11-25T06:00:00"; empty without a calendar
  std::string finished_clock;           ///< when the draw's last unit leaves
  std::string first_day;                ///< "2026-11-25"
  std::string first_day_clock;          ///< when its last shift ends
  std::vector<std::string> unfinished;  ///< serials of the draw that aren't out by then
  bool has_dues = false;                ///< orders are judged by their due dates
  Findings findings;
};

/// Runs the plan's line with the units that are released. `evaluation` is of this plan. InputError: the plan
/// has no line; a line that has no sense (check_line_model). Where no unit is run there are no figures but
/// misses, only the units that wait.
LineResult simulate_line(const Plan& plan, const Evaluation& evaluation, const Release& release,
                         const LineRequest& request);

}  // namespace seamtakt
