#pragma once

#include <cstdint>

namespace seamtakt {

/// Step by which the SplitMix64 generator counts.
inline constexpr std::uint64_t split_mix_step = 0x9e3779b97f4a7c15u;

/// The number that SplitMix64 draws at counter `x`: neighbouring counters give unrelated numbers, the same on
/// every machine. Not for secrets. Source: the generator is public domain, constants recalled.
constexpr std::uint64_t split_mix(std::uint64_t x) {
  x += split_mix_step;
  x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
  x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
  return x ^ (x >> 31);
}

/// [0, 1), 53 bits.
constexpr double unit_interval_from_zero(std::uint64_t bits) {
  return static_cast<double>(bits >> 11) * 0x1p-53;
}

/// (0, 1], 53 bits, so that its logarithm is finite.
constexpr double unit_interval_above_zero(std::uint64_t bits) {
  return (static_cast<double>(bits >> 11) + 1.0) * 0x1p-53;
}

}  // namespace seamtakt
