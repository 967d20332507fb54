// How many units a second go through a line of 10 stations with buffers of 3 and random times: by the
// recurrence, by the event calendar, and by the calendar with breakdowns and rework.
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
  return 0;
}
