// Temperature field of a finite plate on its surface, 1000 x 500 points, 11 images.
//   field_bench [THREADS [REPEATS]]   prints one JSON line an instruction set

#include <cstdio>
#include <numeric>
#include <vector>

#include "bench_time.hpp"
#include "formula/kernel/plate_field.hpp"

using namespace seamtakt;

int main(int count, char** values) {
  const auto threads = static_cast<unsigned>(argument(count, values, 1, 1));
  const int repeats = argument(count, values, 2, 15);
  ThreadPool pool(threads);
  // 4 kW net, 8 mm/s, conductivity 0.04 W/(mm K), diffusivity 8 mm2/s, 12 mm, 20 degC.
  const MovingSource<double> source{4000, 8, 0.04, 0.005, 20};
  FieldGrid grid;
  grid.columns = 1000;
  grid.ahead_step_mm = 0.1;
  grid.ahead_first_mm = -79.95;
  grid.rows = 500;
  grid.aside_step_mm = 0.08;
  grid.aside_first_mm = 0.05;
  grid.ceiling_C = 1e9;
  std::vector<double> field(grid.rows * grid.columns);
  const auto run = [&](InstructionSet set, int images) {
    return median_ms(repeats, [&] {
      plate_field_C(source, 12, grid, field.data(), pool, {.images = images, .instructions = set});
    });
  };
  for (const InstructionSet set : supported_instruction_sets()) {
    const double as_needed = run(set, -1);
    const double all = run(set, 5);
    std::printf(
        "{\"work\": \"field\", \"instructions\": \"%s\", \"threads\": %u, \"ms\": %.3f, \"ms_as_needed\": "
        "%.3f, "
        "\"sums\": [%.12g]}\n",
        to_string(set), threads, all, as_needed, std::accumulate(field.begin(), field.end(), 0.0));
  }
}
