#pragma once

#include <string_view>

#include "plan/plan.hpp"

namespace seamtakt {

/// Standard uncertainties (absolute, in the unit of the value) of what a pass is welded with; 0 where nothing
/// is known. `known` tells whether the plan states any.
struct MeasuringUncertainty {
  double current_A = 0, voltage_V = 0, travel_speed_mm_s = 0, wire_feed_speed_m_min = 0;
  bool known = false;
};

/// Whether a plan states any at all.
inline bool states_uncertainty(const Plan& plan) {
  return plan.measuring || !plan.instruments.empty();
}

/// The robot whose instruments count: the first of the seam's list, else the cell's first; empty without one.
/// Borrows the plan.
std::string_view measured_robot(const Plan& plan, const Seam& seam);

/// From the instruments of the seam's first robot (or those without a robot), else from `measuring`. An
/// instrument's half width is taken as rectangular: u = a/sqrt(3) (JCGM 100:2008, 4.3.7).
MeasuringUncertainty measuring_uncertainty(const Plan& plan, const Seam& seam, const Schedule& schedule,
                                           double current_A, double voltage_V);

}  // namespace seamtakt
