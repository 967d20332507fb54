// --explain prints the computation itself: each note's formula, with its numbers, is computed again.
#include <gtest/gtest.h>

#include <set>

#include "formula/formula_value.hpp"
#include "published/published_rows.hpp"

namespace seamtakt {
namespace {

TEST(FormulaValue, WorksOutArithmetic) {
  EXPECT_DOUBLE_EQ(*FormulaValue::of("24.8*205/(1000*5)"), 1.0168);
  EXPECT_DOUBLE_EQ(*FormulaValue::of("2 - -3*2^2"), 14);
  EXPECT_DOUBLE_EQ(*FormulaValue::of("-2^2"), -4);
  EXPECT_DOUBLE_EQ(*FormulaValue::of("max(1e2, (-5)) + log10(1e-3)"), 97);
  EXPECT_DOUBLE_EQ(*FormulaValue::of("8/4/2"), 1);
}

TEST(FormulaValue, LeavesWhatItCantWorkOut) {
  for (const char* text : {"", "2*x", "table(1, 2)", "sum(2*3", "2 3", "1 +"})
    EXPECT_FALSE(FormulaValue::of(text)) << text;
}

/// The right side of the formula; where a note states an inverse relation or a table there is none to work
/// out.
std::optional<double> worked_out(const Explanation& explanation) {
  std::string text = with_numbers(explanation);
  return FormulaValue::of(std::string_view(text).substr(text.find('=') + 1));
}

bool has_finding(const QuantityAnswer& answered, std::string_view rule) {
  for (const auto& finding : answered.results.findings)
    if (finding.rule == rule) return true;
  return false;
}

/// A note may say that its result is held between two of its numbers.
bool held_at_a_bound(const Explanation& explanation) {
  if (std::string_view(explanation.note->range).find("held between") == std::string_view::npos) return false;
  for (const auto& input : explanation.inputs)
    if (input.value == explanation.result) return true;
  return false;
}

struct Explained {
  std::set<std::string> worked_out, other;
};

void check_explanations(const published::Row& row, Explained& explained) {
  const Quantity& quantity = *find_quantity(row.quantity);
  QuantityAnswer answered = answer(quantity, published::request_of(quantity, row.inputs));
  // There the throat isn't what the note's formula says, and the finding says so.
  bool shorter_leg = has_finding(answered, "fillet.throat.shorter-leg");
  for (const Explanation& explanation : answered.results.explanations) {
    const FormulaNote& note = *explanation.note;
    auto value = worked_out(explanation);
    if (!value) {
      explained.other.insert(note.id);
      continue;
    }
    explained.worked_out.insert(note.id);
    if (shorter_leg && std::string_view(note.id).ends_with("throat")) continue;
    if (held_at_a_bound(explanation)) continue;
    // Inserted numbers are printed with ten digits.
    EXPECT_NEAR(*value, explanation.result, 1e-7 * std::max(1.0, std::abs(explanation.result)))
        << row.place << "\n"
        << explanation_text(explanation);
  }
}

/// Tables, series, integrals and relations between two unknowns.
const std::set<std::string> not_arithmetic = {"fillet-minimum.leg",       "guard-band.probability",
                                              "haz-width.thick-distance", "haz-width.thick-peak",
                                              "haz-width.thin-distance",  "haz-width.thin-peak",
                                              "preheat.aws-hydrogen",     "temperature.ellipsoid",
                                              "temperature.plate",        "temperature.thin",
                                              "tolerance.angular",        "tolerance.linear",
                                              "tolerance.straightness",   "transfer.transition-current",
                                              "waveform.energy",          "waveform.rms"};

TEST(Notes, GiveTheResultWhenTheirNumbersArePutIn) {
  Explained explained;
  for (const published::Row& row : published::all_rows()) {
    if (row.expected == published::no_value) continue;
    try {
      check_explanations(row, explained);
    } catch (const InputError& error) {
      ADD_FAILURE() << row.place << ": " << error.what();
    }
  }
  for (const auto& id : explained.worked_out) explained.other.erase(id);
  EXPECT_EQ(explained.other, not_arithmetic);
}

}  // namespace
}  // namespace seamtakt
