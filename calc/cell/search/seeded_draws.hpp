#pragma once

#include <cstdint>

#include "base/split_mix.hpp"

namespace seamtakt {

/// Draws that depend on the seed alone, the same on every machine: the SplitMix64 generator.
class SeededDraws {
 public:
  explicit SeededDraws(std::uint64_t seed) : counter_(seed * 0xd1342543de82ef95u + 0x632be59bd9b4e019u) {}

  std::uint64_t next() {
    const std::uint64_t drawn = split_mix(counter_);
    counter_ += split_mix_step;
    return drawn;
  }

  /// 0 … count - 1. The bias of count/2^32 is far below what a search notices.
  int below(int count) {
    return static_cast<int>(((next() >> 32) * static_cast<std::uint64_t>(count)) >> 32);
  }
  /// [0, 1).
  double unit() { return unit_interval_from_zero(next()); }
  bool chance(double probability) { return unit() < probability; }

 private:
  std::uint64_t counter_;
};

}  // namespace seamtakt
