#pragma once

#include <span>

#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/explanation_sink.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

/// Sums of a weldment over its evaluated passes, in file order. Cost = wire + gas + energy + robot or labour
/// time of the arc, in the plan's currency. The bow: plan/bow/weldment_bow.hpp. `sink`: collects how the bow
/// was computed, where it isn't nullptr.
WeldmentEvaluation evaluate_weldment(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                                     std::span<const PassEvaluation> passes, ExplanationSink* sink = nullptr);

}  // namespace seamtakt
