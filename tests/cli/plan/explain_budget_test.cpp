// The uncertainty budget of --explain, for people in their language and as JSON.
#include <gtest/gtest.h>

#include <cmath>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

TEST_F(Judgement, ExplainShowsTheBudgetOfAValueWithAnUncertainty) {
  const Plan plan = tee();
  const std::string where = "X/S1/pass 1.heat_input_kJ_mm";
  const ProgramRun english = run_program({"evaluate", saved(plan), "--explain", where});
  ASSERT_EQ(english.exit_code, 0) << english.errors;
  // 15 % of the law, instruments of 2, 1 and 1.5 %: U = 0.9314*2*sqrt(0.075^2 + 0.0269^2) = 0.148.
  for (const char* part : {"U = 0.148", "current by the melting law", "Sensitivity", "Degrees of freedom"})
    EXPECT_NE(english.output.find(part), std::string::npos) << part << "\n" << english.output;
  const ProgramRun german = run_program({"evaluate", saved(plan), "--explain", where, "--language", "de"});
  for (const char* part : {"Unsicherheitsbudget", "Strom nach dem Abschmelzgesetz", "Empfindlichkeit"})
    EXPECT_NE(german.output.find(part), std::string::npos) << part << "\n" << german.output << german.errors;
}

TEST_F(Judgement, ExplainAsJsonHasTheBudgetToo) {
  const Plan plan = tee();
  const ProgramRun json =
      run_program({"evaluate", saved(plan), "--explain", "X/S1/pass 1.U_heat_input_kJ_mm", "--json"});
  ASSERT_EQ(json.exit_code, 0) << json.errors;
  const JsonNode document = parse_json(json.output, "output");
  const JsonNode* const explanation = document.find("explanation");
  ASSERT_NE(explanation, nullptr) << json.output;
  EXPECT_EQ(explanation->find("where")->string, "X/S1/pass 1");
  const JsonNode& first = explanation->find("formulas")->elements.at(0);
  EXPECT_EQ(first.find("key")->string, "heat_input_kJ_mm");
  const JsonNode* const budget = first.find("budget");
  ASSERT_NE(budget, nullptr) << json.output;
  const JsonNode evaluation = evaluated(plan);
  const double U = first_pass(evaluation).find("U_heat_input_kJ_mm")->number;
  EXPECT_NEAR(budget->find("U")->number, U, 1e-12);
  EXPECT_NEAR(budget->find("u")->number, U / 2, 1e-12);
  double variance = 0, shares = 0;
  for (const JsonNode& input : budget->find("inputs")->elements) {
    variance += std::pow(input.find("sensitivity")->number * input.find("u")->number, 2);
    shares += input.find("share_pct")->number;
  }
  EXPECT_NEAR(std::sqrt(variance), U / 2, 1e-12);
  EXPECT_NEAR(shares, 100, 1e-9);
  EXPECT_TRUE(is_null(*budget, "degrees_of_freedom")) << "those of the law aren't known";
  // A value without uncertainty has no budget.
  const ProgramRun none =
      run_program({"evaluate", saved(plan), "--explain", "X/S1/pass 1.melting_rate_kg_h", "--json"});
  const JsonNode plain = parse_json(none.output, "output");
  EXPECT_EQ(plain.find("explanation")->find("formulas")->elements.at(0).find("budget"), nullptr);
}

TEST_F(Judgement, CalcExplainsTheBudgetOfItsResults) {
  const std::vector<std::string> arguments = {
      "calc",           "heat-input", "--process",   "135", "--voltage",   "24.8", "--current", "205",
      "--travel-speed", "5",          "--u-current", "2%",  "--u-voltage", "1%",   "--explain"};
  const ProgramRun text = run_program(arguments);
  EXPECT_NE(text.output.find("Sensitivity"), std::string::npos) << text.output << text.errors;
  std::vector<std::string> as_json = arguments;
  as_json.push_back("--json");
  const JsonNode document = parse_json(run_program(as_json).output, "calc");
  std::size_t budgets = 0;
  for (const JsonNode& formula : document.find("formulas")->elements)
    if (formula.find("budget") != nullptr) ++budgets;
  EXPECT_GE(budgets, 2u);
}
