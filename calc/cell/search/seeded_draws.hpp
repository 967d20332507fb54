#pragma once

#include <cstdint>

namespace seamtakt {

/// Draws that depend on the seed alone, the same on every machine: the SplitMix64 generator, a hash of a
/// counter.
class SeededDraws {
 public:
  explicit SeededDraws(std::uint64_t seed) : counter_(seed * 0xd1342543de82ef95u + 0x632be59bd9b4e019u) {}

  std::uint64_t next() {
    counter_ += 0x9e3779b97f4a7c15u;
    std::uint64_t x = counter_;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
    x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
    return x ^ (x >> 31);
  }

  /// 0 … count - 1. The bias of count/2^32 is far below what a search notices.
  int below(int count) {
    return static_cast<int>(((next() >> 32) * static_cast<std::uint64_t>(count)) >> 32);
  }
  /// [0, 1).
  double unit() { return static_cast<double>(next() >> 11) * 0x1p-53; }
  bool chance(double probability) { return unit() < probability; }

 private:
  std::uint64_t counter_;
};

}  // namespace seamtakt
