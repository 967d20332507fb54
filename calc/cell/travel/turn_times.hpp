#pragma once

#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// Time of a turn of the positioner from one orientation to another (s), the first of these that is known:
///
///  - the entry of `turns` for these two, either way round (where both ways have one, the one that way);
///  - the slowest axis, each by |a - b| the shorter way round (at most 180 degrees) at its speed, plus
///  settle_s:
///    axes turn together, at constant speed. Both orientations must have an angle for each axis speed;
///  - orientation_change_s.
///
/// 0 between an orientation and itself. Source: common practice, no source.
double turn_time_s(const Cell& cell, const Orientation& from, const Orientation& to);

/// How far each axis turns, the shorter way round (degrees), where the turn's time follows from the axes;
/// empty where it doesn't.
std::vector<double> axis_turns_deg(const Cell& cell, const Orientation& from, const Orientation& to);

/// All of them, [from * orientations + to]; empty where the cell has no positioner: then each turn takes
/// orientation_change_s.
std::vector<double> turn_times_s(const Cell& cell);

}  // namespace seamtakt
