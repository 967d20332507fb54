#pragma once

#include <cstdint>
#include <cstdio>
#include <map>
#include <string>

#include "plan/plan.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

/// The arc log of the invented shift, pass by pass: its true values are listed at the top of demo_log.cpp.

struct WeldedUnit {
  std::string serial;
  const Weldment* weldment;
};

/// One pass of one seam of one unit as it is welded.
struct PassJob {
  const WeldedUnit* unit;
  const Seam* seam;
  const Schedule* schedule;
  const Wire* wire;
  const Robot* robot;
  int pass;
  bool low_current, reversed;
  std::uint64_t key;
};

struct Levels {
  double current_A, voltage_V;
};

/// Of the steady part, before noise.
Levels true_levels(const PassJob& job);

/// Random bits by counter: any sample can be had without those before it.
std::uint64_t random_bits(std::uint64_t key, std::uint64_t counter);

/// Text of a number with a fixed count of decimals.
std::string fixed(double value, int decimals);

struct TorchState;

/// Writes rows to a file.
class LogWriter {
 public:
  /// Writes the header. `file` must outlive the writer.
  LogWriter(std::FILE* file, double rate_Hz);

  /// std::system_error where writing fails.
  void weld(const PassJob& job);
  void pause();
  /// From the end of the robot's last pass, if any, to the begin of this one.
  void move_to(const PassJob& job);

 private:
  double now_s() const { return static_cast<double>(tick_) * step_s_; }
  void put(const std::string& text);
  void begin(const PassJob& job);
  void dwell(const PassJob& job, double along_mm, double seconds, double from_share, double to_share);
  void run(const PassJob& job, const WeldRun& run);
  void idle(const PassJob& job, double along_mm, double seconds);
  void row(const PassJob& job, const TorchState& state);

  std::FILE* file_;
  double step_s_;
  std::int64_t tick_ = 0;     ///< rows are on a fixed time grid
  std::uint64_t sample_ = 0;  ///< of this pass
  double interpass_C_ = 20;
  std::string identity_;
  Levels levels_{};
  std::map<std::string, Point_mm> ends_;  ///< by robot: where its last pass ended
};

}  // namespace seamtakt
