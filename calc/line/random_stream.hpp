#pragma once

#include <cstdint>

#include "base/split_mix.hpp"

namespace seamtakt {

/// Uniform numbers that depend only on their purpose, not on earlier draws (common random numbers): the
/// same unit gets the same random numbers at the same stage when a buffer is added or the order changes.
/// Each is SplitMix64 over a counter, 53 bits.
class RandomStream {
 public:
  RandomStream(std::uint64_t seed, std::uint64_t stage, std::uint64_t purpose)
      : key_(split_mix(split_mix(split_mix(seed) + stage) + purpose)) {}

  /// In (0, 1], so that its logarithm is finite. `visit` counts a unit's services at the stage from 0,
  /// `index` the draws within one; both below 2^16, above that they repeat.
  double uniform(std::uint64_t unit, std::uint64_t visit = 0, std::uint64_t index = 0) const {
    const std::uint64_t counter = (unit << 32) + ((visit & 0xffff) << 16) + (index & 0xffff);
    return unit_interval_above_zero(split_mix(key_ ^ counter));
  }

 private:
  std::uint64_t key_;
};

}  // namespace seamtakt
