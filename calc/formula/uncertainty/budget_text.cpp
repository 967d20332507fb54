#include "formula/uncertainty/budget_text.hpp"

#include <cmath>

#include "base/text/text_table.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

constexpr int uncertainty_digits = 3;

std::string indented(const std::string& lines) {
  std::string text;
  for (std::size_t at = 0; at < lines.size();) {
    const std::size_t end = lines.find('\n', at);
    text += "  " + lines.substr(at, end - at) + "\n";
    at = end == std::string::npos ? lines.size() : end + 1;
  }
  return text;
}

}  // namespace

Sentence budget_sentence(const UncertaintyBudget& budget, const char* unit) {
  return Sentence(budget.is_numerical ? "budget.by-distribution"_key : "budget.first-order"_key,
                  {{"U", UnitValue{budget.U, unit, uncertainty_digits}},
                   {"u", UnitValue{budget.u, unit, uncertainty_digits}}});
}

std::string degrees_of_freedom_text(const std::optional<double>& degrees_of_freedom, const TextView& view) {
  if (!degrees_of_freedom) return view.word("not known"_word);
  if (std::isinf(*degrees_of_freedom)) return view.word("infinite"_word);
  return rounded_text(*degrees_of_freedom, uncertainty_digits);
}

std::string budget_text(const UncertaintyBudget& budget, const char* unit, const TextView& any_view) {
  const TextView view = any_view.in_si();
  TextTable table({{"Input"_word, "", true, 0},
                   {"Value"_word, "", false, 5},
                   {"Standard uncertainty"_word, "", false, uncertainty_digits},
                   {"Unit"_word, "", true, 0},
                   {"Distribution"_word, "", true, 0},
                   {"Sensitivity"_word, "", false, 4},
                   {"Contribution"_word, unit, false, uncertainty_digits},
                   {"Share"_word, "%", false, uncertainty_digits},
                   {"Degrees of freedom"_word, "", true, 0}},
                  view);
  for (const BudgetInput& input : budget.inputs)
    table.cell(input.meaning)
        .cell(input.value)
        .cell(input.u)
        .cell(view.unit(input.unit.c_str()))
        .cell(word_of(input.distribution))
        .cell(input.sensitivity)
        .cell(input.contribution)
        .cell(input.share_pct)
        .cell(degrees_of_freedom_text(input.degrees_of_freedom, view));
  return indented(sentence_text(budget_sentence(budget, unit), view) + "\n" + table.text());
}

}  // namespace seamtakt
