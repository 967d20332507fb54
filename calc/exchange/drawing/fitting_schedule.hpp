#pragma once

#include "plan/plan.hpp"

namespace seamtakt {

/// The first schedule of the plan that states its use and whose use holds for the seam
/// (plan/rules/use_of_schedule.hpp). nullptr: none.
const Schedule* fitting_schedule(const Plan& plan, const Seam& seam);

}  // namespace seamtakt
