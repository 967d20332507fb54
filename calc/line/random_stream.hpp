#pragma once

#include <cstdint>

namespace seamtakt {

/// Uniform numbers that depend on what they are for and on nothing drawn before (common random numbers): the
/// same unit meets the same luck at the same stage when a buffer is added or the order changes.
/// Each is the finaliser of the SplitMix64 generator over a counter, 53 bits; neighbouring counters come out
/// unrelated. Source: the generator is public domain, constants recalled.
class RandomStream {
 public:
  RandomStream(std::uint64_t seed, std::uint64_t stage, std::uint64_t purpose)
      : key_(mixed(mixed(mixed(seed) + stage) + purpose)) {}

  /// In (0, 1], so that its logarithm is finite. `visit` counts a unit's services at the stage from 0,
  /// `index` the draws within one; both below 2^16, above that they repeat.
  double uniform(std::uint64_t unit, std::uint64_t visit = 0, std::uint64_t index = 0) const {
    const std::uint64_t counter = (unit << 32) + ((visit & 0xffff) << 16) + (index & 0xffff);
    return (static_cast<double>(mixed(key_ ^ counter) >> 11) + 1.0) * 0x1p-53;
  }

 private:
  static std::uint64_t mixed(std::uint64_t x) {
    x += 0x9e3779b97f4a7c15u;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
    x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
    return x ^ (x >> 31);
  }

  std::uint64_t key_;
};

}  // namespace seamtakt
