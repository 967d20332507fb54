#pragma once

#include <numbers>
#include <optional>
#include <string>
#include <string_view>

#include "plan/plan.hpp"

namespace seamtakt {

/// The instrument of a plan that shows a quantity ("current", "voltage", "travel_speed", "wire_feed_speed",
/// "position": the robot's own, of which a full scale in mm makes the half width a distance)
/// on a robot: that robot's own before one of no robot; nullptr where there is none.
const Instrument* instrument_for(const Plan& plan, std::string_view robot, std::string_view quantity);

/// Relative standard uncertainty of a value of that quantity. An instrument's half width is taken as
/// rectangular, u = a/sqrt(3) (jcgm-100, 4.3.7); without one, `measuring` of the plan. Empty where neither
/// says.
std::optional<double> relative_uncertainty(const Plan& plan, std::string_view robot,
                                           std::string_view quantity, double value);

/// Whether the instruments say so, by limits of the error.
bool has_instrument_limits(const Plan& plan, std::string_view robot, std::string_view quantity);

/// Resistance (ohm) of the leads between where a robot's voltage is measured and the arc; 0 where the plan
/// states none.
double lead_ohm(const Plan& plan, std::string_view robot);

/// Relative standard uncertainty of that resistance: copper leads that warm by up to 50 K gain 20 %
/// (temperature coefficient 0.0039/K of IEC 60028, recalled), a rectangular half width.
inline constexpr double lead_resistance_uncertainty = 0.2 / std::numbers::sqrt3;

}  // namespace seamtakt
