#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// How an input's standard uncertainty was come by, as far as it is known.
enum class Distribution { unstated, normal, rectangular };

constexpr Word word_of(Distribution distribution) {
  switch (distribution) {
    case Distribution::normal:
      return "normal"_word;
    case Distribution::rectangular:
      return "rectangular"_word;
    case Distribution::unstated:
      break;
  }
  return "not stated"_word;
}

/// One input of a budget.
struct BudgetInput {
  Sentence meaning;  ///< "current"
  double value = 0;
  std::string unit;        ///< of value and u
  double u = 0;            ///< standard uncertainty, > 0
  double sensitivity = 0;  ///< d result/d input, in the result's unit a unit of the input
  Distribution distribution = Distribution::unstated;
  std::optional<double> degrees_of_freedom = {};  ///< infinity: limits that are known; empty: not known
  double contribution = 0;                        ///< |sensitivity| u, in the result's unit
  double share_pct = 0;                           ///< of the variance
};

/// The uncertainty budget of a result, in the form that calibration laboratories use. Source: jcgm-100,
/// 5.1.2 and 8 (recalled).
struct UncertaintyBudget {
  std::vector<BudgetInput> inputs;
  double u = 0;               ///< combined standard uncertainty, in the result's unit
  double U = 0;               ///< expanded, k = 2
  bool is_numerical = false;  ///< u is the spread of the propagated distribution: first order doesn't hold
  /// Of u, by Welch and Satterthwaite (jcgm-100, G.4.1); infinity; empty where an input's aren't
  /// known.
  std::optional<double> degrees_of_freedom = {};
};

/// The first-order budget of independent inputs, of which meaning, value, unit, u, sensitivity, distribution
/// and degrees of freedom are given. Inputs that contribute nothing are dropped. Empty where none is left.
std::optional<UncertaintyBudget> budget_of(std::vector<BudgetInput> inputs);

}  // namespace seamtakt
