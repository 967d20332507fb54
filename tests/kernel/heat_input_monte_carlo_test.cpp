#include "formula/kernel/heat_input_monte_carlo.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>
#include <vector>

#include "base/error.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/kernel/philox_body.hpp"
#include "formula/quantities/quantity.hpp"
#include "formula/real.hpp"

using namespace seamtakt;

namespace {

const UncertainHeatInput pulsed{24, 0.3, 220, 4, 8, 0.12, 0.78, 0.82};

std::vector<double> drawn_of(const UncertainHeatInput& input, std::uint64_t seed, std::uint64_t rows,
                             InstructionSet set = best_instruction_set()) {
  std::vector<double> samples;
  HeatInputDraws draws;
  for (std::uint64_t row = 0; row < rows; ++row) {
    draw_heat_inputs(seed, row, input, draws, set);
    samples.insert(samples.end(), std::begin(draws.heat_input_kJ_mm), std::end(draws.heat_input_kJ_mm));
  }
  return samples;
}

std::vector<double> drawn(std::uint64_t seed, std::uint64_t rows, InstructionSet set) {
  return drawn_of(pulsed, seed, rows, set);
}

/// Standard uncertainty to first order, slopes by automatic differentiation of the same formulas.
double first_order_kJ_mm() {
  const Dual voltage = seeded(pulsed.voltage_V, 0), current = seeded(pulsed.current_A, 1);
  const Dual speed = seeded(pulsed.travel_speed_mm_s, 2), efficiency = seeded(0.8, 3);
  const Dual power = arc_power_W<Dual>(voltage, current);
  const Dual Q = heat_input_kJ_mm<Dual>(arc_energy_kJ_mm<Dual>(power, speed), efficiency);
  const double u[] = {pulsed.u_voltage_V, pulsed.u_current_A, pulsed.u_travel_speed_mm_s,
                      (pulsed.efficiency_high - pulsed.efficiency_low) / std::sqrt(12.0)};
  double variance = 0;
  for (std::size_t i = 0; i < 4; ++i) variance += std::pow(Q.derivatives()[i] * u[i], 2);
  return std::sqrt(variance);
}

}  // namespace

TEST(Philox, gives_the_known_answers_of_its_authors) {
  // Random123, kat_vectors, philox4x32 with 10 rounds.
  const auto words = [](const PhiloxBlock& block) {
    return std::vector<std::uint32_t>(std::begin(block.words), std::end(block.words));
  };
  using Words = std::vector<std::uint32_t>;
  EXPECT_EQ(words(philox_4x32_10({{0, 0, 0, 0}}, 0, 0)),
            (Words{0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8}));
  constexpr std::uint32_t ones = 0xffffffff;
  EXPECT_EQ(words(philox_4x32_10({{ones, ones, ones, ones}}, ones, ones)),
            (Words{0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd}));
}

TEST(Philox, a_row_is_its_counters_one_by_one_on_every_path) {
  const std::uint64_t seed = 0x123456789abcdef0, first = 0x300000000 + 7 * philox_row_length;
  for (const InstructionSet set : supported_instruction_sets()) {
    std::vector<std::uint64_t> words[4];
    PhiloxRow row{seed, first, 3, {}};
    for (std::size_t k = 0; k < 4; ++k) {
      words[k].resize(philox_row_length);
      row.words[k] = words[k].data();
    }
    philox_row(row, set);
    for (std::size_t i = 0; i < philox_row_length; ++i) {
      const std::uint64_t at = first + i;
      const PhiloxBlock block =
          philox_4x32_10({{static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at >> 32), 3, 0}},
                         0x9abcdef0, 0x12345678);
      for (std::size_t k = 0; k < 4; ++k)
        ASSERT_EQ(static_cast<std::uint32_t>(words[k][i]), block.words[k]) << to_string(set) << " " << i;
    }
  }
}

#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__)
// The form for vectors of 64 bytes needs a processor with AVX-512 for its multiplication alone; with this one
// the compiler makes shorter vectors of it, and the rest of it runs anywhere.
#define multiply_in_halves(a, b) (((a)&0xffffffffu) * ((b)&0xffffffffu))
SEAMTAKT_PHILOX_ROW(philox_row_wide, , 64, Lanes, multiply_in_halves)
#undef multiply_in_halves

TEST(Philox, vectors_of_64_bytes_give_the_same_words_on_a_processor_without_them) {
  std::vector<std::uint64_t> wide[4], plain[4];
  PhiloxRow row{0xfedcba9876543210, 11 * philox_row_length, 1, {}};
  const auto into = [&](std::vector<std::uint64_t>(&words)[4]) {
    for (std::size_t k = 0; k < 4; ++k) {
      words[k].resize(philox_row_length);
      row.words[k] = words[k].data();
    }
  };
  into(wide);
  philox_row_wide(row);
  into(plain);
  philox_row(row, InstructionSet::plain);
  for (std::size_t k = 0; k < 4; ++k)
    for (std::size_t i = 0; i < philox_row_length; ++i)
      ASSERT_EQ(static_cast<std::uint32_t>(wide[k][i]), static_cast<std::uint32_t>(plain[k][i]))
          << k << " " << i;
}
#endif

TEST(HeatInputDraws, every_instruction_set_draws_the_same_within_1e_12) {
  const std::vector<double> plain = drawn(5, 20, InstructionSet::plain);
  for (const InstructionSet set : supported_instruction_sets()) {
    const std::vector<double> other = drawn(5, 20, set);
    for (std::size_t i = 0; i < plain.size(); ++i)
      ASSERT_NEAR(other[i], plain[i], 1e-12 * plain[i]) << to_string(set) << " " << i;
  }
}

TEST(HeatInputDraws, normal_deviates_are_normal_and_the_efficiency_is_even) {
  // One input at a time, so that heat input is that input scaled; its distribution by Kolmogorov and Smirnov.
  constexpr std::uint64_t rows = 200;
  const auto distance = [&](const UncertainHeatInput& input, const auto& cumulative) {
    std::vector<double> samples = drawn_of(input, 11, rows);
    std::sort(samples.begin(), samples.end());
    double most = 0;
    const auto n = static_cast<double>(samples.size());
    for (std::size_t i = 0; i < samples.size(); ++i)
      most = std::max(most, std::abs(cumulative(samples[i]) - (static_cast<double>(i) + 0.5) / n));
    return most * std::sqrt(n);
  };
  const auto normal = [](double mean, double u) {
    return [=](double x) { return 0.5 * std::erfc((mean - x) / (u * std::numbers::sqrt2)); };
  };
  const UncertainHeatInput exact{25, 0, 200, 0, 5, 0, 0.8, 0.8};
  const double Q = 0.8 * 25 * 200 / 5 / 1000;
  UncertainHeatInput input = exact;
  input.u_voltage_V = 1;
  // 1.95: the statistic's value that one in a thousand exceeds.
  EXPECT_LT(distance(input, normal(Q, Q / 25)), 1.95);
  input = exact;
  input.u_current_A = 4;
  EXPECT_LT(distance(input, normal(Q, Q * 4 / 200)), 1.95);
  input = exact;
  input.efficiency_low = 0.7;
  input.efficiency_high = 0.9;
  EXPECT_LT(distance(input, [&](double x) { return std::clamp((x / Q * 0.8 - 0.7) / 0.2, 0.0, 1.0); }), 1.95);
  input = exact;
  input.u_travel_speed_mm_s = 0.1;
  const auto of_speed = normal(5, 0.1);
  EXPECT_LT(distance(input, [&](double x) { return 1 - of_speed(Q * 5 / x); }), 1.95);
}

TEST(HeatInputSpread, agrees_with_first_order_and_with_all_samples_in_order) {
  const std::uint64_t rows = 500;
  const HeatInputSpread spread = heat_input_spread(pulsed, rows * draws_a_row, 1);
  std::vector<double> all = drawn(1, rows, best_instruction_set());
  ASSERT_EQ(spread.samples, all.size());
  long double sum = 0, squares = 0;
  for (const double x : all) sum += x;
  const long double mean = sum / static_cast<long double>(all.size());
  for (const double x : all) squares += (x - mean) * (x - mean);
  EXPECT_NEAR(spread.mean_kJ_mm, static_cast<double>(mean), 1e-13);
  const auto sd = static_cast<double>(std::sqrt(squares / static_cast<long double>(all.size() - 1)));
  EXPECT_NEAR(spread.standard_deviation_kJ_mm, sd, 1e-12);
  std::sort(all.begin(), all.end());
  const auto at = [&](double share) {
    const double place = share * static_cast<double>(all.size() - 1);
    const auto index = static_cast<std::size_t>(place);
    return all[index] + (all[index + 1] - all[index]) * (place - static_cast<double>(index));
  };
  EXPECT_DOUBLE_EQ(spread.low_kJ_mm, at(0.025));
  EXPECT_DOUBLE_EQ(spread.high_kJ_mm, at(0.975));
  // The two routes: a few parts in a thousand, which is the scatter of 256,000 samples.
  EXPECT_NEAR(spread.standard_deviation_kJ_mm, first_order_kJ_mm(), 0.006 * first_order_kJ_mm());
  EXPECT_NEAR(spread.mean_kJ_mm, 0.8 * 24 * 220 / 8 / 1000, 3e-4);
}

TEST(HeatInputDeviations, are_those_of_the_spread_and_of_first_order_for_each_step) {
  UncertainHeatInput input = pulsed;
  input.efficiency_low = input.efficiency_high = 0.8;
  input.u_efficiency = 0.02;
  const HeatInputDeviations drawn = heat_input_deviations(input, 400'000, 3);
  const HeatInputSpread spread = heat_input_spread(input, 400'000, 3);
  EXPECT_NEAR(drawn.heat_input_kJ_mm, spread.standard_deviation_kJ_mm, 1e-12);
  const double u_power = std::hypot(0.3 / 24, 4.0 / 220), u_energy = std::hypot(u_power, 0.12 / 8);
  EXPECT_NEAR(drawn.power_W / (24 * 220), u_power, 0.005 * u_power);
  EXPECT_NEAR(drawn.energy_kJ_mm / 0.66, u_energy, 0.005 * u_energy);
  EXPECT_NEAR(drawn.thermal_efficiency, 0.02, 0.0001);
}

TEST(HeatInputDeviations, are_what_calc_gives_as_its_second_route) {
  QuantityRequest request;
  for (const auto& [name, value] : {std::pair{"voltage", 24.0}, {"current", 220.0}, {"travel-speed", 8.0}})
    request.inputs.numbers.emplace(name, value);
  request.inputs.texts.emplace("process", "135");
  request.standard_uncertainty = {{"voltage", 0.3}, {"current", 4.0}, {"travel-speed", 0.12}};
  request.monte_carlo_samples = 200'000;
  const QuantityAnswer kernel = answer(*find_quantity("heat-input"), request);
  // A speed with a large uncertainty is computed sample by sample: the same figures except for random
  // scatter.
  request.standard_uncertainty["travel-speed"] = 0.9;
  const QuantityAnswer wide = answer(*find_quantity("heat-input"), request);
  for (const char* key : {"arc_power_W", "arc_energy_kJ_mm", "heat_input_kJ_mm", "arc_energy_kJ_in"}) {
    ASSERT_TRUE(kernel.u_monte_carlo.contains(key)) << key;
    EXPECT_NEAR(kernel.u_monte_carlo.at(key), kernel.u.at(key), 0.01 * kernel.u.at(key)) << key;
  }
  EXPECT_NEAR(wide.u_monte_carlo.at("arc_power_W"), kernel.u_monte_carlo.at("arc_power_W"),
              0.01 * kernel.u.at("arc_power_W"));
}

TEST(HeatInputSpread, any_number_of_threads_gives_the_same_bits) {
  ThreadPool one(1), three(3);
  const HeatInputSpread a = heat_input_spread(pulsed, 300'000, 9, one);
  const HeatInputSpread b = heat_input_spread(pulsed, 300'000, 9, three);
  EXPECT_EQ(a.mean_kJ_mm, b.mean_kJ_mm);
  EXPECT_EQ(a.standard_deviation_kJ_mm, b.standard_deviation_kJ_mm);
  EXPECT_EQ(a.low_kJ_mm, b.low_kJ_mm);
  EXPECT_EQ(a.high_kJ_mm, b.high_kJ_mm);
  EXPECT_NE(a.mean_kJ_mm, heat_input_spread(pulsed, 300'000, 10, three).mean_kJ_mm);
}

TEST(HeatInputSpread, one_row_and_no_uncertainty_are_enough) {
  const HeatInputSpread small = heat_input_spread(pulsed, 1, 1);
  EXPECT_EQ(small.samples, draws_a_row);
  EXPECT_LT(small.low_kJ_mm, small.high_kJ_mm);
  const HeatInputSpread exact = heat_input_spread({24, 0, 220, 0, 8, 0, 0.8, 0.8}, 5000, 1);
  EXPECT_DOUBLE_EQ(exact.low_kJ_mm, exact.high_kJ_mm);
  EXPECT_NEAR(exact.standard_deviation_kJ_mm, 0, 1e-12);
}

TEST(HeatInputSpread, what_cannot_be_drawn_is_refused) {
  for (const UncertainHeatInput& input : {UncertainHeatInput{0, 0, 220, 4, 8, 0.1, 0.8, 0.8},
                                          UncertainHeatInput{24, -1, 220, 4, 8, 0.1, 0.8, 0.8},
                                          UncertainHeatInput{24, 1, 220, 4, 8, 5, 0.8, 0.8},
                                          UncertainHeatInput{24, 1, 220, 4, 8, 0.1, 0.9, 0.8},
                                          UncertainHeatInput{24, 1, 220, 4, 8, 0.1, 0, 0.8},
                                          UncertainHeatInput{24, NAN, 220, 4, 8, 0.1, 0.8, 0.8}})
    EXPECT_THROW(heat_input_spread(input, 1000, 1), InputError);
}
