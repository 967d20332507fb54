#pragma once

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

}  // namespace seamtakt
