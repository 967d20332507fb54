// Uncertainty budgets: sums, shares and degrees of freedom, and how they are shown.
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "base/sentences/sentence_text.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/note.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/uncertainty/budget.hpp"
#include "formula/uncertainty/budget_text.hpp"

namespace seamtakt {
namespace {

BudgetInput input_of(double u, double sensitivity, std::optional<double> degrees_of_freedom) {
  BudgetInput input{Sentence::verbatim("x"), 1, "mm", u, sensitivity};
  input.degrees_of_freedom = degrees_of_freedom;
  return input;
}

TEST(UncertaintyBudget, agrees_with_the_end_gauge_of_the_guide) {
  // JCGM 100:2008, H.1.6: 25 nm with 18 degrees of freedom, 9.7 with 25.6, 2.9 with 50, 16.6 with
  // 2 give 32 nm with 16.7.
  const auto budget = budget_of({input_of(25, 1, 18), input_of(9.7, 1, 25.6), input_of(2.9, -1, 50),
                                 input_of(16.6, 1, 2), input_of(5, 0, {}), input_of(0, 1, {})});
  ASSERT_TRUE(budget);
  ASSERT_EQ(budget->inputs.size(), 4u) << "what contributes nothing is left out";
  EXPECT_NEAR(budget->u, 32, 0.5);
  EXPECT_NEAR(*budget->degrees_of_freedom, 16.7, 0.1);
  EXPECT_DOUBLE_EQ(budget->U, 2 * budget->u);
  double shares = 0;
  for (const BudgetInput& input : budget->inputs) shares += input.share_pct;
  EXPECT_NEAR(shares, 100, 1e-9);
  EXPECT_NEAR(budget->inputs[0].share_pct, 100 * 625 / (625 + 94.09 + 8.41 + 275.56), 1e-9);
}

TEST(UncertaintyBudget, degrees_of_freedom_are_known_where_those_of_all_inputs_are) {
  constexpr double infinite = std::numeric_limits<double>::infinity();
  EXPECT_TRUE(
      std::isinf(*budget_of({input_of(1, 1, infinite), input_of(2, 1, infinite)})->degrees_of_freedom));
  EXPECT_FALSE(budget_of({input_of(1, 1, infinite), input_of(2, 1, {})})->degrees_of_freedom);
  EXPECT_FALSE(budget_of({input_of(0, 1, {})}));
  EXPECT_FALSE(budget_of({}));
}

TEST(UncertaintyBudget, is_shown_below_its_value_in_the_readers_language) {
  BudgetInput current{"current by the melting law"_word, 301.11, "A", 22.583, 0.0030933};
  current.distribution = Distribution::normal;
  BudgetInput voltage{"arc voltage"_word, 29, "V", 0.29, 0.032118};
  voltage.distribution = Distribution::rectangular;
  voltage.degrees_of_freedom = std::numeric_limits<double>::infinity();
  Explanation explanation{&heat_input_note, {{"k", "thermal efficiency", 0.8, ""}}, 0.93143, "kJ/mm"};
  const std::string without = explanation_text(explanation);
  explanation.budget = budget_of({current, voltage});
  const std::string english = explanation_text(explanation);
  EXPECT_EQ(english.find(without), 0u) << "the budget comes below";
  // sqrt(0.069857^2 + 0.0093142^2) = 0.070475, twice that 0.14095; 98.25 and 1.75 % of the variance.
  for (const char* part : {"U = 0.141 kJ/mm (k = 2)", "standard uncertainty 0.0705 kJ/mm", "Sensitivity",
                           "Degrees of freedom", "current by the melting law", "22.6", "0.003093", "0.0699",
                           "98.3", "rectangular", "infinite", "not known"})
    EXPECT_NE(english.find(part), std::string::npos) << part << "\n" << english;
  const std::string german = explanation_text(explanation, TextView(*find_language("de")));
  for (const char* part :
       {"Unsicherheitsbudget: U = 0.141", "Standardunsicherheit", "Empfindlichkeit", "Freiheitsgrade",
        "Strom nach dem Abschmelzgesetz", "Rechteck", "unendlich", "nicht bekannt"})
    EXPECT_NE(german.find(part), std::string::npos) << part << "\n" << german;
  explanation.budget->is_numerical = true;
  EXPECT_NE(explanation_text(explanation).find("Monte Carlo"), std::string::npos);
}

TEST(UncertaintyBudget, of_a_calculated_quantity_sums_up_to_its_uncertainty) {
  QuantityRequest request;
  request.inputs.numbers = {{"voltage", 24.8}, {"current", 205}, {"travel-speed", 5}};
  request.inputs.texts = {{"process", "135"}};
  request.standard_uncertainty = {{"voltage", 0.248}, {"current", 4.1}, {"travel-speed", 0.05}};
  const QuantityAnswer given = answer(heat_input_quantity, request);
  const UncertaintyBudget& budget = given.budgets.at("heat_input_kJ_mm");
  ASSERT_EQ(budget.inputs.size(), 3u);
  EXPECT_NEAR(budget.u, given.u.at("heat_input_kJ_mm"), 1e-15);
  double variance = 0;
  for (const BudgetInput& input : budget.inputs) variance += input.contribution * input.contribution;
  EXPECT_NEAR(std::sqrt(variance), given.u.at("heat_input_kJ_mm"), 1e-15);
  // 2 % of the current, 1 % of voltage and speed: 4/6 and 1/6 of the variance. Q = 0.8*24.8*205/5000.
  const double heat_input = 0.8 * 24.8 * 205 / 5000;
  for (const BudgetInput& input : budget.inputs) {
    const bool is_current = input.unit == "A";
    EXPECT_NEAR(input.share_pct, is_current ? 400 / 6.0 : 100 / 6.0, 1e-9);
    const double sign = input.unit == "mm/s" ? -1 : 1;
    EXPECT_NEAR(input.sensitivity, sign * heat_input / input.value, 1e-12);
  }
  std::size_t with_budget = 0;
  for (const Explanation& explanation : given.results.explanations)
    if (explanation.budget) ++with_budget;
  EXPECT_GE(with_budget, 3u) << "power, arc energy, heat input";
}

}  // namespace
}  // namespace seamtakt
