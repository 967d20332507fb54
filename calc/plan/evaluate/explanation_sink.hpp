#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "formula/note.hpp"

namespace seamtakt {

/// Collects explanations of derived values while these are computed, so that the explanation and the value
/// can't differ. Evaluating without explaining passes nullptr.
struct ExplanationSink {
  struct Entry {
    std::string key;
    Explanation explanation;
    std::vector<std::string> rests_on;  ///< keys of other entries
  };
  std::vector<Entry> entries;

  void add(const char* key, const FormulaNote& note, double result, const char* unit,
           std::vector<SymbolValue> inputs, std::vector<std::string> rests_on = {}) {
    entries.push_back({key, {&note, std::move(inputs), result, unit}, std::move(rests_on)});
  }

  /// Gives the value of that key, which was explained before, its budget. No key or no budget: nothing.
  void add_budget(std::string_view key, std::optional<UncertaintyBudget> budget) {
    if (!budget) return;
    for (Entry& entry : entries)
      if (entry.key == key) entry.explanation.budget = *budget;
  }
};

}  // namespace seamtakt
