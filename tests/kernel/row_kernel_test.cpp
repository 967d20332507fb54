#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>
#include <random>
#include <vector>

#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/kernel/image_row.hpp"
#include "formula/kernel/plate_field.hpp"
#include "formula/kernel/window_row.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/size/fillet.hpp"
#include "formula/wire/deposition.hpp"

using namespace seamtakt;

namespace {

constexpr std::size_t most_columns = 67;

struct WindowFigures {
  std::vector<double> heat, area, leg, time_2d, time_3d;
  explicit WindowFigures(std::size_t n) : heat(n), area(n), leg(n), time_2d(n), time_3d(n) {}
};

WindowRow random_row(std::mt19937& random, const std::vector<double>& speeds) {
  const auto draw = [&](double low, double high) {
    return std::uniform_real_distribution(low, high)(random);
  };
  WindowRow row;
  row.count = speeds.size();
  row.travel_speed_mm_s = speeds.data();
  row.power_W = draw(500, 20000);
  row.thermal_efficiency = draw(0.5, 1);
  row.deposition_rate_kg_h = draw(0.5, 15);
  row.weld_metal_density_g_cm3 = draw(2.6, 8);
  row.passes = std::floor(draw(1, 9));
  row.other_area_mm2 = draw(0, 40);
  row.area_allowance = draw(1, 1.3);
  row.gap_mm = draw(0, 3);
  row.dihedral_deg = draw(40, 140);
  row.thickness_mm = draw(2, 60);
  row.start_C = draw(-20, 300);
  row.f2 = draw(0.45, 1);
  row.f3 = draw(0.67, 1);
  return row;
}

WindowFigures computed(WindowRow row, InstructionSet set) {
  WindowFigures figures(row.count);
  row.heat_input_kJ_mm = figures.heat.data();
  row.deposit_area_mm2 = figures.area.data();
  row.leg_mm = figures.leg.data();
  row.cooling_time_2d_s = figures.time_2d.data();
  row.cooling_time_3d_s = figures.time_3d.data();
  window_row(row, set);
  return figures;
}

bool same_bits(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0;
}

/// Speeds of every length, so that whole vectors and remainders both occur.
std::vector<double> random_speeds(std::mt19937& random, std::size_t count) {
  std::vector<double> speeds(count);
  for (double& speed : speeds) speed = std::uniform_real_distribution(0.5, 60.0)(random);
  return speeds;
}

const MovingSource<double> steel_source{4000, 8, 0.04, 0.005, 20};

double worst_difference(const MovingSource<double>& source, double thickness_mm, const FieldGrid& grid,
                        const FieldEffort& effort) {
  std::vector<double> field(grid.columns * grid.rows);
  ThreadPool pool(2);
  plate_field_C(source, thickness_mm, grid, field.data(), pool, effort);
  double worst = 0;
  for (std::size_t row = 0; row < grid.rows; ++row)
    for (std::size_t column = 0; column < grid.columns; ++column) {
      const double ahead = grid.ahead_first_mm + grid.ahead_step_mm * static_cast<double>(column);
      const double aside = grid.aside_first_mm + grid.aside_step_mm * static_cast<double>(row);
      const double found = field[row * grid.columns + column];
      EXPECT_TRUE(std::isfinite(found)) << ahead << " " << aside;
      if (ahead == 0 && aside == 0 && grid.depth_mm == 0) {
        EXPECT_EQ(found, grid.ceiling_C);
        continue;
      }
      const double plain = std::min(
          plate_temperature_C<double>(source, {ahead, aside, grid.depth_mm}, thickness_mm), grid.ceiling_C);
      worst = std::max(worst, std::abs(found - plain) / std::abs(plain));
    }
  return worst;
}

}  // namespace

TEST(WindowRowKernel, every_instruction_set_gives_the_bits_of_the_formulas_one_by_one) {
  std::mt19937 random(3);
  for (std::size_t count = 1; count <= most_columns; ++count) {
    const std::vector<double> speeds = random_speeds(random, count);
    const WindowRow row = random_row(random, speeds);
    WindowFigures single(count);
    for (std::size_t i = 0; i < count; ++i) {
      const double v = speeds[i];
      single.heat[i] =
          heat_input_kJ_mm<double>(arc_energy_kJ_mm<double>(row.power_W, v), row.thermal_efficiency);
      single.area[i] = deposit_area_mm2<double>(row.deposition_rate_kg_h, v, row.weld_metal_density_g_cm3);
      single.leg[i] = fillet_leg_obtained_mm<double>(row.other_area_mm2 + row.passes * single.area[i],
                                                     row.area_allowance, row.gap_mm, row.dihedral_deg);
      single.time_2d[i] = cooling_time_2d_s<double>(single.heat[i], row.thickness_mm, row.start_C, row.f2);
      single.time_3d[i] = cooling_time_3d_s<double>(single.heat[i], row.start_C, row.f3);
    }
    for (const InstructionSet set : supported_instruction_sets()) {
      const WindowFigures figures = computed(row, set);
      EXPECT_TRUE(same_bits(figures.heat, single.heat)) << to_string(set) << " " << count;
      EXPECT_TRUE(same_bits(figures.area, single.area)) << to_string(set) << " " << count;
      EXPECT_TRUE(same_bits(figures.leg, single.leg)) << to_string(set) << " " << count;
      EXPECT_TRUE(same_bits(figures.time_2d, single.time_2d)) << to_string(set) << " " << count;
      EXPECT_TRUE(same_bits(figures.time_3d, single.time_3d)) << to_string(set) << " " << count;
    }
  }
}

TEST(CoolingRowKernel, the_larger_of_two_and_three_dimensions_bit_by_bit) {
  std::mt19937 random(4);
  std::vector<double> heat(most_columns), row(most_columns), single(most_columns);
  for (double& each : heat) each = std::uniform_real_distribution(0.05, 6.0)(random);
  for (const double thickness : {3.0, 9.0, 25.0}) {
    for (std::size_t i = 0; i < heat.size(); ++i)
      single[i] = cooling_time<double>(heat[i], thickness, 80, 0.67, 0.67).time_s;
    for (const InstructionSet set : supported_instruction_sets()) {
      cooling_row({heat.size(), heat.data(), thickness, 80, 0.67, 0.67, row.data()}, set);
      EXPECT_TRUE(same_bits(row, single)) << to_string(set);
    }
  }
}

TEST(PreheatRowKernel, within_1e_12_of_the_formula) {
  std::mt19937 random(5);
  std::vector<double> heat(most_columns), row(most_columns);
  for (double& each : heat) each = std::uniform_real_distribution(0.2, 6.0)(random);
  for (const InstructionSet set : supported_instruction_sets())
    for (const double cet : {0.2, 0.38}) {
      preheat_row({heat.size(), heat.data(), cet, 31, 5, row.data()}, set);
      for (std::size_t i = 0; i < heat.size(); ++i) {
        const double single = preheat_needed_C<double>(cet, 31, 5, heat[i]);
        EXPECT_NEAR(row[i], single, 1e-12 * std::abs(single)) << to_string(set);
        EXPECT_GE(row[i], 5);
      }
    }
}

/// Near the source (all within 350/outrun of it) and far from it the kernel has forms of its own: both
/// against the template.
TEST(ImageRowKernel, within_1e_12_of_the_formula_near_and_far_on_every_path) {
  const double across_squared[] = {13.3, 700, 4000}, weight[] = {1, 2, 2};
  for (const InstructionSet set : supported_instruction_sets())
    for (const double outrun : {0.01, 0.7, 2.2, 2.5, 9.0, 400.0})
      for (std::size_t images = 1; images <= 3; ++images)
        for (double first = -150; first < 90; first += 17.3)
          for (const std::size_t count : {std::size_t{1}, std::size_t{7}, image_row_length}) {
            std::vector<double> ahead(count), sum(count, -1);
            for (std::size_t i = 0; i < count; ++i) ahead[i] = first + 0.271 * static_cast<double>(i);
            image_row({count, ahead.data(), outrun, images, across_squared, weight, sum.data()}, set);
            for (std::size_t i = 0; i < count; ++i) {
              double single = 0;
              for (std::size_t image = 0; image < images; ++image)
                single += weight[image] * detail::image_term<double>(outrun, ahead[i], across_squared[image]);
              // Values below 1e-300 count as 0.
              ASSERT_NEAR(sum[i], single, 1e-12 * single + 1e-300)
                  << to_string(set) << " " << outrun << " " << ahead[i];
            }
          }
}

TEST(PlateField, within_1e_12_of_single_points_on_every_path) {
  for (const InstructionSet set : supported_instruction_sets())
    for (const double thickness : {4.0, 12.0, 60.0})
      for (const double depth : {0.0, 1.0, 4.0}) {
        FieldGrid grid;
        grid.ahead_first_mm = -80;
        grid.ahead_step_mm = 1.3;
        grid.columns = 77;
        grid.aside_first_mm = -5;
        grid.aside_step_mm = 2.5;
        grid.rows = 19;
        grid.depth_mm = depth;
        EXPECT_LT(worst_difference(steel_source, thickness, grid, {.images = -1, .instructions = set}), 1e-12)
            << to_string(set) << " " << thickness << " " << depth;
      }
}

TEST(PlateField, thin_sheets_slow_and_fast_sources_are_single_points_too) {
  FieldGrid grid;
  grid.ahead_first_mm = -300;
  grid.ahead_step_mm = 7;
  grid.columns = 60;
  grid.aside_first_mm = 0;
  grid.aside_step_mm = 20;
  grid.rows = 7;
  for (const double speed : {0.01, 1.0, 8.0, 60.0})
    for (const double thickness : {0.8, 6.0, 40.0}) {
      MovingSource<double> source = steel_source;
      source.travel_speed_mm_s = speed;
      EXPECT_LT(worst_difference(source, thickness, grid, {}), 1e-12) << speed << " " << thickness;
    }
}

TEST(PlateField, the_source_itself_shows_the_ceiling) {
  FieldGrid grid;
  grid.ahead_first_mm = -2;
  grid.columns = 5;
  grid.aside_first_mm = -1;
  grid.rows = 3;
  EXPECT_LT(worst_difference(steel_source, 10, grid, {}), 1e-12);
}

TEST(PlateField, any_number_of_threads_gives_the_same_bits) {
  FieldGrid grid;
  grid.ahead_first_mm = -60;
  grid.columns = 80;
  grid.aside_first_mm = 0.5;
  grid.rows = 33;
  std::vector<double> one(grid.columns * grid.rows), three(one.size());
  ThreadPool pool(3);
  plate_field_C(steel_source, 12, grid, one.data(), pool, {.most_threads = 1});
  plate_field_C(steel_source, 12, grid, three.data(), pool);
  EXPECT_TRUE(same_bits(one, three));
}
