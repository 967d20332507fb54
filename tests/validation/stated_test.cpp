// What reference/validation.csv states belongs to formulas that exist, and their stated accuracies hold.
#include <gtest/gtest.h>

#include <filesystem>
#include <map>

#include "base/csv/csv.hpp"
#include "base/sentences/language.hpp"
#include "base/sentences/sentence_text.hpp"
#include "formula/note.hpp"
#include "formula/quantities/quantity.hpp"
#include "formula/size/penetration.hpp"
#include "formula/validation.hpp"
#include "support/source_path.hpp"

namespace seamtakt::validation {
namespace {

/// Share of the values that a stated accuracy is expected to cover.
constexpr double expected_coverage_pct = 95;

std::map<std::string, const FormulaNote*> formulas() {
  std::map<std::string, const FormulaNote*> found;
  for (const Quantity* quantity : quantities())
    for (const FormulaNote* note : quantity->notes) found.emplace(note->id, note);
  return found;
}

std::vector<std::string> validated_formulas() {
  const CsvTable table =
      read_csv((std::filesystem::path(source_path()) / "reference/validation.csv").string());
  std::vector<std::string> ids;
  for (const CsvRow& row : table.rows) ids.push_back(row.fields[table.require("formula")]);
  return ids;
}

/// "30", "74"
std::string whole(double value) {
  return std::to_string(static_cast<int>(value + 0.5));
}

TEST(StatedAccuracy, HoldsWhereItWasMeasuredOrTheFormulaSaysWhatDoes) {
  const std::map<std::string, const FormulaNote*> notes = formulas();
  for (const std::string& id : validated_formulas()) {
    ASSERT_TRUE(notes.contains(id)) << id << " is no formula";
    const std::string accuracy = notes.at(id)->accuracy;
    const FormulaValidation& measured = *validation_of(id);
    if (!measured.within_pct) continue;
    EXPECT_NE(accuracy.find("+-" + whole(*measured.within_pct) + " %"), std::string::npos) << id;
    if (*measured.coverage_pct < expected_coverage_pct) {
      EXPECT_NE(accuracy.find(whole(*measured.coverage_pct) + " %"), std::string::npos)
          << id << " states an accuracy that the measurements don't keep";
    }
  }
}

Explanation explained(const FormulaNote& note) {
  return {&note, {}, 1, "mm"};
}

TEST(StatedAccuracy, IsSaidByTheExplanation) {
  const std::string text = explanation_text(explained(penetration_note));
  EXPECT_NE(
      text.find("  checked   measured against 31 values of bead-sections: bias -23.9 %, scatter 12.1 %, "
                "coverage 74 % (within 30 % to either side)"),
      std::string::npos)
      << text;
  const std::string german = explanation_text(explained(penetration_note), TextView(*find_language("de")));
  EXPECT_NE(german.find("gemessen an 31 Werten von bead-sections"), std::string::npos) << german;
}

TEST(StatedAccuracy, IsSaidToBeQuotedOrDerivedWhereNothingWasMeasured) {
  FormulaNote note = penetration_note;
  note.id = "nothing.measured";
  EXPECT_EQ(validation_sentence(note).english(), "quoted, not validated here");
  note.basis = SourceBasis::derived;
  EXPECT_EQ(validation_sentence(note).english(), "derived here, not measured");
  EXPECT_EQ(validation_of("nothing.measured"), nullptr);
}

}  // namespace
}  // namespace seamtakt::validation
