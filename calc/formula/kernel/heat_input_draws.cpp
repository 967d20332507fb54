#include "formula/kernel/vector_math.hpp"
// Declares the vector functions before any template that calls them is seen.

#include <cmath>
#include <numbers>

#include "formula/heat_input.hpp"
#include "formula/kernel/heat_input_draws.hpp"
#include "formula/kernel/row_kernel.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t pairs = philox_row_length;

/// Eight random words for each pair of samples.
struct DrawRow {
  const std::uint64_t* words[8];
  UncertainHeatInput input;
  HeatInputDraws* draws;
};

/// Inside (0, 1): the middle of one of 2^32 equal parts. By way of a signed number, which vector units
/// convert.
inline double unit_interval(std::uint64_t word) {
  const auto bits = static_cast<std::int32_t>(static_cast<std::uint32_t>(word) ^ 0x80000000u);
  return (static_cast<double>(bits) + (0x1p31 + 0.5)) * 0x1p-32;
}

/// Sine and cosine of an angle within an eighth of a turn of 0, by their series: the first term left out is
/// below 1e-15.
inline double sine_near_0(double x) {
  const double y = x * x;
  return x * (1 + y * (-1.0 / 6 +
                       y * (1.0 / 120 +
                            y * (-1.0 / 5040 +
                                 y * (1.0 / 362880 +
                                      y * (-1.0 / 39916800 + y * (1.0 / 6227020800 - y / 1307674368000)))))));
}
inline double cosine_near_0(double x) {
  const double y = x * x;
  return 1 + y * (-1.0 / 2 +
                  y * (1.0 / 24 +
                       y * (-1.0 / 720 + y * (1.0 / 40320 + y * (-1.0 / 3628800 +
                                                                 y * (1.0 / 479001600 - y / 87178291200))))));
}

/// Box and Muller: from two words two deviates, one for either sample of a pair. The angle's two highest bits
/// choose the quadrant, so nothing needs to be reduced; the rest lies evenly within an eighth of a turn of
/// its axis.
inline void fill_normal(const std::uint64_t* a, const std::uint64_t* b, double mean, double u, double* out) {
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < pairs; ++i) {
    const double radius = std::sqrt(-2.0 * std::log(unit_interval(a[i]))) * u;
    const auto bits = static_cast<std::uint32_t>(b[i]);
    const double part = static_cast<double>(static_cast<std::int32_t>(bits << 2)) + 0.5;  // -2^31 .. 2^31
    const double angle = part * (std::numbers::pi / 4 * 0x1p-31);
    const double sine = sine_near_0(angle), cosine = cosine_near_0(angle);
    const bool is_across = (bits & 0x40000000u) != 0;
    const double sign = (bits & 0x80000000u) != 0 ? -radius : radius;
    out[i] = mean + sign * (is_across ? sine : cosine);
    out[i + pairs] = mean + sign * (is_across ? -cosine : sine);
  }
}

inline void fill_even(const std::uint64_t* a, const std::uint64_t* b, double low, double high, double* out) {
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < pairs; ++i) {
    out[i] = low + (high - low) * unit_interval(a[i]);
    out[i + pairs] = low + (high - low) * unit_interval(b[i]);
  }
}

inline void draw_body(const DrawRow& given) {
  const DrawRow row = given;
  const UncertainHeatInput& x = row.input;
  double voltage[draws_a_row], current[draws_a_row], speed[draws_a_row];
  double* efficiency = row.draws->thermal_efficiency;
  fill_normal(row.words[0], row.words[1], x.voltage_V, x.u_voltage_V, voltage);
  fill_normal(row.words[2], row.words[3], x.current_A, x.u_current_A, current);
  fill_normal(row.words[4], row.words[5], x.travel_speed_mm_s, x.u_travel_speed_mm_s, speed);
  if (x.u_efficiency > 0)
    fill_normal(row.words[6], row.words[7], (x.efficiency_low + x.efficiency_high) / 2, x.u_efficiency,
                efficiency);
  else
    fill_even(row.words[6], row.words[7], x.efficiency_low, x.efficiency_high, efficiency);
  double *power = row.draws->power_W, *energy = row.draws->energy_kJ_mm, *heat = row.draws->heat_input_kJ_mm;
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < draws_a_row; ++i) {
    const double P = arc_power_W<double>(voltage[i], current[i]);
    const double E = arc_energy_kJ_mm<double>(P, speed[i]);
    power[i] = P;
    energy[i] = E;
    heat[i] = heat_input_kJ_mm<double>(E, efficiency[i]);
  }
}

SEAMTAKT_ROW_KERNEL(draw_row, DrawRow, draw_body)

}  // namespace

void draw_heat_inputs(std::uint64_t seed, std::uint64_t row, const UncertainHeatInput& input,
                      HeatInputDraws& draws, InstructionSet set) {
  std::uint64_t words[8][philox_row_length];
  DrawRow draw{{}, input, &draws};
  for (std::uint32_t stream = 0; stream < 2; ++stream)
    philox_row({seed,
                row * philox_row_length,
                stream,
                {words[4 * stream], words[4 * stream + 1], words[4 * stream + 2], words[4 * stream + 3]}},
               set);
  for (std::size_t k = 0; k < 8; ++k) draw.words[k] = words[k];
  draw_row(draw, set);
}

}  // namespace seamtakt
