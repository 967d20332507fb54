#include "cli/cell/best_search.hpp"

#include <signal.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>

#include "base/error.hpp"
#include "cell/bound/lower_bound.hpp"
#include "cli/common/output_view.hpp"

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

constexpr std::size_t longest_line = 500;

/// One line, written over itself.
void BestSearch::show() {
  const double gap_pct = gap_to_bound_pct(last_.best_s, last_.bound_s);
  const double elapsed_s = std::chrono::duration<double>(Clock::now() - begun_).count();
  const bool has_end = share_s_ < 1e9;
  std::vector<Argument> arguments{{"weldment", weldment_},
                                  {"best", UnitValue{last_.best_s, "s", 6}},
                                  {"bound", UnitValue{last_.bound_s, "s", 6}},
                                  {"gap", UnitValue{gap_pct, "%", 3}},
                                  {"elapsed", UnitValue{elapsed_s, "s", 2}}};
  if (has_end) arguments.emplace_back("share", UnitValue{share_s_, "s", 2});
  const Sentence line(has_end ? "cli.cycle.progress.of"_key : "cli.cycle.progress"_key, std::move(arguments));
  // A weldment's name is a stranger's.
  std::fprintf(stderr, "\r\033[K%s", printable(shown_text(line), longest_line).c_str());
}

void BestSearch::end_line() {
  if (!terminal_ || !running_) return;
  show();
  std::fputc('\n', stderr);
  running_ = false;
}

}  // namespace seamtakt::cli
