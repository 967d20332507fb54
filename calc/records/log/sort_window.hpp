#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "records/log/log_sample.hpp"

namespace seamtakt {

/// Puts samples that are out of order by no more than `rows` places into the order of their times. Equal
/// times keep the order of the log.
class SortWindow {
 public:
  explicit SortWindow(std::size_t rows) : rows_(rows) {}

  /// Takes a sample and passes on those that no later sample can precede.
  template <class Take>
  void add(const LogSample& sample, const Take& take) {
    if (rows_ == 0) return take(sample);
    waiting_.push_back(sample);
    std::push_heap(waiting_.begin(), waiting_.end(), later);
    if (waiting_.size() > rows_) hand_on(take);
  }
  template <class Take>
  void flush(const Take& take) {
    while (!waiting_.empty()) hand_on(take);
    waiting_.shrink_to_fit();
  }

 private:
  static bool later(const LogSample& a, const LogSample& b) {
    return a.ns != b.ns ? a.ns > b.ns : a.line > b.line;
  }

  template <class Take>
  void hand_on(const Take& take) {
    std::pop_heap(waiting_.begin(), waiting_.end(), later);
    const LogSample first = waiting_.back();
    waiting_.pop_back();
    take(first);
  }

  std::size_t rows_;
  std::vector<LogSample> waiting_;
};

}  // namespace seamtakt
