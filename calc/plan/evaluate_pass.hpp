#pragma once

#include "plan/evaluation.hpp"
#include "plan/explanation_sink.hpp"
#include "plan/pass_facts.hpp"

namespace seamtakt {


/// Every derived value of one pass. `sink` collects how, where it isn't nullptr.
PassEvaluation evaluate_pass(const PassFacts& facts, ExplanationSink* sink = nullptr);

/// Density of the weld metal that a wire's material gives (g/cm3).
double weld_metal_density_g_cm3(const std::string& wire_material);

/// The upper interpass temperature of a schedule (degC); empty where none is stated.
std::optional<double> upper_interpass_C(const Schedule& schedule);

}  // namespace seamtakt
