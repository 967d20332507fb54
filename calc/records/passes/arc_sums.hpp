#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>

#include "records/log/kernel/compensated_sum.hpp"
#include "records/log/kernel/exact_sum.hpp"

namespace seamtakt {

constexpr double seconds(std::int64_t ns) {
  return static_cast<double>(ns) / 1e9;
}

/// What of an interval, or of neighbouring ones, counts for the steady part of an arc.
struct SteadyPiece {
  std::int64_t end_ns = 0, time_ns = 0;
  HeldSum current, voltage, power, wire_feed, travel_speed, gas_flow;
  double progress_mm = 0;  ///< along the seam, signed

  void add(const SteadyPiece& other);
};

/// What one or more neighbouring intervals of a log, arc on, add to the sums.
struct ArcPiece {
  std::int64_t begin_ns = 0;
  SteadyPiece steady;
  std::int64_t no_power_ns = 0;                     ///< time without a voltage, power or energy
  Int128 current_squared = 0, voltage_squared = 0;  ///< A^2 and V^2 on the grid, times ns
  Int128 energy_twice = 0;                          ///< trapezoids' double areas, W on the grid times ns
  Int128 travelled_twice = 0;                       ///< likewise by the logged travel speed
  double counted_J = 0;                             ///< by an energy counter
  double wire_used_mm = 0;                          ///< by the wire counter
  double torch_fine_mm = 0, torch_coarse_mm = 0;    ///< along the torch's own path
  double along_low_mm = 0, along_high_mm = 0;       ///< span of the seam that was passed; where `located`
  bool located = false;
  double min_current_A = 0, max_current_A = 0, min_voltage_V = 0, max_voltage_V = 0;

  /// Takes in the interval that follows.
  void merge(const ArcPiece& next);
};

/// Sums over the steady part of a pass.
struct SteadySums {
  std::int64_t time_ns = 0;
  HeldSum current, voltage, power, wire_feed, travel_speed, gas_flow;
  CompensatedSum progress_mm;

  void add(const SteadyPiece& piece);
};

/// Sums over the arc-on time of a pass.
struct ArcSums {
  SteadySums means;  ///< the same quantities, over all of the arc time
  std::int64_t no_power_ns = 0;
  Int128 current_squared = 0, voltage_squared = 0, energy_twice = 0, travelled_twice = 0;
  CompensatedSum counted_J, wire_used_mm, torch_fine_mm, torch_coarse_mm;
  std::optional<double> min_current_A, max_current_A, min_voltage_V, max_voltage_V;

  void add(const ArcPiece& piece);

  std::optional<double> mean_power_W() const;
  double energy_J() const;      ///< by trapezoid, or by the counter
  double travelled_mm() const;  ///< by the logged travel speed
  /// Root of the mean square and standard deviation, weighted with time; empty without a sample.
  std::optional<double> rms_current_A() const;
  std::optional<double> sd_current_A() const;
  std::optional<double> sd_voltage_V() const;
};

}  // namespace seamtakt
