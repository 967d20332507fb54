#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "line/takt_count.hpp"

namespace seamtakt {

/// Figures of a line over runs with different random numbers (seed, seed + 1, ...).
struct LineFigures {
  int runs = 0;
  double throughput_per_h = 0, throughput_se_per_h = 0;  ///< mean, and its standard error
  /// A tenth of the runs is below the first, a tenth above the second: quantile() of the runs. Empty for
  /// one draw of many, which says nothing about the others.
  std::optional<double> throughput_p10_per_h, throughput_p90_per_h;
  double throughput_overall_per_h = 0;         ///< units that left right / makespan
  double takt_misses = 0, takt_misses_se = 0;  ///< 0 without takt
  double takt_lost_s = 0, makespan_s = 0;      ///< the makespan on the clock, from the calendar's start
  double working_s = 0;                        ///< working time within the makespan
  double late_orders = 0;         ///< out after they are due, or scrap; 0 without calendar or dues
  double finished_first_day = 0;  ///< units out by the end of the first day; 0 without calendar
  /// Of each unit the share of runs in which it is late; empty where none is due.
  std::vector<double> late_share{};
  /// The median run by throughput: of an even number the lower one, of equal ones the first.
  std::uint64_t median_seed = 0;
};

/// The quantile of a sample by linear interpolation between its order statistics: at the share p it is
/// x_k + (h - k)(x_{k+1} - x_k), h = 1 + (n - 1)p, k = floor(h). `values` isn't empty, p from 0 to 1.
/// Source: hyndman-fan-1996, definition 7.
double quantile(std::vector<double> values, double p);

/// `goal`: demand of the assembly line; empty: no takt. A deterministic line runs once. `day`: all the
/// units of which the model runs a part; the throughput of a run then is finished_per_h() over that day with
/// the same random_stream_id, else throughput_per_h().
LineFigures line_figures(const LineModel& model, const std::optional<TaktGoal>& goal, std::uint64_t seed,
                         int runs, const LineModel* day = nullptr);

/// The line with one thing changed.
struct Improvement {
  std::string stage;
  /// "time -10 %", "1 server more", "buffer 1 more", "no stops", "all right first time", "1 person more"
  Sentence change;
  LineFigures figures;
  double throughput_change_per_h = 0;
  double throughput_change_se_per_h =
      0;  ///< of the paired differences: each run gets the same random numbers
  double takt_misses_change = 0;
};

/// Each stage's time, servers, buffer, stops and yield, and each group's people (its id is in `stage`)
/// changed one at a time and the line run again with the same random_stream_id. Best first: fewest misses,
/// then most throughput; equal ones in the order of the stages. Changes without effect at a stage (a buffer
/// after the last one, stops where there are none, time where there is none) are left out.
std::vector<Improvement> cures(const LineModel& model, const std::optional<TaktGoal>& goal,
                               std::uint64_t seed, int runs);

}  // namespace seamtakt
