#pragma once

#include "plan/plan.hpp"

namespace seamtakt {

/// The first schedule of the plan that states its use and whose use has this seam: position, both
/// thicknesses, gap, leg (of a throat the leg that it has). What neither says isn't compared. nullptr: none.
const Schedule* fitting_schedule(const Plan& plan, const Seam& seam);

}  // namespace seamtakt
