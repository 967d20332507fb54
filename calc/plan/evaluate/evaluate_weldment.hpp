#pragma once

#include <span>

#include "plan/evaluate/evaluation.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

/// Sums of a weldment over its evaluated passes, in file order. Cost = wire + gas + energy + robot or labour
/// time of the arc, in the plan's currency. The bow is Blodgett's estimate from every seam's laid area about
/// the given neutral axis, for the seams' extent along x.
WeldmentEvaluation evaluate_weldment(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                                     std::span<const PassEvaluation> passes);

}  // namespace seamtakt
