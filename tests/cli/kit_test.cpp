// `kit`: a cart's parts against a weldment's, through the program.
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class KitCommand : public FolderTest {
 protected:
  std::string cart(const std::string& text) {
    const std::filesystem::path file = folder / "cart.csv";
    std::ofstream(file) << text;
    return file.string();
  }
  ProgramRun kit(const std::string& text) {
    return run_program({"kit", demo_plan, "--cart", cart(text), "--weldment", "BD", "--json"});
  }
};

ProgramRun kit_of_demo(const char* serial) {
  return run_program(
      {"kit", demo_plan, "--cart", demo_folder + "carts/" + serial + ".csv", "--weldment", "BD", "--json"});
}

}  // namespace

TEST_F(KitCommand, ACompleteCartIsDone) {
  const ProgramRun run = kit_of_demo("AE-26-0101");
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = parse_json(run.output, "output");
  EXPECT_TRUE(result.find("missing")->elements.empty());
  EXPECT_TRUE(result.find("extra")->elements.empty());
  EXPECT_TRUE(result.find("complete")->boolean);
}

TEST_F(KitCommand, APartShortIsMissing) {
  const ProgramRun run = kit_of_demo("AE-26-0106");
  EXPECT_EQ(run.exit_code, 1);
  const JsonNode result = parse_json(run.output, "output");
  ASSERT_EQ(result.find("missing")->elements.size(), 1u);
  const JsonNode& part = result.find("missing")->elements[0];
  EXPECT_EQ(part.find("part")->string, "BD-gusset");
  EXPECT_EQ(part.find("quantity")->number, 1);
  EXPECT_EQ(part.find("needed")->number, 4);
  EXPECT_EQ(part.find("found")->number, 3);
}

TEST_F(KitCommand, APartTooManyOnAnotherLineAndHeatIsExtra) {
  // It warns, and the unit goes.
  const ProgramRun run = kit_of_demo("AE-26-0104");
  EXPECT_EQ(run.exit_code, 0);
  const JsonNode result = parse_json(run.output, "output");
  ASSERT_EQ(result.find("extra")->elements.size(), 1u);
  EXPECT_EQ(result.find("extra")->elements[0].find("part")->string, "BD-strip");
  const auto& parts = result.find("parts")->elements;
  EXPECT_EQ(parts.at(2).find("heats")->elements.size(), 2u);
}

TEST_F(KitCommand, APartOfAnotherWeldmentIsExtra) {
  const ProgramRun run = run_program(
      {"kit", demo_plan, "--cart", demo_folder + "carts/AE-26-0101.csv", "--weldment", "TT", "--json"});
  EXPECT_EQ(run.exit_code, 1);
  const JsonNode result = parse_json(run.output, "output");
  EXPECT_EQ(result.find("extra")->elements.size(), 7u);
  EXPECT_EQ(result.find("missing")->elements.size(), 11u);
}

TEST_F(KitCommand, SaysInWordsWhatTheUnitWaitsFor) {
  const ProgramRun run =
      run_program({"kit", demo_plan, "--cart", demo_folder + "carts/AE-26-0106.csv", "--weldment", "BD"});
  EXPECT_NE(run.output.find("The unit waits: 1 BD-gusset is missing (3 of 4 there)."), std::string::npos)
      << run.output;
}

TEST_F(KitCommand, BadInputIsOneLineAndPrintsNothingElse) {
  const auto expect_line = [](const ProgramRun& run, const std::string& message) {
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_EQ(run.output, "");
    EXPECT_EQ(run.errors, message + "\n");
  };
  const std::string file = (folder / "cart.csv").string();
  expect_line(kit("part,quantity\nBD-rail,two\n"),
              file + ":2:9: found \"two\", expected a whole number from 1 to 1000000");
  expect_line(kit("part\nBD-rail\n"), file + ":1:1: found the columns part, expected a column \"quantity\"");
  expect_line(run_program({"kit", demo_plan, "--cart", cart("part,quantity\n"), "--weldment", "XX"}),
              "--weldment: found \"XX\", expected one of BD, TT, BL");
  EXPECT_EQ(
      run_program({"kit", demo_plan, "--cart", (folder / "none.csv").string(), "--weldment", "BD"}).exit_code,
      2);
  EXPECT_EQ(kit("part,quantity\nBD-rail,2,9\n").exit_code, 2);
}
