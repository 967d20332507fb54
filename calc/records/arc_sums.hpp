#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>

#include "records/compensated_sum.hpp"

namespace seamtakt {

constexpr double seconds(std::int64_t ns) {
  return static_cast<double>(ns) / 1e9;
}

/// A quantity times the time for which it held, and that time (ns, exact).
struct HeldValue {
  double times_ns = 0;
  std::int64_t ns = 0;

  void add(const HeldValue& other) {
    times_ns += other.times_ns;
    ns += other.ns;
  }
};

/// What one or more neighbouring intervals of a log, arc on, add to the sums.
struct ArcInterval {
  std::int64_t begin_ns = 0, end_ns = 0;
  std::int64_t time_ns = 0;      ///< arc time
  std::int64_t no_power_ns = 0;  ///< of it without a voltage, power or energy
  HeldValue current, voltage, power, wire_feed, travel_speed, gas_flow;
  double energy_J = 0;
  double travelled_mm = 0;                        ///< by the logged travel speed
  double wire_used_mm = 0;                        ///< by the wire counter
  double progress_mm = 0;                         ///< along the seam, signed
  double torch_fine_mm = 0, torch_coarse_mm = 0;  ///< along the torch's own path
  double along_low_mm = 0, along_high_mm = 0;     ///< span of the seam that was passed; where `located`
  bool located = false;
  double min_current_A = 0, max_current_A = 0, min_voltage_V = 0, max_voltage_V = 0;

  /// Takes in the interval that follows.
  void merge(const ArcInterval& next);
};

/// Mean of a held quantity over the time for which it was logged.
class WeightedMean {
 public:
  void add(const HeldValue& held) {
    if (held.ns == 0) return;
    sum_.add(held.times_ns);
    ns_ += held.ns;
  }
  std::int64_t time_ns() const { return ns_; }
  std::optional<double> mean() const {
    if (ns_ == 0) return std::nullopt;
    return sum_.value() / static_cast<double>(ns_);
  }

 private:
  CompensatedSum sum_;
  std::int64_t ns_ = 0;
};

/// Sums over the arc-on time of a pass, or over its steady part.
struct ArcSums {
  std::int64_t time_ns = 0, no_power_ns = 0;
  WeightedMean current, voltage, power, wire_feed, travel_speed, gas_flow;
  CompensatedSum energy_J, travelled_mm, wire_used_mm, progress_mm, torch_fine_mm, torch_coarse_mm;
  std::optional<double> min_current_A, max_current_A, min_voltage_V, max_voltage_V;

  void add(const ArcInterval& interval);
};

}  // namespace seamtakt
