// Six outputs of the operating window over 1000 x 1000 points: current, heat input, deposit area, leg, t8/5
// in two and in three dimensions, by the row kernel; and preheat by itself.
//   window_bench [THREADS [REPEATS]]   prints one JSON line an instruction set

#include <cstdio>
#include <numeric>
#include <vector>

#include "base/parallel/thread_pool.hpp"
#include "bench_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/kernel/window_row.hpp"
#include "formula/wire/deposition.hpp"
#include "formula/wire/melting.hpp"

using namespace seamtakt;

namespace {

constexpr std::size_t size = 1000;

struct Maps {
  std::vector<double> speeds = std::vector<double>(size);
  std::vector<double> current, heat, area, leg, time_2d, time_3d, preheat;
  Maps() {
    for (auto* map : {&current, &heat, &area, &leg, &time_2d, &time_3d, &preheat})
      map->assign(size * size, 1.0);
    for (std::size_t j = 0; j < size; ++j) speeds[j] = 3 + 17.0 * static_cast<double>(j) / (size - 1);
  }
};

// The numbers of the comparison: wire 1.2 mm, alpha 0.3, beta 5e-5, extension 15 mm, U = 14 + 0.05 I, k 0.8,
// 98 % deposited (as a volume), plate 20 mm, shape factors 0.9, 20 degC.
void fill_row(Maps& maps, std::size_t i, InstructionSet set) {
  const double feed = 3 + 11.0 * static_cast<double>(i) / (size - 1);
  const double current = melting_current_A(feed_mm_s_from_m_min(feed), 15.0, 0.3, 5e-5);
  WindowRow row;
  row.count = size;
  row.travel_speed_mm_s = maps.speeds.data();
  row.power_W = arc_power_W(14 + 0.05 * current, current);
  row.thermal_efficiency = 0.8;
  row.deposition_rate_kg_h = deposition_rate_kg_h(melting_rate_kg_h(wire_area_mm2(1.2), feed, 7.85), 0.98);
  row.weld_metal_density_g_cm3 = 7.85;
  row.thickness_mm = 20;
  row.f2 = row.f3 = 0.9;
  const std::size_t first = i * size;
  row.heat_input_kJ_mm = &maps.heat[first];
  row.deposit_area_mm2 = &maps.area[first];
  row.leg_mm = &maps.leg[first];
  row.cooling_time_2d_s = &maps.time_2d[first];
  row.cooling_time_3d_s = &maps.time_3d[first];
  std::fill_n(&maps.current[first], size, current);
  window_row(row, set);
}

double sum(const std::vector<double>& map) {
  return std::accumulate(map.begin(), map.end(), 0.0);
}

}  // namespace

int main(int count, char** values) {
  const auto threads = static_cast<unsigned>(argument(count, values, 1, 1));
  const int repeats = argument(count, values, 2, 31);
  ThreadPool pool(threads);
  Maps maps;
  for (const InstructionSet set : supported_instruction_sets()) {
    const double window = median_ms(repeats, [&] {
      pool.parallel_for(size, 16, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i) fill_row(maps, i, set);
      });
    });
    const double preheat = median_ms(repeats, [&] {
      pool.parallel_for(size, 16, [&](std::size_t begin, std::size_t end) {
        for (std::size_t i = begin; i < end; ++i)
          preheat_row({size, &maps.heat[i * size], 0.35, 20, 5, &maps.preheat[i * size]}, set);
      });
    });
    std::printf(
        "{\"work\": \"window\", \"instructions\": \"%s\", \"threads\": %u, \"ms\": %.3f, \"preheat_ms\": "
        "%.3f, \"sums\": "
        "[%.12g, %.12g, %.12g, %.12g, %.12g, %.12g, %.12g]}\n",
        to_string(set), threads, window, preheat, sum(maps.current), sum(maps.heat), sum(maps.area),
        sum(maps.leg), sum(maps.time_2d), sum(maps.time_3d), sum(maps.preheat));
  }
}
