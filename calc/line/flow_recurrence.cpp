#include "line/flow_recurrence.hpp"

#include <algorithm>
#include <stdexcept>

#include "line/line_calendar.hpp"

namespace seamtakt {

namespace {

/// A unit's row: starts at all stages, leavings of all stages, and a 0 for the last stage's missing
/// successor. Rows of earlier units come first, so that what a unit waits for is at a fixed distance.
class FlowLine {
 public:
  FlowLine(std::span<const int> buffer_after, std::size_t units)
      : stages_(buffer_after.size()), stride_(2 * stages_ + 1), waits_for_(stages_) {
    const auto stride = static_cast<std::ptrdiff_t>(stride_);
    for (std::size_t j = 0; j < stages_; ++j) {
      const auto next = static_cast<std::ptrdiff_t>(j) + 1;
      const auto buffer = static_cast<std::size_t>(buffer_after[j]);
      if (j + 1 == stages_ || buffer >= units) {
        waits_for_[j] = stride - 1;  // the 0
      } else if (buffer == 0) {
        waits_for_[j] = static_cast<std::ptrdiff_t>(stages_) + next - stride;
      } else {
        waits_for_[j] = next - static_cast<std::ptrdiff_t>(buffer) * stride;
        history_ = std::max(history_, buffer);
      }
    }
    block_ = std::max(block_, history_);
    rows_.assign((history_ + block_) * stride_, 0.0);
  }

  /// Nothing leaves the last stage before then.
  void hold_last_until(double time_s) { rows_[history_ * stride_ - 2] = time_s; }

  /// A unit's end is its leaving of the last stage, or where it is `taken` by it, its start there.
  void run(std::span<const double> service_s, std::span<UnitTimes> units, std::span<StageTimes> stages,
           bool taken = false) {
    const std::size_t end = taken ? stages_ - 1 : 2 * stages_ - 1;
    for (std::size_t begin = 0; begin < units.size(); begin += block_) {
      const std::size_t count = std::min(block_, units.size() - begin);
      take_block(service_s.data() + begin * stages_, count, stages.data());
      for (std::size_t i = 0; i < count; ++i) {
        units[begin + i].start_s = row(i)[0];
        units[begin + i].end_s = row(i)[end];
      }
      // What the next block waits for moves in front of it.
      std::copy(row(count) - static_cast<std::ptrdiff_t>(history_ * stride_), row(count), rows_.data());
    }
  }

 private:
  double* row(std::size_t i) { return rows_.data() + (history_ + i) * stride_; }

  void take_block(const double* service, std::size_t count, StageTimes* stages) {
    switch (stages_) {
#define SEAMTAKT_CASE(n)           \
  case n:                          \
    advance_by<n>(service, count); \
    return add_up<n>(service, count, stages);
      SEAMTAKT_CASE(1)
      SEAMTAKT_CASE(2)
      SEAMTAKT_CASE(3)
      SEAMTAKT_CASE(4)
      SEAMTAKT_CASE(5)
      SEAMTAKT_CASE(6)
      SEAMTAKT_CASE(7)
      SEAMTAKT_CASE(8)
      SEAMTAKT_CASE(9)
      SEAMTAKT_CASE(10)
#undef SEAMTAKT_CASE
      default:
        advance_by<0>(service, count);
        return add_up<0>(service, count, stages);
    }
  }

  /// `fixed`: number of stages known to the compiler; 0: any.
  template <std::size_t fixed>
  void advance_by(const double* service, std::size_t count) {
    const std::size_t stages = fixed ? fixed : stages_;
    const std::size_t stride = 2 * stages + 1;
    double* at = row(0);
    for (std::size_t i = 0; i < count; ++i, at += stride, service += stages) {
      const double* before = at - stride + stages;
      double arrives_s = 0;
      for (std::size_t j = 0; j < stages; ++j) {
        const double start_s = std::max(before[j], arrives_s);
        at[j] = start_s;
        arrives_s = std::max(start_s + service[j], at[waits_for_[j]]);
        at[stages + j] = arrives_s;
      }
    }
  }

  /// Each stage's sums in the order of the units, as the calendar adds them up. All stages of a unit at once,
  /// so that additions don't wait for one another.
  template <std::size_t fixed>
  void add_up(const double* service, std::size_t count, StageTimes* stages) {
    constexpr std::size_t at_once = fixed ? fixed : 8;
    for (std::size_t from = 0; from < stages_; from += at_once) {
      const std::size_t width = fixed ? fixed : std::min(at_once, stages_ - from);
      double work_s[at_once] = {}, blocked_s[at_once] = {};
      for (std::size_t j = 0; j < width; ++j) {
        work_s[j] = stages[from + j].work_s;
        blocked_s[j] = stages[from + j].blocked_s;
      }
      const double *start = row(0) + from, *took = service + from;
      for (std::size_t i = 0; i < count; ++i, start += stride_, took += stages_)
        for (std::size_t j = 0; j < width; ++j) {
          work_s[j] += took[j];
          blocked_s[j] += start[stages_ + j] - (start[j] + took[j]);
        }
      for (std::size_t j = 0; j < width; ++j) {
        stages[from + j].work_s = work_s[j];
        stages[from + j].blocked_s = blocked_s[j];
      }
    }
  }

  std::size_t stages_, stride_;
  std::vector<std::ptrdiff_t> waits_for_;
  std::size_t history_ = 1;
  std::size_t block_ = 256;
  std::vector<double> rows_;
};

bool has_stops(const LineModel& model) {
  return !model.change_s.empty() ||
         std::any_of(model.stages.begin(), model.stages.end(),
                     [](const LineStage& stage) { return stage.availability < 1; });
}

/// Work and stops of every unit at every stage; separate sums of both into `stages`.
std::vector<double> services_s(const LineModel& model, std::span<const double> work_s, std::uint64_t seed,
                               std::vector<StageTimes>& stages) {
  const StopTimes stops(model, seed);
  std::vector<double> service_s(work_s.size());
  for (std::size_t unit = 0, at = 0; unit < model.unit_count(); ++unit)
    for (std::size_t stage = 0; stage < model.stage_count(); ++stage, ++at) {
      const double repair_s = stops.stop_s(stage, model.random_stream_id[unit], 0, work_s[at]);
      const bool changes = static_cast<int>(stage) == model.change_stage && !model.change_s.empty();
      const double stop_s = repair_s + (changes ? model.change_s[unit] : 0);
      service_s[at] = work_s[at] + stop_s;
      stages[stage].work_s += work_s[at];
      stages[stage].stop_s += stop_s;
    }
  return service_s;
}

/// The line with the assembly line behind it, as a stage that has each unit for a takt.
void run_pulled_line(std::span<const double> service_s, std::span<const int> buffer_after,
                     const LinePull& pull, std::span<UnitTimes> units, std::span<StageTimes> stages) {
  const std::size_t count = buffer_after.size();
  std::vector<double> with_takt_s;
  with_takt_s.reserve(units.size() * (count + 1));
  for (std::size_t unit = 0; unit < units.size(); ++unit) {
    const double* row = service_s.data() + unit * count;
    with_takt_s.insert(with_takt_s.end(), row, row + count);
    with_takt_s.push_back(pull.takt_s);
  }
  std::vector<int> buffers(buffer_after.begin(), buffer_after.end());
  buffers.push_back(0);
  std::vector<StageTimes> all(count + 1);
  FlowLine line(buffers, units.size());
  line.hold_last_until(pull.first_s);
  line.run(with_takt_s, units, all, true);
  std::copy_n(all.begin(), count, stages.begin());
}

void run_services(const LineModel& model, std::span<const double> service_s, LineRun& run) {
  std::vector<int> buffers;
  for (const LineStage& stage : model.stages) buffers.push_back(stage.buffer_after);
  if (model.pull)
    run_pulled_line(service_s, buffers, *model.pull, run.units, run.stages);
  else
    run_flow_line(service_s, buffers, run.units, run.stages);
}

}  // namespace

bool recurrence_covers(const LineModel& model) {
  if (!model.people.empty() || !model.available_s.empty()) return false;
  return std::all_of(model.stages.begin(), model.stages.end(),
                     [](const LineStage& stage) { return stage.servers == 1 && stage.yield >= 1; });
}

void run_flow_line(std::span<const double> service_s, std::span<const int> buffer_after,
                   std::span<UnitTimes> units, std::span<StageTimes> stages) {
  if (service_s.size() != units.size() * buffer_after.size() || stages.size() != buffer_after.size() ||
      buffer_after.empty())
    throw std::invalid_argument("flow line: lists don't fit together");
  FlowLine(buffer_after, units.size()).run(service_s, units, stages);
}

LineRun run_recurrence(const LineModel& model, std::uint64_t seed) {
  if (!recurrence_covers(model)) throw std::invalid_argument("the recurrence doesn't cover this line");
  LineRun run;
  run.units.resize(model.unit_count());
  run.stages.resize(model.stage_count());
  std::vector<double> drawn_s;
  if (work_varies(model)) drawn_s = drawn_work_s(model, seed);
  const std::span<const double> work_s = drawn_s.empty() ? model.work_s : drawn_s;
  if (has_stops(model)) {
    std::vector<StageTimes> split(model.stage_count());
    const std::vector<double> service_s = services_s(model, work_s, seed, split);
    run_services(model, service_s, run);
    for (std::size_t j = 0; j < split.size(); ++j) {
      run.stages[j].work_s = split[j].work_s;
      run.stages[j].stop_s = split[j].stop_s;
    }
  } else {
    run_services(model, work_s, run);
  }
  if (!run.units.empty()) run.makespan_s = run.units.back().end_s;
  return run;
}

LineRun run_line(const LineModel& model, std::uint64_t seed) {
  return recurrence_covers(model) ? run_recurrence(model, seed) : run_calendar(model, seed);
}

}  // namespace seamtakt
