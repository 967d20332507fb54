#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <limits>
#include <vector>

namespace seamtakt {

/// The event calendar: each server's next end, and which is first; among equal times the lowest server
/// number. In blocks of sixteen, each searched by pairs without branches, so that setting a time costs
/// nothing and finding the first costs four dependent comparisons per block.
class EndTimes {
 public:
  static constexpr double never = std::numeric_limits<double>::infinity();

  explicit EndTimes(std::size_t servers) : end_s_((servers + block - 1) / block * block, never) {}

  int first() const {
    std::size_t first = first_of(0);
    for (std::size_t begin = block; begin < end_s_.size(); begin += block)
      if (const std::size_t other = first_of(begin); end_s_[other] < end_s_[first]) first = other;
    return static_cast<int>(first);
  }
  double end_s(int server) const { return end_s_[static_cast<std::size_t>(server)]; }
  void set(int server, double end_s) { end_s_[static_cast<std::size_t>(server)] = end_s; }

 private:
  static constexpr std::size_t block = 16;

  std::size_t first_of(std::size_t begin) const {
    std::array<double, block / 2> end_s;
    std::array<std::size_t, block / 2> at;
    for (std::size_t i = 0; i < block / 2; ++i) {
      const double left_s = end_s_[begin + 2 * i], right_s = end_s_[begin + 2 * i + 1];
      end_s[i] = std::min(left_s, right_s);
      at[i] = begin + 2 * i + (right_s < left_s);
    }
    for (std::size_t width = block / 4; width > 0; width /= 2)
      for (std::size_t i = 0; i < width; ++i) {
        const bool right = end_s[2 * i + 1] < end_s[2 * i];
        at[i] = right ? at[2 * i + 1] : at[2 * i];
        end_s[i] = std::min(end_s[2 * i], end_s[2 * i + 1]);
      }
    return at[0];
  }

  std::vector<double> end_s_;
};

}  // namespace seamtakt
