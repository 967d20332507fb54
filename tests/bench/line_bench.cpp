// How many units a second go through a line of 10 stations with buffers of 3 and random times: by the
// recurrence, by the event calendar, and by the calendar with breakdowns and rework; then with two shifts a
// day and log-normal work (drawn, run, and every unit's start and end put on the clock), with assembly that
// pulls, and with shared people.
//   line_bench [UNITS] [REPEATS]
// Prints the median of REPEATS runs each, and the makespan, for a comparison with other programs.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <vector>

#include "line/flow_recurrence.hpp"
#include "line/line_calendar.hpp"
#include "line/work_hours.hpp"

using namespace seamtakt;

namespace {

constexpr std::size_t stations = 10;

/// Uniform from 0.8 to 1.5, the same for a unit and station wherever it is computed.
double time_of(std::uint64_t unit, std::uint64_t station) {
  std::uint64_t x = (unit * 10 + station + 1) * 0x9E3779B97F4A7C15u;
  x ^= x >> 30;
  x *= 0xBF58476D1CE4E5B9u;
  x ^= x >> 27;
  return 0.8 + 0.7 * (static_cast<double>(x >> 11) * 0x1p-53);
}

std::vector<double> drawn_times(std::size_t units) {
  std::vector<double> times(units * stations);
  for (std::size_t unit = 0, at = 0; unit < units; ++unit)
    for (std::size_t station = 0; station < stations; ++station) times[at++] = time_of(unit, station);
  return times;
}

LineModel line_of(std::size_t units) {
  LineModel line;
  for (std::size_t i = 0; i < stations; ++i) {
    LineStage stage;
    stage.id = std::to_string(i + 1);
    stage.buffer_after = 3;
    line.stages.push_back(stage);
  }
  for (std::size_t unit = 0; unit < units; ++unit)
    line.random_stream_id.push_back(static_cast<std::uint32_t>(unit));
  line.work_s = drawn_times(units);
  return line;
}

/// Monday to Friday from 06:00 to 14:00 and from 14:00 to 22:00, with a break each.
Calendar two_shifts() {
  Calendar calendar;
  calendar.start = "2026-11-30T06:00";
  calendar.shifts.resize(2);
  for (Shift& shift : calendar.shifts) shift.days = {"mon", "tue", "wed", "thu", "fri"};
  calendar.shifts[0].from = "06:00";
  calendar.shifts[0].to = calendar.shifts[1].from = "14:00";
  calendar.shifts[1].to = "22:00";
  calendar.shifts[0].breaks = {{"10:00", "10:30"}};
  calendar.shifts[1].breaks = {{"18:00", "18:30"}};
  return calendar;
}

/// Every unit's start and end on the clock; the last end.
double on_the_clock_s(const LineRun& run, const WorkHours& hours, std::vector<UnitTimes>& clock) {
  clock.resize(run.units.size());
  for (std::size_t i = 0; i < run.units.size(); ++i) {
    clock[i].start_s = hours.begin_s(run.units[i].start_s);
    clock[i].end_s = hours.end_s(run.units[i].end_s);
  }
  return clock.back().end_s;
}

void measure(const char* name, std::size_t units, int repeats, const std::function<double()>& makespan_s) {
  std::vector<double> seconds;
  double result_s = 0;
  for (int i = 0; i < repeats; ++i) {
    const auto begin = std::chrono::steady_clock::now();
    result_s = makespan_s();
    seconds.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count());
  }
  std::nth_element(seconds.begin(), seconds.begin() + repeats / 2, seconds.end());
  const double median_s = seconds[static_cast<std::size_t>(repeats / 2)];
  std::printf("line %s %zu units\t%.5f s\t%.0f units/s\tmakespan %.9g\n", name, units, median_s,
              static_cast<double>(units) / median_s, result_s);
}

}  // namespace

int main(int argc, char** argv) {
  const std::size_t units = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 100'000;
  const int repeats = argc > 2 ? std::max(1, std::atoi(argv[2])) : 11;
  if (units == 0) return 2;
  const LineModel line = line_of(units);
  const std::vector<int> buffers(stations, 3);
  std::vector<UnitTimes> times(units);
  std::vector<StageTimes> stages(stations);
  measure("recurrence", units, repeats, [&] {
    run_flow_line(line.work_s, buffers, times, stages);
    return times.back().end_s;
  });
  measure("recurrence+drawing", units, repeats, [&] {
    run_flow_line(drawn_times(units), buffers, times, stages);
    return times.back().end_s;
  });
  measure("calendar", units, repeats, [&] { return run_calendar(line, 1).makespan_s; });
  LineModel hard = line;
  for (LineStage& stage : hard.stages) {
    stage.availability = 0.95;
    stage.repair_s = 5;
  }
  hard.stages.back().yield = 0.95;
  hard.stages.back().rework_to = 4;
  hard.stages.back().rework_s = 1;
  measure("calendar+breakdowns+rework", units, repeats, [&] { return run_calendar(hard, 1).makespan_s; });
  // Mean times of 8 to 15 min with cv 0.2, so that the shifts matter.
  LineModel varied = line;
  for (double& work_s : varied.work_s) work_s *= 600;
  for (LineStage& stage : varied.stages) stage.variation = WorkVariation::log_normal(0.2);
  const WorkHours hours(two_shifts());
  std::vector<UnitTimes> clock;
  measure("shifts+varying", units, repeats,
          [&] { return on_the_clock_s(run_line(varied, 1), hours, clock); });
  varied.pull = LinePull{700, 7000};
  measure("shifts+varying+pull", units, repeats,
          [&] { return on_the_clock_s(run_line(varied, 1), hours, clock); });
  varied.people = {{"first", 4}, {"second", 3}};
  for (std::size_t i = 0; i < stations; ++i) varied.stages[i].people = i < 5 ? 0 : 1;
  measure("shifts+varying+pull+people", units, repeats,
          [&] { return on_the_clock_s(run_line(varied, 1), hours, clock); });
  return 0;
}
