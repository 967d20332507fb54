#pragma once

#include "plan/plan.hpp"

namespace seamtakt {

/// A seam's time by hand (s): the arc time of its passes over the arc share, and the set-up. By its
/// manual_schedule where it has one, else by its own schedules, which are a welder's where the seam was
/// drafted as manual. Source: definition of the arc share; both values are the plan's own.
double hand_time_s(const Plan& plan, const ManualWork& work, const Seam& seam);

/// What a stage with the time "manual" takes for a weldment (s): its manual_s; where that is absent and the
/// cell has hand welding, the time of all its manual seams by hand; else 0.
double manual_stage_s(const Plan& plan, const Weldment& weldment);

}  // namespace seamtakt
