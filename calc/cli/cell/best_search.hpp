#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <string>

#include "cell/search/best_order.hpp"

namespace seamtakt::cli {

/// The limits and the progress line of `cycle --order best`: time shared by the weldments (time left by one
/// goes to the next), steps for each, and Ctrl-C, which ends the search and keeps the best found (a second
/// one ends the program). Progress goes to standard error where that is a terminal.
class BestSearch {
 public:
  /// `seconds` for all weldments together; infinity where only steps are limited. `steps` 0: without limit.
  BestSearch(double seconds, std::uint64_t steps, std::size_t weldments);
  ~BestSearch();
  BestSearch(const BestSearch&) = delete;
  BestSearch& operator=(const BestSearch&) = delete;

  /// For the next weldment, from now on. The options refer to this object.
  BestOptions options(const std::string& weldment, std::uint64_t seed);
  static bool interrupted();

 private:
  using Clock = std::chrono::steady_clock;
  bool must_stop();
  void show();
  void end_line();

  double seconds_left_;
  std::uint64_t steps_;
  std::size_t weldments_left_;
  std::string weldment_;
  Clock::time_point begun_{}, shown_{};
  double share_s_ = 0;
  bool running_ = false, terminal_ = false;
  BestProgress last_;
};

}  // namespace seamtakt::cli
