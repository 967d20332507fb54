#pragma once

#include <string>

#include "base/sentences/sentence_text.hpp"
#include "formula/uncertainty/budget.hpp"

namespace seamtakt {

/// What is said above a budget's table: U, u and where first order doesn't hold. `unit`: of the result.
Sentence budget_sentence(const UncertaintyBudget& budget, const char* unit);

/// Degrees of freedom as text: a number, "infinite", or "not known".
std::string degrees_of_freedom_text(const std::optional<double>& degrees_of_freedom, const TextView& view);

/// The budget as lines of text: that sentence, and a table with a row an input. In the units that it is given
/// in, whatever those of the view.
std::string budget_text(const UncertaintyBudget& budget, const char* unit, const TextView& view);

}  // namespace seamtakt
