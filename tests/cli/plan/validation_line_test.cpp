// --explain says of each formula what it was measured against, or that nothing was.
#include <gtest/gtest.h>

#include <vector>

#include "cli/json_values.hpp"
#include "cli/plan/judgement_fixture.hpp"
#include "cli/program.hpp"

namespace seamtakt::test {
namespace {

const std::vector<std::string> penetration = {"calc", "penetration",    "--current", "300",      "--voltage",
                                              "30",   "--travel-speed", "8",         "--explain"};

std::vector<std::string> with(std::vector<std::string> arguments, const std::vector<std::string>& more) {
  arguments.insert(arguments.end(), more.begin(), more.end());
  return arguments;
}

TEST(ValidationLine, OfCalcHasTheMeasurementsInBothLanguages) {
  const ProgramRun english = run_program(penetration);
  ASSERT_EQ(english.exit_code, 0) << english.errors;
  EXPECT_NE(english.output.find("measured against 31 values of bead-sections: bias"), std::string::npos)
      << english.output;
  const ProgramRun german = run_program(with(penetration, {"--language", "de"}));
  EXPECT_NE(german.output.find("gemessen an 31 Werten von bead-sections"), std::string::npos)
      << german.output << german.errors;
}

TEST(ValidationLine, OfCalcIsDataInJson) {
  const JsonNode document = json_of(run_program(with(penetration, {"--json"})));
  const JsonNode* const formulas = document.find("formulas");
  ASSERT_NE(formulas, nullptr);
  const JsonNode& formula = formulas->elements.at(0);
  const JsonNode* const measured = formula.find("measured");
  ASSERT_NE(measured, nullptr);
  // Of the 31 sections in tests/validation/data, worked out in Python.
  EXPECT_EQ(number(*measured, "values"), 31);
  EXPECT_EQ(number(*measured, "bias_pct"), -23.9);
  EXPECT_EQ(number(*measured, "scatter_pct"), 12.1);
  EXPECT_EQ(number(*measured, "within_pct"), 30);
  EXPECT_EQ(number(*measured, "coverage_pct"), 74);
  EXPECT_EQ(text_of(*measured, "source"), "bead-sections");
}

TEST(ValidationLine, OfAQuotedFormulaSaysThatNothingWasMeasured) {
  const std::vector<std::string> preheat = {"calc", "carbon-equivalent", "--composition", "C=0.16,Mn=1.4",
                                            "--explain"};
  const ProgramRun text = run_program(preheat);
  ASSERT_EQ(text.exit_code, 0) << text.errors;
  EXPECT_NE(text.output.find("quoted, not validated here"), std::string::npos) << text.output;
  const JsonNode document = json_of(run_program(with(preheat, {"--json"})));
  const JsonNode& formula = document.find("formulas")->elements.at(0);
  EXPECT_EQ(text_of(formula, "validation"), "quoted, not validated here");
  ASSERT_NE(formula.find("measured"), nullptr);
  EXPECT_EQ(formula.find("measured")->kind, JsonNode::Kind::null);
}

using ValidationOfPlan = Judgement;

TEST_F(ValidationOfPlan, IsSaidByEvaluateToo) {
  const ProgramRun said = run_program({"evaluate", saved(tee()), "--explain", "X/S1/pass 1.cooling_time_s"});
  ASSERT_EQ(said.exit_code, 0) << said.errors;
  EXPECT_NE(said.output.find("  checked   "), std::string::npos) << said.output;
  EXPECT_NE(said.output.find("measured against 8 values of robot-gmaw-records"), std::string::npos)
      << "the current is that of the melting law\n"
      << said.output;
  EXPECT_NE(said.output.find("quoted, not validated here"), std::string::npos) << said.output;
}

}  // namespace
}  // namespace seamtakt::test
