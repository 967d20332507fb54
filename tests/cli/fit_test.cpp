#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Fit : public FolderTest {};

}  // namespace

TEST_F(Fit, TheSeamThatIsTooSmallIsMendedAndThePlanThatWasReadStaysAsItWas) {
  const std::string before = bytes_of(demo_plan), output = folder / "fitted.weldplan.json";
  EXPECT_EQ(run_program({"evaluate", demo_plan, "--summary"}).exit_code, 1);
  const ProgramRun run = run_program({"fit", demo_plan, "--seam", "TT/S49", "--output", output, "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_EQ(bytes_of(demo_plan), before);
  EXPECT_EQ(run_program({"evaluate", output, "--summary"}).exit_code, 0);
  const JsonNode document = parse_json(run.output, "output");
  ASSERT_EQ(document.find("seams")->elements.size(), 1u);
  const JsonNode& seam = document.find("seams")->elements[0];
  EXPECT_EQ(seam.find("seam")->string, "S49");
  EXPECT_LT(seam.find("old")->find("leg_mm")->number, 6);
  EXPECT_GE(seam.find("new")->find("leg_mm")->number, 6 * (1 - 1e-9));
  EXPECT_NE(seam.find("new")->find("schedule")->string, seam.find("old")->find("schedule")->string);
  EXPECT_TRUE(seam.find("existing_schedule")->boolean);
  EXPECT_EQ(seam.find("new")->find("schedule")->string, "F6S");
  EXPECT_FALSE(seam.find("left_as_they_are")->elements.empty());
  const ProgramRun table = run_program({"fit", demo_plan, "--seam", "TT/S49"});
  EXPECT_NE(table.output.find("F5S > F6S (existing)"), std::string::npos) << table.output;
}

TEST_F(Fit, WithoutAnOutputNothingIsWritten) {
  const std::string before = bytes_of(demo_plan);
  const ProgramRun run = run_program({"fit", demo_plan, "--objective", "heat"});
  EXPECT_EQ(run.exit_code, 0) << run.output;
  EXPECT_EQ(bytes_of(demo_plan), before);
  EXPECT_NE(run.output.find("Fitted for heat"), std::string::npos);
}

TEST_F(Fit, ThePlanThatIsReadIsOnlyWrittenWhenAskedFor) {
  const std::string plan = folder / "plan.weldplan.json";
  std::filesystem::copy_file(demo_plan, plan);
  const ProgramRun refused = run_program({"fit", plan, "--output", plan});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_NE(refused.errors.find("--overwrite"), std::string::npos);
  EXPECT_EQ(bytes_of(plan), bytes_of(demo_plan));
  EXPECT_EQ(run_program({"fit", plan, "--output", plan, "--overwrite"}).exit_code, 0);
  EXPECT_NE(bytes_of(plan), bytes_of(demo_plan));
  EXPECT_EQ(run_program({"evaluate", plan, "--summary"}).exit_code, 0);
}

TEST_F(Fit, ConflictingLimitsAreNamedAndEndWithOne) {
  // F8M at a quarter of the heat that its leg needs; no other schedule of the plan lays so much.
  std::string text = bytes_of(demo_plan);
  const std::string from = "\"heat_input_kJ_mm\": [1.33, 1.91]", to = "\"heat_input_kJ_mm\": [0.1, 0.2]";
  const std::size_t at = text.find(from);
  ASSERT_NE(at, std::string::npos);
  text.replace(at, from.size(), to);
  const std::string plan = folder / "cold.weldplan.json", output = folder / "fitted.weldplan.json";
  std::ofstream(plan) << text;
  const ProgramRun run = run_program({"fit", plan, "--seam", "TT/S28", "--json", "--output", output});
  EXPECT_EQ(run.exit_code, 1);
  const JsonNode document = parse_json(run.output, "output");
  const JsonNode& seam = document.find("seams")->elements[0];
  EXPECT_EQ(seam.find("new")->kind, JsonNode::Kind::null);
  bool heat = false;
  for (const JsonNode& limit : seam.find("conflicts")->elements) {
    EXPECT_EQ(limit.find("needed")->kind, JsonNode::Kind::number) << run.output;
    const double needed = limit.find("needed")->number, bound = limit.find("bound")->number;
    EXPECT_TRUE(limit.find("side")->string == "upper" ? needed > bound : needed < bound) << run.output;
    EXPECT_EQ(limit.find("needed_with")->kind, JsonNode::Kind::array);
    heat = heat || limit.find("rule")->string == "limit.heat-input.high" ||
           limit.find("rule")->string == "qualification.heat-input";
  }
  EXPECT_TRUE(heat) << run.output;
  EXPECT_GE(seam.find("conflicts")->elements.size(), 2u);
  const ProgramRun german = run_program({"fit", plan, "--seam", "TT/S28", "--language", "de"});
  EXPECT_NE(german.output.find("Keine Einstellungen halten alle diese Grenzen: "), std::string::npos);
  EXPECT_NE(german.output.find("müsste bis"), std::string::npos) << german.output;
}

TEST_F(Fit, HoldsAndMarginAreKeptAndSaid) {
  const ProgramRun run = run_program({"fit", demo_plan, "--seam", "TT/S28", "--objective", "heat", "--hold",
                                      "voltage", "--hold", "passes", "--margin", "2%", "--json"});
  ASSERT_LE(run.exit_code, 1) << run.errors;
  const JsonNode document = parse_json(run.output, "output");
  ASSERT_EQ(document.find("holds")->elements.size(), 2u);
  EXPECT_EQ(document.find("holds")->elements[0].string, "voltage");
  EXPECT_EQ(document.find("margin_pct")->number, 2);
  const JsonNode& seam = document.find("seams")->elements[0];
  if (seam.find("new")->kind != JsonNode::Kind::null) {
    EXPECT_EQ(seam.find("new")->find("arc_voltage_V")->number,
              seam.find("old")->find("arc_voltage_V")->number);
    EXPECT_EQ(seam.find("new")->find("passes")->number, seam.find("old")->find("passes")->number);
  }
}

TEST_F(Fit, BadInputIsOneLineAndTwo) {
  for (const std::vector<std::string>& arguments : {std::vector<std::string>{"fit"},
                                                    {"fit", demo_plan, "--objective", "beauty"},
                                                    {"fit", demo_plan, "--seam", "TT/S4900"},
                                                    {"fit", demo_plan, "--hold", "preheat"},
                                                    {"fit", demo_plan, "--margin", "60%"},
                                                    {"fit", demo_plan, "--margin", "-1"},
                                                    {"fit", demo_plan, "--output", folder}}) {
    const ProgramRun run = run_program(arguments);
    EXPECT_EQ(run.exit_code, 2) << run.errors;
    EXPECT_EQ(run.output, "");
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  }
}
