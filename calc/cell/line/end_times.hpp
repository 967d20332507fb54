#pragma once

#include <cstddef>
#include <limits>
#include <vector>

namespace seamtakt {

/// The event calendar: each server's next end, and which is first. A winner tree, so that a change costs
/// log2(servers) comparisons; among equal times the lowest server number comes first.
class EndTimes {
 public:
  static constexpr double never = std::numeric_limits<double>::infinity();

  explicit EndTimes(std::size_t servers) {
    while (leaves_ < servers) leaves_ *= 2;
    end_s_.assign(leaves_, never);
    winner_.resize(2 * leaves_);
    for (std::size_t i = 0; i < leaves_; ++i) winner_[leaves_ + i] = static_cast<int>(i);
    for (std::size_t node = leaves_ - 1; node > 0; --node) winner_[node] = better(node);
  }

  int first() const { return winner_[1]; }
  double end_s(int server) const { return end_s_[static_cast<std::size_t>(server)]; }

  void set(int server, double end_s) {
    end_s_[static_cast<std::size_t>(server)] = end_s;
    for (std::size_t node = (leaves_ + static_cast<std::size_t>(server)) / 2; node > 0; node /= 2)
      winner_[node] = better(node);
  }

 private:
  int better(std::size_t node) const {
    const int left = winner_[2 * node], right = winner_[2 * node + 1];
    return end_s_[static_cast<std::size_t>(right)] < end_s_[static_cast<std::size_t>(left)] ? right : left;
  }

  std::size_t leaves_ = 1;
  std::vector<double> end_s_;
  std::vector<int> winner_;
};

}  // namespace seamtakt
