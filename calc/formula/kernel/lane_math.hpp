#pragma once

#include <bit>
#include <cstdint>
#include <numbers>

/// Exponential, logarithm, sine and cosine for the loops of row kernels, from + - * / and shifts of bits
/// alone: a loop that calls them is vectorised without a library's vector functions, keeps their constants in
/// registers, and gives the same bits with every instruction set. Each holds in the range that its kernel
/// needs, no further. The polynomials go through the function at the Chebyshev points of the range (computed
/// with 60 digits); their relative error is stated with each, and a test holds them to the library's
/// functions.
namespace seamtakt::detail {

/// The lowest number whose exponential isn't too small to be a normal number.
inline constexpr double lowest_exponent = -708;

/// exp(x) from lowest_exponent to 0, within 3e-14.
inline double exp_of_negative(double x) {
  // Adding it rounds to a whole number, which is then in the lowest bits; subtracting it gives that number.
  constexpr double rounder = 0x1.8p52;
  constexpr double ln_2_high = 0x1.62e42feep-1, ln_2_low = 0x1.a39ef35793c76p-33;
  const double shifted = x * std::numbers::log2e + rounder;
  const double power = shifted - rounder;
  const double r = (x - power * ln_2_high) - power * ln_2_low;  // within +-ln(2)/2: 2e-14
  const double r2 = r * r, r4 = r2 * r2;
  // Pairs of terms, so that they needn't wait for each other.
  const double terms_0 = (0x1.000000000003dp+0 + r * 0x1.0000000000006p+0) +
                         r2 * (0x1.ffffffffe74e9p-2 + r * 0x1.5555555550d86p-3);
  const double terms_4 = (0x1.55555588b90a6p-5 + r * 0x1.11111123bf5ecp-7) +
                         r2 * (0x1.6c162bb650919p-10 + r * 0x1.a01994c72bc77p-13);
  const double terms_8 = 0x1.a17df2ac4de16p-16 + r * 0x1.72e1091c19b60p-19;
  const double fraction = terms_0 + r4 * (terms_4 + r4 * terms_8);
  return std::bit_cast<double>(std::bit_cast<std::uint64_t>(fraction) +
                               (std::bit_cast<std::uint64_t>(shifted) << 52));
}

/// x = m 2^power with m from sqrt(1/2) to sqrt(2), as s = (m - 1)/(m + 1).
struct SplitFraction {
  double s, power;
};

/// For 0 < x < 1, a normal number.
inline SplitFraction split_fraction(double x) {
  constexpr std::uint64_t one = std::bit_cast<std::uint64_t>(1.0);
  constexpr std::uint64_t root_half = std::bit_cast<std::uint64_t>(std::numbers::sqrt2 / 2);
  constexpr std::uint64_t two_52 = std::bit_cast<std::uint64_t>(0x1p52);
  const std::uint64_t bits = std::bit_cast<std::uint64_t>(x);
  const std::uint64_t exponent = (bits + (one - root_half)) >> 52;
  const double m = std::bit_cast<double>(bits - (exponent << 52) + one);
  return {(m - 1) / (m + 1), std::bit_cast<double>(exponent | two_52) - (0x1p52 + 1023)};
}

/// ln(x) of what was split, within 3e-14: ln m = 2 artanh(s), |s| up to 0.172.
inline double log_of(const SplitFraction& x) {
  const double z = x.s * x.s, z2 = z * z;
  const double series = (0x1.fffffffffff12p-1 + z * 0x1.55555556716b3p-2) +
                        z2 * ((0x1.9999962bb080cp-3 + z * 0x1.249438433f333p-3) +
                              z2 * (0x1.c620e20428fc7p-4 + z * 0x1.9193a006bbaedp-4));
  return x.power * std::numbers::ln2 + 2 * x.s * series;
}

/// Within an eighth of a turn of 0: 5e-15 and 1e-13.
inline double sine_near_0(double x) {
  const double y = x * x, y2 = y * y;
  const double series = (0x1.fffffffffffd9p-1 - y * 0x1.5555555550efep-3) +
                        y2 * ((0x1.1111110bde5e3p-7 - y * 0x1.a019f8a207d3fp-13) +
                              y2 * (0x1.71d7317b8ee33p-19 - y * 0x1.a9507f3711e2dp-26));
  return x * series;
}
inline double cosine_near_0(double x) {
  const double y = x * x, y2 = y * y;
  return (0x1.ffffffffffe0bp-1 - y * 0x1.ffffffffe3763p-2) +
         y2 * ((0x1.5555554476425p-5 - y * 0x1.6c16b2d3e61f5p-10) +
               y2 * (0x1.a00e9685da9c4p-16 - y * 0x1.23c5c15441a00p-22));
}

}  // namespace seamtakt::detail
