#pragma once

#include <chrono>
#include <cstdint>
#include <string>

namespace seamtakt::cli {

/// Shows how far long work on bytes has come, on standard error where that is a terminal: bar, rate, time
/// left. Nothing is shown in the first half second.
class ProgressBar {
 public:
  explicit ProgressBar(std::string what);
  ~ProgressBar();
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;

  /// `all` 0: not known.
  void show(std::uint64_t done_bytes, std::uint64_t all_bytes);

 private:
  using Clock = std::chrono::steady_clock;
  std::string what_;
  bool terminal_, shown_ = false;
  Clock::time_point begun_, next_;
};

/// The line that it shows.
std::string progress_text(const std::string& what, std::uint64_t done_bytes, std::uint64_t all_bytes,
                          double seconds);

}  // namespace seamtakt::cli
