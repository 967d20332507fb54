#pragma once

#include <optional>

#include "plan/evaluate/cooling_case.hpp"

namespace seamtakt {

/// The uncertainties of heat_uncertainty.hpp for a planned pass: empty where the plan states no instrument
/// for any of current, voltage and travel speed.
std::optional<double> U_heat_input_kJ_mm(const PassFacts& facts, const PassEvaluation& pass);
std::optional<double> U_cooling_time_s(const PassFacts& facts, const PassEvaluation& pass,
                                       const CoolingCase& at);

}  // namespace seamtakt
