#pragma once

#include <cstddef>
#include <vector>

#include "records/arc_sums.hpp"

namespace seamtakt {

/// Intervals that wait for what follows them. Beyond 4096 of them neighbours are joined two by two: only at
/// logging rates at which that many fall into a crater's or a frozen logger's seconds does their resolution
/// get coarser.
class IntervalQueue {
 public:
  void push(const ArcInterval& interval) {
    if (first_ == waiting_.size()) clear();
    if (waiting_.size() >= most) make_room();
    waiting_.push_back(interval);
  }
  bool empty() const { return first_ == waiting_.size(); }
  const ArcInterval& front() const { return waiting_[first_]; }
  void pop() { ++first_; }
  void clear() {
    waiting_.clear();
    first_ = 0;
  }
  /// Gives the memory back.
  void release() {
    waiting_ = {};
    first_ = 0;
  }

 private:
  static constexpr std::size_t most = 4096;

  void make_room() {
    waiting_.erase(waiting_.begin(), waiting_.begin() + static_cast<std::ptrdiff_t>(first_));
    first_ = 0;
    if (waiting_.size() < most / 2) return;
    std::size_t to = 0;
    for (std::size_t from = 0; from < waiting_.size(); from += 2, ++to) {
      waiting_[to] = waiting_[from];
      if (from + 1 < waiting_.size()) waiting_[to].merge(waiting_[from + 1]);
    }
    waiting_.resize(to);
  }

  std::vector<ArcInterval> waiting_;
  std::size_t first_ = 0;
};

}  // namespace seamtakt
