#pragma once

#include <optional>

#include "formula/uncertainty/budget.hpp"
#include "plan/evaluate/cooling_case.hpp"
#include "plan/evaluate/heat_uncertainty.hpp"

namespace seamtakt {

/// Expanded uncertainty (k = 2, %) of a current by the melting law where the wire states none: the law with
/// tabulated coefficients (common practice, no source).
inline constexpr double tabulated_melting_U_pct = 15;

/// Relative standard uncertainty of the melting law for a schedule's current: that of the wire, and what the
/// law's error grows by where the arc isn't steady; 0 where the schedule states its current.
double melting_law_uncertainty(const Schedule& schedule, const Wire& wire);

/// Least half-width (%) of what is possible for the waveform factor of a controlled arc. In the one measured
/// dip transfer that is validated against, the product of the means is 2.6 % above the mean product
/// (reference/validation.csv); 3 % is common practice, no source.
inline constexpr double least_waveform_half_width_pct = 3;

/// Relative standard uncertainty of a schedule's waveform factor: the stated one; else, where the waveform is
/// controlled, that of a rectangular distribution as wide as the correction itself on either side (jcgm-100,
/// 4.3.7), at least least_waveform_half_width_pct; 0 for a conventional arc.
double waveform_factor_uncertainty(const Schedule& schedule);

/// Relative standard uncertainties of a planned pass: those of what will measure it, and of the law that
/// tells its current. `known`: the plan states an instrument for current, voltage or travel speed, or it has
/// `measuring` and the current is the law's.
MeasuringUncertainty planned_uncertainty(const PassFacts& facts, const PassEvaluation& pass);

/// The uncertainties of heat_uncertainty.hpp for a planned pass, and of its current; empty where
/// planned_uncertainty knows none.
std::optional<double> U_current_A(const PassFacts& facts, const PassEvaluation& pass);
std::optional<double> U_heat_input_kJ_mm(const PassFacts& facts, const PassEvaluation& pass);
std::optional<double> U_cooling_time_s(const PassFacts& facts, const PassEvaluation& pass,
                                       const CoolingCase& at);

/// What a guarded decision keeps free on either side of a planned cooling time.
std::optional<CoolingGuard> cooling_guard(const PassFacts& facts, const PassEvaluation& pass,
                                          const CoolingCase& at);

/// The budgets of those three values; empty where the value has no U.
struct PassBudgets {
  std::optional<UncertaintyBudget> current, heat_input, cooling_time;
};
PassBudgets pass_budgets(const PassFacts& facts, const PassEvaluation& pass);

}  // namespace seamtakt
