#include "formula/note.hpp"

#include <gtest/gtest.h>

#include "formula/heat/heat_input.hpp"
#include "formula/quantities/quantity.hpp"

namespace seamtakt {
namespace {

Explanation explained(const FormulaNote& note, std::vector<SymbolValue> inputs, double result,
                      std::string unit) {
  return {&note, std::move(inputs), result, std::move(unit)};
}

constexpr FormulaNote note_with(const char* symbols) {
  return {"x.y", "y", symbols, "derived", "geometry", "any", "exact", SourceBasis::derived};
}

std::string put_in(const char* symbols, std::vector<SymbolValue> inputs) {
  FormulaNote note = note_with(symbols);
  return with_numbers(explained(note, std::move(inputs), 0, ""));
}

TEST(WithNumbers, PutsEachNumberInThePlaceOfItsSymbol) {
  EXPECT_EQ(put_in("E = U*I/(1000*v)", {{"U", "", 24.8, "V"}, {"I", "", 205, "A"}, {"v", "", 5, "mm/s"}}),
            "E = 24.8*205/(1000*5)");
}

TEST(WithNumbers, ReplacesWholeNamesOnly) {
  EXPECT_EQ(put_in("y = a + aa + a1 + sin(a) + a_2", {{"a", "", 2, ""}}), "y = 2 + aa + a1 + sin(2) + a_2");
}

TEST(WithNumbers, LeavesTheResultAndTheFormulasOwnNumbersAlone) {
  EXPECT_EQ(put_in("t = 1e5*t2 + 2E-3*e", {{"t", "", 9, ""}, {"e", "", 7, ""}, {"t2", "", 3, ""}}),
            "t = 1e5*3 + 2E-3*7");
  EXPECT_EQ(put_in("y = 2e", {{"e", "", 7, ""}}), "y = 27");
}

TEST(WithNumbers, PutsANegativeNumberInBrackets) {
  EXPECT_EQ(put_in("y = T0^2 - T0", {{"T0", "", -20, "C"}}), "y = (-20)^2 - (-20)");
}

TEST(WithNumbers, CutsComputedNumbersWhereTheirDigitsSayNothing) {
  EXPECT_EQ(put_in("y = x", {{"x", "", 1.0 / 3, ""}}), "y = 0.3333333333");
  EXPECT_EQ(put_in("y = x", {{"x", "", 0.1, ""}}), "y = 0.1");
}

TEST(WithNumbers, TakesGreekLettersAsNames) {
  EXPECT_EQ(put_in("y = \xce\xb1*x", {{"\xce\xb1", "", 0.3, ""}, {"x", "", 2, ""}}), "y = 0.3*2");
}

TEST(WithNumbers, TakesAFormulaWithoutAnEqualsSignAsItIs) {
  EXPECT_EQ(put_in("a*b", {{"a", "", 2, ""}}), "2*b");
}

TEST(UsesSymbol, LooksRightOfTheEqualsSign) {
  FormulaNote note = note_with("t = a*t2 + 1e5");
  EXPECT_TRUE(uses_symbol(note, "a"));
  EXPECT_FALSE(uses_symbol(note, "t"));
  EXPECT_FALSE(uses_symbol(note, "e5"));
  EXPECT_FALSE(uses_symbol(note, ""));
}

TEST(ExplanationText, SaysFormulaNumbersSourceRangeAndHowTheSourceWasHad) {
  std::string text = explanation_text(
      explained(heat_input_note, {{"k", "thermal efficiency", 0.8, ""}, {"E", "arc energy", 1.0168, "kJ/mm"}},
                0.81344, "kJ/mm"));
  for (const char* part :
       {"heat_input_kJ_mm: 0.81344 kJ/mm", "Q = k*E", "Q = 0.8*1.0168", "E = 1.0168 kJ/mm, arc energy",
        "en-1011-1, Table 1", "part read", "arc processes", "convention"})
    EXPECT_NE(text.find(part), std::string::npos) << part << "\n" << text;
  EXPECT_EQ(text.back(), '\n');
}

TEST(SourceBasis, EachHasItsWords) {
  EXPECT_STREQ(to_string(SourceBasis::read), "read");
  EXPECT_NE(std::string(to_string(SourceBasis::recalled)).find("recalled"), std::string::npos);
  EXPECT_NE(std::string(to_string(SourceBasis::common_practice)).find("no source"), std::string::npos);
}

TEST(Explain, DropsSymbolsThatTheFormulaDoesNotHaveAndKeepsNothingWhereNotWanted) {
  Results<double> results;
  results.explain(heat_input_note, 1.0, "kJ/mm", {{"k", "efficiency", 0.8, ""}, {"zz", "unused", 1.0, ""}});
  ASSERT_EQ(results.explanations.size(), 1u);
  EXPECT_EQ(results.explanations[0].inputs.size(), 1u);
  results.keep_explanations = false;
  results.explain(heat_input_note, 1.0, "kJ/mm", {});
  EXPECT_EQ(results.explanations.size(), 1u);
}

}  // namespace
}  // namespace seamtakt
