#include "line/takt_count.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

/// End times are sums: a unit that comes on time to within rounding is on time.
double tolerance_s(double time_s) {
  return 1e-9 * std::max(1.0, time_s);
}

std::vector<std::uint32_t> in_order_of_leaving(const LineRun& run) {
  std::vector<std::uint32_t> units;
  units.reserve(run.units.size());
  for (std::uint32_t i = 0; i < run.units.size(); ++i)
    if (!run.units[i].scrapped) units.push_back(i);
  const auto earlier = [&](std::uint32_t a, std::uint32_t b) {
    return run.units[a].end_s < run.units[b].end_s;
  };
  if (!std::is_sorted(units.begin(), units.end(), earlier))
    std::stable_sort(units.begin(), units.end(), earlier);
  return units;
}

/// Calls `missed(unit, wanted_s)` for each miss.
template <class Missed>
TaktCount walk(const LineRun& run, const TaktGoal& goal, Missed&& missed) {
  TaktCount count;
  double taken_s = goal.first_s - goal.takt_s;
  std::optional<double> left_before_s;
  for (const std::uint32_t unit : in_order_of_leaving(run)) {
    const double left_s = run.units[unit].end_s, wanted_s = taken_s + goal.takt_s;
    if (left_before_s && left_s - *left_before_s > goal.takt_s + tolerance_s(left_s))
      ++count.intervals_over_takt;
    if (left_s > wanted_s + tolerance_s(left_s)) {
      ++count.misses;
      count.lost_s += left_s - wanted_s;
      missed(unit, wanted_s);
    }
    taken_s = std::max(left_s, wanted_s);
    left_before_s = left_s;
  }
  return count;
}

constexpr std::size_t causes = static_cast<std::size_t>(MissCause::work) + 1;

/// Time by stage and kind that a chain spent within a window. The takt of an assembly line that pulls is the
/// place behind the last stage.
struct Spent {
  std::vector<double> by_stage[causes];
  double total_s[causes] = {};

  explicit Spent(std::size_t stages) {
    for (auto& list : by_stage) list.assign(stages + 1, 0.0);
  }
  void add(MissCause kind, int stage, double time_s) {
    by_stage[static_cast<int>(kind)][static_cast<std::size_t>(stage)] += time_s;
    total_s[static_cast<int>(kind)] += time_s;
  }
  int worst_stage(MissCause kind) const {
    const auto& list = by_stage[static_cast<int>(kind)];
    return static_cast<int>(std::max_element(list.begin(), list.end() - 1) - list.begin());
  }
};

/// Of each activity's work, what counts as rework: all of a visit that the unit had to make again and of a
/// unit that is scrapped; of its last visit to the stage what that takes more (or less) than the first. So a
/// unit that leaves right has the work of one visit a stage, and the rest is rework.
std::vector<double> rework_of(const LineRun& run, const LineTrace& trace, std::size_t stages) {
  const auto visited = [&](const Activity& activity) {
    return activity.unit * stages + static_cast<std::size_t>(activity.stage);
  };
  std::vector<double> first_s(run.units.size() * stages, -1);
  const auto of_assembly = [&](const Activity& activity) {
    return static_cast<std::size_t>(activity.stage) >= stages;
  };
  for (const Activity& activity : trace.activities) {
    if (of_assembly(activity)) continue;
    if (double& work_s = first_s[visited(activity)]; work_s < 0) work_s = activity.work_s;
  }
  std::vector<char> later(first_s.size(), 0);
  std::vector<double> rework_s(trace.activities.size());
  for (std::size_t i = trace.activities.size(); i-- > 0;) {
    const Activity& activity = trace.activities[i];
    if (of_assembly(activity)) continue;
    const bool in_vain = run.units[activity.unit].scrapped || later[visited(activity)];
    rework_s[i] = in_vain ? activity.work_s : activity.work_s - first_s[visited(activity)];
    later[visited(activity)] = 1;
  }
  return rework_s;
}

/// What the chain of `last` has that the chain of `before` hasn't, less what that one has alone: the
/// difference of the two units' times of leaving, by stage and kind. An activity's trigger has a lower
/// number, so walking back from the higher of the two finds where the chains part. `before`: -1 for the begin
/// of time.
Spent chain_difference(const LineTrace& trace, const std::vector<double>& rework_s, std::int32_t last,
                       std::int32_t before, std::size_t stages) {
  Spent spent(stages);
  while (last != before) {
    std::int32_t& at = last > before ? last : before;
    const double sign = last > before ? 1 : -1;
    const Activity& activity = trace.activities[static_cast<std::size_t>(at)];
    const double again_s = rework_s[static_cast<std::size_t>(at)];
    spent.add(MissCause::work, activity.stage, sign * (activity.work_s - again_s));
    spent.add(MissCause::rework, activity.stage, sign * again_s);
    spent.add(MissCause::repair, activity.stage, sign * activity.repair_s);
    spent.add(MissCause::change, activity.stage, sign * activity.change_s);
    // Before the first of a chain nothing was done: its unit wasn't complete yet.
    if (activity.trigger < 0) spent.add(MissCause::parts, activity.stage, sign * activity.start_s);
    at = activity.trigger;
  }
  return spent;
}

}  // namespace

Word word_of(MissCause cause) {
  switch (cause) {
    case MissCause::repair:
      return "repair"_word;
    case MissCause::change:
      return "wire or tip change"_word;
    case MissCause::parts:
      return "parts that came late"_word;
    case MissCause::rework:
      return "rework or scrap"_word;
    case MissCause::work:
      return "work"_word;
  }
  return {};
}

TaktGoal takt_goal(const LineModel& model, double takt_s) {
  double work_s = 0;
  for (const double one_s : model.work_s) work_s += one_s;
  return {takt_s, model.unit_count() > 0 ? work_s / static_cast<double>(model.unit_count()) : 0};
}

TaktCount count_takt(const LineRun& run, const TaktGoal& goal) {
  return walk(run, goal, [](std::uint32_t, double) {});
}

std::vector<TaktMiss> explain_misses(const LineRun& run, const LineTrace& trace, std::size_t stages,
                                     const TaktGoal& goal) {
  std::vector<TaktMiss> misses;
  const std::vector<double> rework_s = rework_of(run, trace, stages);
  std::int32_t clock = -1;  // what set when units are due: the miss before
  walk(run, goal, [&](std::uint32_t unit, double wanted_s) {
    const Spent spent = chain_difference(trace, rework_s, trace.leaving[unit], clock, stages);
    clock = trace.leaving[unit];
    TaktMiss miss{unit, wanted_s, run.units[unit].end_s, 0, MissCause::work};
    double late_s = miss.left_s - wanted_s;
    for (const MissCause cause :
         {MissCause::repair, MissCause::change, MissCause::parts, MissCause::rework}) {
      late_s -= spent.total_s[static_cast<int>(cause)];
      if (spent.total_s[static_cast<int>(cause)] <= 0 || late_s > tolerance_s(miss.left_s)) continue;
      miss.cause = cause;
      break;
    }
    miss.stage = spent.worst_stage(miss.cause);
    misses.push_back(miss);
  });
  return misses;
}

double throughput_per_h(const LineRun& run) {
  const std::vector<std::uint32_t> units = in_order_of_leaving(run);
  if (units.empty()) return 0;
  const double first_s = run.units[units.front()].end_s, last_s = run.units[units.back()].end_s;
  const auto after_first = std::count_if(units.begin(), units.end(),
                                         [&](std::uint32_t unit) { return run.units[unit].end_s > first_s; });
  if (after_first > 0) return 3600 * static_cast<double>(after_first) / (last_s - first_s);
  return last_s > 0 ? 3600 * static_cast<double>(units.size()) / last_s : 0;
}

double finished_per_h(const LineRun& run, double day_s) {
  const double time_s = std::max(run.makespan_s, day_s);
  const auto finished =
      std::count_if(run.units.begin(), run.units.end(), [](const UnitTimes& unit) { return !unit.scrapped; });
  return time_s > 0 ? 3600 * static_cast<double>(finished) / time_s : 0;
}

std::optional<WorstWindow> worst_window(const LineRun& run, int units) {
  const std::vector<std::uint32_t> order = in_order_of_leaving(run);
  if (order.size() < 2) return std::nullopt;
  const std::size_t width = std::min(static_cast<std::size_t>(std::max(units, 1)), order.size() - 1);
  WorstWindow worst{static_cast<int>(width), 0, 0, 0};
  for (std::size_t i = 0; i + width < order.size(); ++i) {
    const double start_s = run.units[order[i]].end_s, end_s = run.units[order[i + width]].end_s;
    if (end_s - start_s <= worst.end_s - worst.start_s) continue;
    worst.start_s = start_s;
    worst.end_s = end_s;
  }
  if (worst.end_s <= worst.start_s) return std::nullopt;
  worst.throughput_per_h = 3600 * static_cast<double>(width) / (worst.end_s - worst.start_s);
  return worst;
}

}  // namespace seamtakt
