#include "formula/quantities/quantity.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/sentences/name_list.hpp"
#include "base/units/units.hpp"
#include "formula/uncertainty/propagation.hpp"

namespace seamtakt {
namespace {

/// The explanation of a result has the result's budget.
void add_budgets(QuantityAnswer& answered) {
  for (Explanation& explanation : answered.results.explanations)
    if (const auto budget = answered.budgets.find(explanation.note->result); budget != answered.budgets.end())
      explanation.budget = budget->second;
}

const OptionSpec* find_option(const Quantity& quantity, std::string_view name) {
  for (const auto& option : quantity.options)
    if (name == option.name) return &option;
  return nullptr;
}

Sentence options_of(const Quantity& quantity) {
  std::vector<std::string> names;
  for (const auto& option : quantity.options) names.push_back("--" + std::string(option.name));
  return one_of_names(std::vector<std::string_view>(names.begin(), names.end()));
}

std::vector<std::string_view> choices_of(const OptionSpec& option) {
  std::vector<std::string_view> choices;
  std::string_view rest = option.choices;
  while (true) {
    std::size_t bar = rest.find('|');
    choices.push_back(rest.substr(0, bar));
    if (bar == std::string_view::npos) return choices;
    rest.remove_prefix(bar + 1);
  }
}

const OptionSpec& known_option(const Quantity& quantity, std::string_view name) {
  if (const OptionSpec* option = find_option(quantity, name)) return *option;
  throw InputError("--" + printable(name),
                   Sentence("formula.unknown-option"_key, {{"quantity", quantity.name}}),
                   options_of(quantity));
}

void check_number(const Quantity& quantity, std::string_view name, double value) {
  const OptionSpec& option = known_option(quantity, name);
  if (option.kind != OptionKind::number)
    throw InputError("--" + std::string(name), "a number"_word, "a text"_word);
  if (!std::isfinite(value))
    throw InputError("--" + std::string(name), number_text(value), "a finite number"_word);
}

void check_text(const Quantity& quantity, std::string_view name, const std::string& text) {
  const OptionSpec& option = known_option(quantity, name);
  if (option.kind == OptionKind::number)
    throw InputError("--" + std::string(name), printable(text), "a number"_word);
  if (option.kind != OptionKind::text || !option.choices) return;
  const auto choices = choices_of(option);
  if (std::find(choices.begin(), choices.end(), text) == choices.end())
    throw InputError("--" + std::string(name), printable(text), one_of_names(choices));
}

void fill_default(const OptionSpec& option, Inputs<double>& inputs) {
  if (!option.default_text || inputs.has(option.name)) return;
  if (option.kind != OptionKind::number) {
    inputs.texts[option.name] = option.default_text;
    return;
  }
  std::string_view text = option.default_text;
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  inputs.numbers[option.name] = value;
}

Inputs<double> checked_inputs(const Quantity& quantity, const Inputs<double>& given) {
  for (const auto& [name, value] : given.numbers) check_number(quantity, name, value);
  for (const auto& [name, text] : given.texts) check_text(quantity, name, text);
  Inputs<double> inputs = given;
  for (const auto& option : quantity.options) fill_default(option, inputs);
  return inputs;
}

void check_uncertainties(const Quantity& quantity, const QuantityRequest& request,
                         const Inputs<double>& inputs) {
  for (const auto& [name, u] : request.standard_uncertainty) {
    const OptionSpec& option = known_option(quantity, name);
    std::string where = "--u-" + name;
    if (option.kind != OptionKind::number)
      throw InputError(where, "an uncertainty of a text"_word, "none"_word);
    if (!std::isfinite(u) || u < 0) throw InputError(where, number_text(u), "0 or more"_word);
    if (u > 0 && !inputs.numbers.contains(name))
      throw InputError(where, "an uncertainty without its value"_word,
                       Sentence("formula.option-as-well"_key, {{"option", "--" + name}}));
  }
}

/// "--voltage 1e+300, --current 1e+300": the given inputs, for the message about their result.
Sentence given_numbers(const Inputs<double>& inputs) {
  std::string text;
  for (const auto& [name, value] : inputs.numbers)
    text += (text.empty() ? "--" : ", --") + name + " " + number_text(value);
  return text.empty() ? Sentence("what was given"_word) : Sentence::verbatim(std::move(text));
}

[[noreturn]] void refuse_result(const Quantity& quantity, std::string_view key,
                                const Inputs<double>& inputs) {
  throw InputError("calc " + std::string(quantity.name),
                   Sentence("formula.not-finite"_key, {{"given", given_numbers(inputs)}, {"key", key}}),
                   "values that give finite results"_word);
}

void check_finite(const Quantity& quantity, const Results<double>& results, const Inputs<double>& inputs) {
  for (const auto& [key, value] : results.values) {
    if (value.number && !std::isfinite(*value.number)) refuse_result(quantity, key, inputs);
    for (const auto& element : value.list)
      if (element && !std::isfinite(*element)) refuse_result(quantity, key, inputs);
  }
  for (const auto& finding : results.findings) {
    bool finite = std::isfinite(finding.value.value_or(0)) && std::isfinite(finding.limit.value_or(0));
    if (!finite) refuse_result(quantity, finding.rule, inputs);
  }
}

}  // namespace

const Quantity* find_quantity(std::string_view name) {
  for (const Quantity* quantity : quantities())
    if (name == quantity->name) return quantity;
  return nullptr;
}

QuantityAnswer answer(const Quantity& quantity, const QuantityRequest& request) {
  Inputs<double> inputs = checked_inputs(quantity, request.inputs);
  check_uncertainties(quantity, request, inputs);
  QuantityAnswer answered;
  quantity.compute(inputs, answered.results);
  if (answered.results.values.empty() && answered.results.findings.empty())
    throw InputError("calc " + std::string(quantity.name), "nothing to compute from"_word,
                     options_of(quantity));
  check_finite(quantity, answered.results, inputs);
  add_first_order_uncertainty(quantity, inputs, request.standard_uncertainty, answered);
  add_budgets(answered);
  if (request.monte_carlo_samples > 0) add_monte_carlo_uncertainty(quantity, inputs, request, answered);
  return answered;
}

}  // namespace seamtakt
