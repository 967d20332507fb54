#include <algorithm>
#include <cmath>

#include "formula/uncertainty/propagation.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

using Uncertain = std::vector<std::pair<std::string, double>>;

/// The inputs' lines of a budget by result key.
using LinesByName = std::map<std::string, std::vector<BudgetInput>, std::less<>>;

const OptionSpec& option_of(const Quantity& quantity, std::string_view name) {
  return *std::find_if(quantity.options.begin(), quantity.options.end(),
                       [&](const OptionSpec& option) { return name == option.name; });
}

BudgetInput line_of(const Quantity& quantity, const std::pair<std::string, double>& uncertain, double value,
                    double slope) {
  return {Sentence::verbatim("--" + uncertain.first), value, option_of(quantity, uncertain.first).unit,
          uncertain.second, slope};
}

/// Adds to `variance` what the inputs [begin, end) contribute; at most dual_inputs at a time.
void add_variances(const Quantity& quantity, const Inputs<double>& inputs, const Uncertain& uncertain,
                   std::size_t begin, std::size_t end, UncertaintyByName& variance, LinesByName& lines) {
  Inputs<Dual> seeded_inputs;
  for (const auto& [name, value] : inputs.numbers) seeded_inputs.numbers.emplace(name, Dual(value));
  for (std::size_t i = begin; i < end; ++i) {
    Dual& number = seeded_inputs.numbers.find(uncertain[i].first)->second;
    number = seeded(number.value(), i - begin);
  }
  seeded_inputs.texts = inputs.texts;
  seeded_inputs.series = inputs.series;
  Results<Dual> results;
  results.keep_explanations = false;
  quantity.compute_dual(seeded_inputs, results);
  for (const auto& [key, value] : results.values) {
    if (!value.number) continue;
    double& sum = variance[key];
    for (std::size_t i = begin; i < end; ++i) {
      double part = value.number->derivatives()[i - begin] * uncertain[i].second;
      sum += part * part;
      lines[key].push_back(line_of(quantity, uncertain[i], inputs.number(uncertain[i].first),
                                   value.number->derivatives()[i - begin]));
    }
  }
}

}  // namespace

void add_first_order_uncertainty(const Quantity& quantity, const Inputs<double>& inputs,
                                 const UncertaintyByName& standard_uncertainty, QuantityAnswer& answered) {
  Uncertain uncertain;
  for (const auto& [name, u] : standard_uncertainty)
    if (u > 0) uncertain.emplace_back(name, u);
  if (uncertain.empty()) return;
  UncertaintyByName variance;
  LinesByName lines;
  for (std::size_t begin = 0; begin < uncertain.size(); begin += dual_inputs)
    add_variances(quantity, inputs, uncertain, begin, std::min(uncertain.size(), begin + dual_inputs),
                  variance, lines);
  for (const auto& [key, sum] : variance) {
    if (std::isfinite(sum)) {
      answered.u[key] = std::sqrt(sum);
      if (auto budget = budget_of(std::move(lines[key]))) answered.budgets.emplace(key, *std::move(budget));
    } else {
      answered.results.findings.push_back(remark("uncertainty.no-slope", key,
                                                 Sentence("uncertainty.no-slope"_key, {{"key", key}}),
                                                 "jcgm-100, 5.1.2"));
    }
  }
}

}  // namespace seamtakt
