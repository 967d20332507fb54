#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

struct FormulaNote;

/// How a formula does against values that somebody measured: a row of reference/validation.csv. Each row is
/// computed again from the measurements by tests/validation.
struct FormulaValidation {
  std::size_t values = 0;              ///< measured values that were compared
  double bias_pct = 0;                 ///< mean of 100*(computed/measured - 1)
  double scatter_pct = 0;              ///< standard deviation of the same
  std::optional<double> within_pct;    ///< accuracy that the formula states, to either side, if it does
  std::optional<double> coverage_pct;  ///< share of the values within it
  std::string source;                  ///< key in reference/sources.csv
};

/// Of a formula by its id ("penetration.bead-on-plate"); null where nothing was measured. The table is read
/// once. InputError: it is damaged.
const FormulaValidation* validation_of(std::string_view formula_id);

/// What --explain says of it: the numbers and where they are from, or that the formula is quoted or derived
/// and nothing was measured.
Sentence validation_sentence(const FormulaNote& note);

}  // namespace seamtakt
