#pragma once

#include <string>

namespace seamtakt {

/// No place of a weldment or robot is further from the origin along an axis: a kilometre. More is a wrong
/// unit or a slip.
inline constexpr double largest_coordinate_mm = 1e6;

/// No time of a plan is longer: some 116 days.
inline constexpr double longest_plan_time_s = 1e7;

/// The limits on input files as lines of text, for --limits: taken from JsonLimits and CsvLimits themselves.
std::string limits_text();

}  // namespace seamtakt
