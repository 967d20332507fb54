#include "formula/uncertainty/budget.hpp"

#include <cmath>
#include <limits>

#include "formula/uncertainty/guard_band.hpp"

namespace seamtakt {

namespace {

/// u^4 / sum(u_i^4 / nu_i).
std::optional<double> effective_degrees_of_freedom(const UncertaintyBudget& budget) {
  double sum = 0;
  for (const BudgetInput& input : budget.inputs) {
    if (!input.degrees_of_freedom) return std::nullopt;
    sum += std::pow(input.contribution / budget.u, 4) / *input.degrees_of_freedom;
  }
  return sum > 0 ? 1 / sum : std::numeric_limits<double>::infinity();
}

}  // namespace

std::optional<UncertaintyBudget> budget_of(std::vector<BudgetInput> inputs) {
  UncertaintyBudget budget;
  double variance = 0;
  for (BudgetInput& input : inputs) {
    input.contribution = std::abs(input.sensitivity) * input.u;
    if (!(input.contribution > 0)) continue;
    variance += input.contribution * input.contribution;
    budget.inputs.push_back(std::move(input));
  }
  if (!(variance > 0) || !std::isfinite(variance)) return std::nullopt;
  for (BudgetInput& input : budget.inputs)
    input.share_pct = 100 * input.contribution * input.contribution / variance;
  budget.u = std::sqrt(variance);
  budget.U = coverage_factor * budget.u;
  budget.degrees_of_freedom = effective_degrees_of_freedom(budget);
  return budget;
}

}  // namespace seamtakt
