#include "line/line_figures.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/parallel/thread_pool.hpp"
#include "line/flow_recurrence.hpp"
#include "line/order_times.hpp"

namespace seamtakt {

namespace {

constexpr double time_cut = 0.1;

/// One run's figures.
struct Sample {
  double throughput_per_h = 0, overall_per_h = 0, makespan_s = 0;
  TaktCount takt;
  double working_s = 0;
  int late_orders = 0, first_day = 0;
};

bool all_certain(const LineModel& model, const LineModel* day) {
  return is_certain(model) && (day == nullptr || is_certain(*day));
}

/// Orders that are late, each counted in `late_runs` too where that is given.
int count_late(const LineModel& model, const LineRun& run, std::vector<double>* late_runs) {
  int late = 0;
  for (std::size_t i = 0; i < model.due_s.size(); ++i) {
    const UnitTimes& unit = run.units[i];
    const bool is_due = std::isfinite(model.due_s[i]);
    if (!is_due || !(unit.scrapped || is_late(unit.end_s, model.due_s[i]))) continue;
    ++late;
    if (late_runs) (*late_runs)[i] += 1;
  }
  return late;
}

int count_first_day(const LineModel& model, const LineRun& run) {
  if (!model.hours) return 0;
  const double ends_s = model.hours->work_s(model.hours->day_end_s());
  return static_cast<int>(std::ranges::count_if(
      run.units, [&](const UnitTimes& unit) { return !unit.scrapped && !is_late(unit.end_s, ends_s); }));
}

std::vector<Sample> samples(const LineModel& model, const std::optional<TaktGoal>& goal, std::uint64_t seed,
                            int runs, const LineModel* day = nullptr,
                            std::vector<double>* late_runs = nullptr) {
  std::vector<Sample> list(static_cast<std::size_t>(all_certain(model, day) ? 1 : std::max(runs, 1)));
  for (std::size_t i = 0; i < list.size(); ++i) {
    const LineRun run = run_line(model, seed + i);
    const double day_s = day ? run_line(*day, seed + i).makespan_s : 0;
    list[i] = {day ? finished_per_h(run, day_s) : throughput_per_h(run),
               finished_per_h(run, day_s),
               model.hours ? model.hours->end_s(run.makespan_s) : run.makespan_s,
               goal ? count_takt(run, *goal) : TaktCount{},
               run.makespan_s,
               count_late(model, run, late_runs),
               count_first_day(model, run)};
  }
  return list;
}

struct Mean {
  double mean = 0, se = 0;
};

template <class Value>
Mean mean_of(std::size_t count, Value&& value) {
  Mean result;
  for (std::size_t i = 0; i < count; ++i) result.mean += value(i);
  result.mean /= static_cast<double>(count);
  if (count < 2) return result;
  double squares = 0;
  for (std::size_t i = 0; i < count; ++i) squares += (value(i) - result.mean) * (value(i) - result.mean);
  result.se = std::sqrt(squares / static_cast<double>(count - 1) / static_cast<double>(count));
  return result;
}

LineFigures figures_of(const std::vector<Sample>& list) {
  const Mean throughput = mean_of(list.size(), [&](std::size_t i) { return list[i].throughput_per_h; });
  const Mean misses =
      mean_of(list.size(), [&](std::size_t i) { return static_cast<double>(list[i].takt.misses); });
  LineFigures figures;
  figures.runs = static_cast<int>(list.size());
  figures.throughput_per_h = throughput.mean;
  figures.throughput_se_per_h = throughput.se;
  figures.throughput_overall_per_h =
      mean_of(list.size(), [&](std::size_t i) { return list[i].overall_per_h; }).mean;
  figures.takt_misses = misses.mean;
  figures.takt_misses_se = misses.se;
  figures.takt_lost_s = mean_of(list.size(), [&](std::size_t i) { return list[i].takt.lost_s; }).mean;
  figures.makespan_s = mean_of(list.size(), [&](std::size_t i) { return list[i].makespan_s; }).mean;
  figures.working_s = mean_of(list.size(), [&](std::size_t i) { return list[i].working_s; }).mean;
  figures.late_orders = mean_of(list.size(), [&](std::size_t i) { return list[i].late_orders; }).mean;
  figures.finished_first_day = mean_of(list.size(), [&](std::size_t i) { return list[i].first_day; }).mean;
  return figures;
}

struct Changed {
  Improvement cure;
  LineModel model;
};

void scale_time(LineModel& model, std::size_t stage, double factor) {
  for (std::size_t at = stage; at < model.work_s.size(); at += model.stage_count())
    model.work_s[at] *= factor;
}

bool takes_time(const LineModel& model, std::size_t stage) {
  for (std::size_t at = stage; at < model.work_s.size(); at += model.stage_count())
    if (model.work_s[at] > 0) return true;
  return false;
}

std::vector<Changed> changed_lines(const LineModel& model) {
  std::vector<Changed> list;
  const auto add = [&](std::size_t stage, Sentence change, auto&& edit) {
    Changed changed{{model.stages[stage].id, std::move(change), {}, 0, 0, 0}, model};
    edit(changed.model, changed.model.stages[stage]);
    list.push_back(std::move(changed));
  };
  for (std::size_t i = 0; i < model.stage_count(); ++i) {
    const LineStage& stage = model.stages[i];
    if (takes_time(model, i)) {
      add(i, Sentence("line.cure.time"_key, {{"cut", UnitValue{100 * time_cut, "%"}}}),
          [&](LineModel& line, LineStage&) { scale_time(line, i, 1 - time_cut); });
      add(i, Sentence("line.cure.server"_key), [](LineModel&, LineStage& one) { ++one.servers; });
    }
    if (i + 1 < model.stage_count() || model.pull)
      add(i, Sentence("line.cure.buffer"_key), [](LineModel&, LineStage& one) { ++one.buffer_after; });
    if (stage.availability < 1)
      add(i, Sentence("line.cure.stops"_key), [](LineModel&, LineStage& one) { one.availability = 1; });
    if (stage.yield < 1)
      add(i, Sentence("line.cure.yield"_key), [](LineModel&, LineStage& one) { one.yield = 1; });
  }
  for (std::size_t group = 0; group < model.people.size(); ++group) {
    Changed changed{{model.people[group].id, Sentence("line.cure.person"_key), {}, 0, 0, 0}, model};
    ++changed.model.people[group].count;
    list.push_back(std::move(changed));
  }
  return list;
}

/// Certain and uncertain lines have different numbers of runs; the one run represents all of them.
const Sample& sample_at(const std::vector<Sample>& list, std::size_t i) {
  return list[std::min(i, list.size() - 1)];
}

void compare(const std::vector<Sample>& base, const std::vector<Sample>& changed, Improvement& cure) {
  const Mean gain = mean_of(std::max(base.size(), changed.size()), [&](std::size_t i) {
    return sample_at(changed, i).throughput_per_h - sample_at(base, i).throughput_per_h;
  });
  cure.figures = figures_of(changed);
  cure.throughput_change_per_h = gain.mean;
  cure.throughput_change_se_per_h = gain.se;
  cure.takt_misses_change = cure.figures.takt_misses - figures_of(base).takt_misses;
}

}  // namespace

double quantile(std::vector<double> values, double p) {
  std::sort(values.begin(), values.end());
  const double place = static_cast<double>(values.size() - 1) * p;
  const auto below = static_cast<std::size_t>(place);
  if (below + 1 >= values.size()) return values.back();
  return values[below] + (place - static_cast<double>(below)) * (values[below + 1] - values[below]);
}

LineFigures line_figures(const LineModel& model, const std::optional<TaktGoal>& goal, std::uint64_t seed,
                         int runs, const LineModel* day) {
  std::vector<double> late_runs(model.due_s.size(), 0.0);
  const std::vector<Sample> list = samples(model, goal, seed, runs, day, &late_runs);
  LineFigures figures = figures_of(list);
  for (double& runs_late : late_runs) runs_late /= static_cast<double>(list.size());
  figures.late_share = std::move(late_runs);
  std::vector<double> throughputs;
  for (const Sample& sample : list) throughputs.push_back(sample.throughput_per_h);
  if (list.size() > 1 || all_certain(model, day)) {
    figures.throughput_p10_per_h = quantile(throughputs, 0.1);
    figures.throughput_p90_per_h = quantile(throughputs, 0.9);
  }
  std::vector<std::size_t> by_throughput(list.size());
  std::iota(by_throughput.begin(), by_throughput.end(), std::size_t{0});
  std::stable_sort(by_throughput.begin(), by_throughput.end(),
                   [&](std::size_t a, std::size_t b) { return throughputs[a] < throughputs[b]; });
  figures.median_seed = seed + by_throughput[(list.size() - 1) / 2];
  return figures;
}

std::vector<Improvement> cures(const LineModel& model, const std::optional<TaktGoal>& goal,
                               std::uint64_t seed, int runs) {
  const std::vector<Sample> base = samples(model, goal, seed, runs);
  std::vector<Changed> lines = changed_lines(model);
  ThreadPool::shared().parallel_for(lines.size(), 1, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      compare(base, samples(lines[i].model, goal, seed, runs), lines[i].cure);
  });
  std::vector<Improvement> list;
  for (Changed& line : lines) list.push_back(std::move(line.cure));
  std::stable_sort(list.begin(), list.end(), [](const Improvement& a, const Improvement& b) {
    if (a.takt_misses_change != b.takt_misses_change) return a.takt_misses_change < b.takt_misses_change;
    return a.throughput_change_per_h > b.throughput_change_per_h;
  });
  return list;
}

}  // namespace seamtakt
