#include <bit>
#include <cmath>
#include <numbers>

#include "formula/heat/heat_input.hpp"
#include "formula/kernel/heat_input_draws.hpp"
#include "formula/kernel/lane_math.hpp"
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

/// A whole number from 0 to 2^52 as a double, by writing it into the fraction bits of 2^52 + number: vector
/// units can't convert lanes of 64 bits.
inline double lane_number(std::uint64_t whole) {
  return std::bit_cast<double>(whole | std::bit_cast<std::uint64_t>(0x1p52)) - 0x1p52;
}

/// Inside (0, 1): the middle of one of 2^32 equal parts.
inline double unit_interval(std::uint64_t word) {
  return (lane_number(word & 0xffffffffu) + 0.5) * 0x1p-32;
}

/// `value` with its sign turned where the highest bit of `sign` is set.
inline double turned(double value, std::uint64_t sign) {
  constexpr std::uint64_t highest = std::uint64_t{1} << 63;
  return std::bit_cast<double>(std::bit_cast<std::uint64_t>(value) ^ (sign & highest));
}

/// `a` where `mask` is all ones, `b` where it is all zeros.
inline double chosen(std::uint64_t mask, double a, double b) {
  return std::bit_cast<double>((std::bit_cast<std::uint64_t>(a) & mask) |
                               (std::bit_cast<std::uint64_t>(b) & ~mask));
}

/// Box and Muller: from two words two deviates, one for either sample of a pair. The angle's two highest bits
/// choose the quadrant, so no range reduction is needed; the rest is uniform within an eighth of a turn of
/// its axis. In stages: each is a short chain of operations, several of which a processor executes at a time.
inline void fill_normal(const std::uint64_t* a, const std::uint64_t* b, double mean, double u, double* out) {
  double s[pairs], power[pairs];
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < pairs; ++i) {
    const detail::SplitFraction split = detail::split_fraction(unit_interval(a[i]));
    s[i] = split.s;
    power[i] = split.power;
  }
  double* radius = s;
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < pairs; ++i) radius[i] = std::sqrt(-2.0 * detail::log_of({s[i], power[i]})) * u;
  double sine[pairs], cosine[pairs];
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < pairs; ++i) {
    // -2^31 to 2^31 from the lower 30 bits.
    const double part = lane_number((b[i] << 2 ^ 0x80000000u) & 0xffffffffu) - (0x1p31 - 0.5);
    const double angle = part * (std::numbers::pi / 4 * 0x1p-31);
    sine[i] = detail::sine_near_0(angle);
    cosine[i] = detail::cosine_near_0(angle);
  }
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < pairs; ++i) {
    const std::uint64_t is_across = 0 - (b[i] >> 30 & 1);
    const double signed_radius = turned(radius[i], b[i] << 32);
    out[i] = mean + signed_radius * chosen(is_across, sine[i], cosine[i]);
    out[i + pairs] = mean + signed_radius * chosen(is_across, -cosine[i], sine[i]);
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
