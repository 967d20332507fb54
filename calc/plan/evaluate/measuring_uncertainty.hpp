#pragma once

#include <cmath>
#include <optional>
#include <string_view>

#include "plan/plan.hpp"

namespace seamtakt {

/// Measured values, or those that will be. Empty: not measured, and not part of the uncertainty.
struct MeasuredArc {
  std::optional<double> current_A, voltage_V, travel_speed_mm_s, wire_feed_speed_m_min;
};

/// Relative standard uncertainties of those values; 0 where nothing is known. `known` tells whether the plan
/// states any.
struct MeasuringUncertainty {
  double current = 0, voltage = 0, travel_speed = 0, wire_feed_speed = 0;
  /// Of the arc's voltage, by the resistance of the leads that the reading is corrected for.
  double leads = 0;
  /// Of the waveform factor that the product of voltage and current is multiplied with.
  double waveform_factor = 0;
  /// Of a planned current that follows from the melting law.
  double melting_law = 0;
  bool known = false;

  double voltage_in_all() const { return std::hypot(voltage, leads); }
  /// The power follows the voltage and the waveform factor alike.
  double voltage_and_factor() const { return std::hypot(voltage, leads, waveform_factor); }
  double current_in_all() const { return std::hypot(current, melting_law); }
};

/// Whether a plan states any at all.
inline bool states_uncertainty(const Plan& plan) {
  return plan.measuring || !plan.instruments.empty();
}

/// The robot whose instruments count: the first of the seam's list, else the cell's first; empty without one.
/// Borrows the plan.
std::string_view measured_robot(const Plan& plan, const Seam& seam);

/// From the instruments of the robot (or those without a robot), else from `measuring`
/// (relative_uncertainty). Voltage is the arc's: that of the reading less what the leads lose, where the
/// voltmeter states their resistance.
MeasuringUncertainty measuring_uncertainty(const Plan& plan, std::string_view robot,
                                           const MeasuredArc& measured);

}  // namespace seamtakt
