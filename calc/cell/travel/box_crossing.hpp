#pragma once

#include "plan/plan.hpp"

namespace seamtakt {

/// Whether a straight line between two points passes through the inside of a box with these corners (low at
/// most high in each coordinate). Touching a face isn't passing: less than 1e-6 mm inside counts as outside.
/// Source: derived (the line is cut by the three pairs of planes in turn).
bool passes_through(const Point_mm& from, const Point_mm& to, const Point_mm& low, const Point_mm& high);

}  // namespace seamtakt
