#pragma once

#include <time.h>

#include <algorithm>
#include <cstdlib>
#include <string_view>
#include <vector>

/// Milliseconds by the wall's clock; by the process's CPU clock where BENCH_CLOCK=cpu, which on a machine
/// that others use tells more of one thread's work.
inline double clock_ms() {
  static const char* const asked = std::getenv("BENCH_CLOCK");
  static const bool is_cpu = asked != nullptr && std::string_view(asked) == "cpu";
  timespec now{};
  clock_gettime(is_cpu ? CLOCK_PROCESS_CPUTIME_ID : CLOCK_MONOTONIC, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

/// Milliseconds of `work`: the median of `repeats` runs after one to warm up.
template <class Work>
double median_ms(int repeats, const Work& work) {
  std::vector<double> times;
  for (int run = 0; run <= repeats; ++run) {
    const double began = clock_ms();
    work();
    if (run > 0) times.push_back(clock_ms() - began);
  }
  std::nth_element(times.begin(), times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2), times.end());
  return times[times.size() / 2];
}

/// The whole number given as argument `index`, or `otherwise`.
inline int argument(int count, char** values, int index, int otherwise) {
  return index < count ? std::atoi(values[index]) : otherwise;
}
