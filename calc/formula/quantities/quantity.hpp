#pragma once

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "base/finding.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

enum class OptionKind { number, text, flag, series };

/// One option of `seamtakt calc QUANTITY`.
struct OptionSpec {
  const char* name;  ///< without dashes: "travel-speed"
  OptionKind kind;
  const char* unit;  ///< unit of a bare number: "mm/s"; "" where dimensionless or not a number
  const char* help;
  const char* default_text;  ///< nullptr: none
  const char* choices;       ///< for text: "plate|butt|corner|tee|lap", nullptr: free
};

struct ResultSpec {
  const char* key;    ///< "arc_energy_kJ_mm"
  const char* unit;   ///< "kJ/mm"; "" where dimensionless or text
  const char* label;  ///< table heading: "arc energy"
};

/// What was given to a quantity: each number in the unit of its OptionSpec. A flag that was given is in
/// `texts` (any text). Series are columns of a file that the caller has read.
template <class Real>
struct Inputs {
  std::map<std::string, Real, std::less<>> numbers;
  std::map<std::string, std::string, std::less<>> texts;
  std::map<std::string, std::vector<double>, std::less<>> series;

  bool has(std::string_view name) const { return numbers.contains(name) || texts.contains(name); }
  std::optional<Real> find(std::string_view name) const {
    auto at = numbers.find(name);
    return at == numbers.end() ? std::nullopt : std::optional<Real>(at->second);
  }
  std::string text(std::string_view name) const {
    auto at = texts.find(name);
    return at == texts.end() ? std::string() : at->second;
  }
  /// The number, or InputError("--name", "nothing", "a value").
  Real number(std::string_view name) const {
    if (auto given = find(name)) return *given;
    throw InputError("--" + std::string(name), "nothing"_word, "a value"_word);
  }
};

/// A result: a number, a text, a list of numbers, or (value empty) null: what it needs wasn't given.
template <class Real>
struct ResultValue {
  std::optional<Real> number;
  std::optional<std::string> text;
  std::optional<bool> boolean;
  std::vector<std::optional<Real>> list;
  bool is_list = false;
};

/// A symbol of a note with its number, as an adapter writes it down.
template <class Real>
struct Symbol {
  const char* symbol;   ///< "U"
  const char* meaning;  ///< "arc voltage"
  Real value;
  const char* unit;  ///< "V"
};

template <class Real>
struct Results {
  std::map<std::string, ResultValue<Real>, std::less<>> values;  ///< a key that isn't here is null
  Findings findings;
  std::vector<Explanation> explanations;
  bool keep_explanations = true;  ///< false where only numbers are needed (uncertainty, Monte Carlo)

  void set(const char* key, const Real& value) { values[key].number = value; }
  void set_text(const char* key, std::string value) { values[key].text = std::move(value); }
  void set_bool(const char* key, bool value) { values[key].boolean = value; }
  void set_list(const char* key, std::vector<std::optional<Real>> list) {
    values[key].is_list = true;
    values[key].list = std::move(list);
  }
  /// Records how `result` was computed: the note's symbols with their numbers. Symbols that the
  /// note's formula doesn't have are dropped.
  void explain(const FormulaNote& note, const Real& result, const char* unit,
               std::initializer_list<Symbol<Real>> symbols) {
    if (!keep_explanations) return;
    Explanation explanation{&note, {}, value_of(result), unit};
    for (const auto& s : symbols)
      if (uses_symbol(note, s.symbol))
        explanation.inputs.push_back({s.symbol, s.meaning, value_of(s.value), s.unit});
    explanations.push_back(std::move(explanation));
  }
};

/// One quantity of `seamtakt calc`: its options and results described once, computed by one template that is
/// instantiated for double (the answer) and Dual (the uncertainty).
struct Quantity {
  const char* name;     ///< "heat-input"
  const char* summary;  ///< one line for the list
  std::span<const OptionSpec> options;
  std::span<const ResultSpec> results;
  std::span<const FormulaNote* const> notes;
  void (*compute)(const Inputs<double>&, Results<double>&);
  void (*compute_dual)(const Inputs<Dual>&, Results<Dual>&);
};

/// All quantities, in the order of the contract's table.
std::span<const Quantity* const> quantities();
const Quantity* find_quantity(std::string_view name);

/// What a person gave: each number with its standard uncertainty, both in the unit of the option.
struct QuantityRequest {
  Inputs<double> inputs;
  std::map<std::string, double, std::less<>> standard_uncertainty;
  std::size_t monte_carlo_samples = 0;  ///< 0: none; else 2 to 1e8
  std::uint64_t seed = 1;
};

struct QuantityAnswer {
  Results<double> results;
  std::map<std::string, double, std::less<>> u;  ///< standard uncertainty by result key, first order
  std::map<std::string, UncertaintyBudget, std::less<>> budgets;  ///< of those that aren't 0
  std::map<std::string, double, std::less<>> u_monte_carlo;       ///< the second route, where asked for
};

/// Checks the request against the quantity's options (unknown names, choices), fills in defaults, computes,
/// and propagates uncertainty. InputError for what can't be used; a value outside a formula's range is a
/// finding. No result is NaN: a result that isn't finite is an InputError naming the options, and so is a
/// request from which nothing can be computed.
/// u: inputs independent, u(key)^2 = sum of (d key/d x * u(x))^2 (JCGM 100:2008, 5.1.2); a key whose slope
/// isn't finite there has no u, and a finding says so. u_monte_carlo: each uncertain input normal (JCGM
/// 101:2008), the same to the last bit for any number of threads; samples from which nothing can be computed
/// (a negative thickness drawn, say) are left out, counted in a finding.
QuantityAnswer answer(const Quantity& quantity, const QuantityRequest& request);

}  // namespace seamtakt
