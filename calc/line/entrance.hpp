#pragma once

#include <algorithm>
#include <functional>
#include <limits>
#include <optional>
#include <queue>
#include <vector>

#include "line/line_model.hpp"

namespace seamtakt {

/// The units before the line. The first stage takes the first one of the sequence that is complete: a unit
/// that isn't yet lets those behind it pass, and is back in its place once it is.
class Entrance {
 public:
  static constexpr double never = std::numeric_limits<double>::infinity();

  explicit Entrance(const LineModel& model)
      : units_(static_cast<std::uint32_t>(model.unit_count())), available_s_(model.available_s) {
    for (std::uint32_t unit = 0; unit < available_s_.size(); ++unit)
      if (available_s_[unit] > 0) expected_.push_back(unit);
    std::stable_sort(expected_.begin(), expected_.end(),
                     [&](std::uint32_t a, std::uint32_t b) { return available_s_[a] < available_s_[b]; });
    skip_expected();
  }

  /// The unit that goes in at this time; empty where none is complete.
  std::optional<std::uint32_t> take(double now_s) {
    for (; came_ < expected_.size() && available_s_[expected_[came_]] <= now_s; ++came_)
      complete_.push(expected_[came_]);
    if (!complete_.empty() && (next_ == units_ || complete_.top() < next_)) {
      const std::uint32_t unit = complete_.top();
      complete_.pop();
      return unit;
    }
    if (next_ == units_) return std::nullopt;
    const std::uint32_t unit = next_++;
    skip_expected();
    return unit;
  }

  /// When the next unit will be complete; `never` where all are.
  double next_s() const { return came_ < expected_.size() ? available_s_[expected_[came_]] : never; }

 private:
  void skip_expected() {
    if (available_s_.empty()) return;
    while (next_ < units_ && available_s_[next_] > 0) ++next_;
  }

  std::uint32_t units_, next_ = 0;
  const std::vector<double>& available_s_;
  std::vector<std::uint32_t> expected_;  ///< not complete at 0, in the order in which they will be
  std::size_t came_ = 0;                 ///< of those
  std::priority_queue<std::uint32_t, std::vector<std::uint32_t>, std::greater<>> complete_;
};

}  // namespace seamtakt
