#include "cli/common/progress_bar.hpp"

#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <utility>

#include "base/units/units.hpp"
#include "cli/common/output_view.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::size_t bar_width = 30;

std::string megabytes(double bytes) {
  return rounded_text(bytes / 1e6, 4);
}

}  // namespace

std::string progress_text(const std::string& what, std::uint64_t done_bytes, std::uint64_t all_bytes,
                          double seconds) {
  const auto done = static_cast<double>(done_bytes), all = static_cast<double>(all_bytes);
  const double rate = seconds > 0 ? done / seconds : 0;
  std::string text = what + " ";
  if (all > 0) {
    const double share = std::clamp(done / all, 0.0, 1.0);
    const auto full = static_cast<std::size_t>(share * bar_width);
    text += "[" + std::string(full, '#') + std::string(bar_width - full, '.') + "] " +
            rounded_text(std::floor(100 * share), 3) + " % ";
  }
  text += megabytes(done) + " MB, " + megabytes(rate) + " MB/s";
  if (all > done && rate > 0)
    text += ", " + shown_text(Sentence("cli.progress.left"_key,
                                       {{"time", UnitValue{std::ceil((all - done) / rate), "s"}}}));
  return text;
}

ProgressBar::ProgressBar(std::string what)
    : what_(std::move(what)),
      terminal_(::isatty(STDERR_FILENO) == 1),
      begun_(Clock::now()),
      next_(begun_ + std::chrono::milliseconds(500)) {}

ProgressBar::~ProgressBar() {
  if (shown_) std::cerr << "\r\x1b[K" << std::flush;
}

void ProgressBar::show(std::uint64_t done_bytes, std::uint64_t all_bytes) {
  if (!terminal_) return;
  const Clock::time_point now = Clock::now();
  if (now < next_) return;
  next_ = now + std::chrono::milliseconds(200);
  shown_ = true;
  const double seconds = std::chrono::duration<double>(now - begun_).count();
  std::cerr << '\r' << progress_text(what_, done_bytes, all_bytes, seconds) << "\x1b[K" << std::flush;
}

}  // namespace seamtakt::cli
