// Monte Carlo of heat input: mean, standard deviation, 2.5 and 97.5 %.
//   monte_carlo_bench [THREADS [REPEATS [SAMPLES]]]   prints one JSON line an instruction set

#include <cstdio>

#include "bench_time.hpp"
#include "formula/kernel/heat_input_monte_carlo.hpp"

using namespace seamtakt;

int main(int count, char** values) {
  const auto threads = static_cast<unsigned>(argument(count, values, 1, 1));
  const int repeats = argument(count, values, 2, 5);
  const auto samples = static_cast<std::uint64_t>(argument(count, values, 3, 10'000'000));
  ThreadPool pool(threads);
  // 24 V +- 0.3, 220 A +- 4, 8 mm/s +- 0.12, k from 0.78 to 0.82.
  const UncertainHeatInput input{24, 0.3, 220, 4, 8, 0.12, 0.78, 0.82};
  for (const InstructionSet set : supported_instruction_sets()) {
    HeatInputSpread spread;
    const double ms =
        median_ms(repeats, [&] { spread = heat_input_spread(input, samples, 1, pool, 0, set); });
    std::printf(
        "{\"work\": \"monte carlo\", \"instructions\": \"%s\", \"threads\": %u, \"ms\": %.3f, \"samples\": "
        "%llu, \"sums\": "
        "[%.6f, %.6f, %.5f, %.5f]}\n",
        to_string(set), threads, ms, static_cast<unsigned long long>(spread.samples), spread.mean_kJ_mm,
        spread.standard_deviation_kJ_mm, spread.low_kJ_mm, spread.high_kJ_mm);
  }
}
