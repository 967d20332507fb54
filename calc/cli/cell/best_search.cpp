#include "cli/cell/best_search.hpp"

#include <signal.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>

#include "base/units/units.hpp"
#include "cell/bound/lower_bound.hpp"

namespace seamtakt::cli {

namespace {

volatile std::sig_atomic_t interrupt = 0;

void note_interrupt(int) {
  interrupt = 1;
}

void set_handler(void (*handler)(int)) {
  struct sigaction action {};
  action.sa_handler = handler;
  action.sa_flags = static_cast<int>(SA_RESETHAND);
  sigaction(SIGINT, &action, nullptr);
}

}  // namespace

BestSearch::BestSearch(double seconds, std::uint64_t steps, std::size_t weldments)
    : seconds_left_(seconds),
      steps_(steps),
      weldments_left_(weldments),
      terminal_(isatty(STDERR_FILENO) == 1) {
  interrupt = 0;
  set_handler(note_interrupt);
}

BestSearch::~BestSearch() {
  end_line();
  set_handler(SIG_DFL);
}

bool BestSearch::interrupted() {
  return interrupt != 0;
}

BestOptions BestSearch::options(const std::string& weldment, std::uint64_t seed) {
  const auto now = Clock::now();
  if (running_) seconds_left_ -= std::chrono::duration<double>(now - begun_).count();
  if (running_) end_line();
  running_ = true;
  begun_ = now;
  weldment_ = weldment;
  share_s_ = seconds_left_ / static_cast<double>(weldments_left_ > 0 ? weldments_left_-- : 1);
  BestOptions options;
  options.seed = seed;
  options.steps = steps_;
  options.stop = [this] { return must_stop(); };
  options.progress = [this](const BestProgress& progress) { last_ = progress; };
  return options;
}

bool BestSearch::must_stop() {
  if (interrupted()) return true;
  const auto now = Clock::now();
  if (terminal_ && std::chrono::duration<double>(now - shown_).count() > 0.2) {
    shown_ = now;
    show();
  }
  return std::chrono::duration<double>(now - begun_).count() >= share_s_;
}

/// One line, written over itself.
void BestSearch::show() {
  const double gap_pct = gap_to_bound_pct(last_.best_s, last_.bound_s);
  const double elapsed_s = std::chrono::duration<double>(Clock::now() - begun_).count();
  std::string line = weldment_ + ": best " + rounded_text(last_.best_s, 6) + " s, bound " +
                     rounded_text(last_.bound_s, 6) + " s, gap " + rounded_text(gap_pct, 3) + " %, " +
                     rounded_text(elapsed_s, 2) + " s";
  if (share_s_ < 1e9) line += " of " + rounded_text(share_s_, 2) + " s";
  std::fprintf(stderr, "\r\033[K%s", line.c_str());
}

void BestSearch::end_line() {
  if (!terminal_ || !running_) return;
  show();
  std::fputc('\n', stderr);
  running_ = false;
}

}  // namespace seamtakt::cli
