#pragma once

#include <span>

#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/explanation_sink.hpp"
#include "plan/evaluate/pass_facts.hpp"

namespace seamtakt {

/// Leg, throat, area and waits of a seam from its evaluated passes, in order.
SeamEvaluation evaluate_seam(const Plan& plan, const PlanIndex& index, const Weldment& weldment,
                             const Seam& seam, std::span<const PassEvaluation> passes,
                             ExplanationSink* sink = nullptr);

}  // namespace seamtakt
