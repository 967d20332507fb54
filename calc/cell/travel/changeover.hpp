#pragma once

#include <string_view>

#include "plan/plan.hpp"

namespace seamtakt {

/// Time to change the cell's fixtures between two units that follow one another (s): the entry of
/// cell.changeovers from this weldment to that one; else 0 where they are the same weldment, or
/// cell.changeover_s. 0 without a cell. Source: common practice, no source.
double changeover_s(const Plan& plan, std::string_view from, std::string_view to);

}  // namespace seamtakt
