#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/sentences/sentence_text.hpp"
#include "formula/uncertainty/budget.hpp"

namespace seamtakt {

/// How the source of a formula was obtained.
enum class SourceBasis { read, part_read, recalled, derived, common_practice };

const char* to_string(SourceBasis basis);

/// The notes of a formula: shown by --explain, the desk's tooltip and the auditor's sheet.
struct FormulaNote {
  const char* id;          ///< stable, e.g. "heat-input.arc-energy"
  const char* result;      ///< key of the result, e.g. "arc_energy_kJ_mm"
  const char* symbols;     ///< formula in symbols, e.g. "E = U*I/(1000*v)"
  const char* source_key;  ///< key in reference/sources.csv
  const char* clause;      ///< clause, table, page
  const char* range;       ///< where it holds
  const char* accuracy;    ///< scatter where the source states one, else "not stated by the source"
  SourceBasis basis;
};

/// A symbol of a note with its number.
struct SymbolValue {
  /// `words`: a literal, a word of reference/languages.
  SymbolValue(std::string symbol_text, const char* words, double number, std::string unit_name)
      : SymbolValue(std::move(symbol_text), Sentence(Word::of_table(words)), number, std::move(unit_name)) {}
  SymbolValue(std::string symbol_text, Sentence sentence, double number, std::string unit_name)
      : symbol(std::move(symbol_text)),
        meaning(std::move(sentence)),
        value(number),
        unit(std::move(unit_name)) {}

  std::string symbol;  ///< as in FormulaNote::symbols, e.g. "U"
  Sentence meaning;    ///< "arc voltage"
  double value;
  std::string unit;  ///< "V"
};

/// A number that explains itself.
struct Explanation {
  const FormulaNote* note = nullptr;
  std::vector<SymbolValue> inputs;
  double result = 0;
  std::string unit;
  std::optional<UncertaintyBudget> budget = {};  ///< where the result has a U
};

/// Whether a symbol occurs in the note's formula, right of its first "=".
bool uses_symbol(const FormulaNote& note, std::string_view symbol);

/// The formula with each symbol replaced by its number: "E = 24.8*205/(1000*5)".
std::string with_numbers(const Explanation& explanation);

/// The explanation as lines of text: formula, formula with numbers, symbols, source and clause, range,
/// accuracy, basis, what it was measured against, and below them the uncertainty budget, where there is one.
/// A formula's numbers are in its own units, whatever those of the view.
std::string explanation_text(const Explanation& explanation,
                             const TextView& view = TextView::plain_english());

}  // namespace seamtakt
