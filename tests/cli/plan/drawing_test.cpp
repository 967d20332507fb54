// `import` of a drawing. The program that reads STEP files is a script here that prints a committed result,
// or misbehaves; the real one is tested where OpenCASCADE is (tests/drawing).
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/json/json_node.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class DrawingImportCommand : public FolderTest {
 protected:
  DrawingImportCommand() : plan(path("plan.weldplan.json")) {
    std::ofstream(plan) << R"({"format": "weldplan", "version": 1,
      "base_metals": [{"id": "S355J2", "composition_pct": {"C": 0.17}}],
      "wires": [{"id": "W", "form": "solid", "material": "mild-steel", "diameter_mm": 1.2, "density_g_cm3": 7.85,
                 "alpha_mm_s_A": 0.3, "beta_per_s_A2": 5e-5, "deposition_efficiency": 0.95}],
      "schedules": [{"id": "A", "process": "135", "wire": "W", "wire_feed_speed_m_min": 9, "arc_voltage_V": 28,
                     "travel_speed_mm_s": 7, "contact_tip_distance_mm": 18, "use": {"thickness_mm": [3, 20]}}]})";
  }
  ~DrawingImportCommand() override { unsetenv("SEAMTAKT_DRAWING_PROGRAM"); }

  void use_program(const std::string& script) {
    const std::string program = path("program.sh");
    std::ofstream(program) << "#!/bin/sh\n" << script << "\n";
    std::filesystem::permissions(program, std::filesystem::perms::owner_all);
    setenv("SEAMTAKT_DRAWING_PROGRAM", program.c_str(), 1);
  }
  void use_result(const std::string& name) {
    use_program("cat '" + source_path("/tests/data/drawing/" + name) + "'");
  }
  ProgramRun import(std::vector<std::string> more) {
    std::vector<std::string> words = {"import", "frame.step", "--into", plan};
    words.insert(words.end(), more.begin(), more.end());
    return run_program(words);
  }

  const std::string plan;
};

const std::vector<std::string> complete = {
    "--up", "+Z", "--throat-rule", "0.5t", "--metal", "S355J2", "--schedules-by", "use", "--json"};

TEST_F(DrawingImportCommand, OneLineMakesAPlanWithSeams) {
  use_result("stiffened.json");
  const ProgramRun run = import(complete);
  ASSERT_EQ(run.exit_code, 0) << run.errors << run.output;
  const JsonNode result = parse_json(run.output, "output");
  EXPECT_EQ(result.find("counts")->find("new")->number, 7);
  EXPECT_EQ(result.find("counts")->find("plates")->number, 3);
  EXPECT_EQ(result.find("written")->string, plan);
  const ProgramRun evaluated = run_program({"evaluate", plan, "--json"});
  EXPECT_LE(evaluated.exit_code, 1) << evaluated.errors;
  EXPECT_EQ(parse_json(evaluated.output, "output").find("seams")->elements.size(), 7u);
}

TEST_F(DrawingImportCommand, WhatLacksSomethingIsListedAndEndsWithOne) {
  use_result("butt.json");
  const ProgramRun run = import({"--butt-rule", "none", "--metal", "S355J2", "--schedules-by", "use"});
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_NE(run.output.find("size"), std::string::npos) << run.output;
  EXPECT_NE(run.output.find("assembly/left"), std::string::npos) << run.output;
  const JsonNode saved = parse_json(read_file(plan, 1u << 20), plan);
  EXPECT_TRUE(saved.find("weldments")->elements[0].find("seams")->elements.empty());
}

TEST_F(DrawingImportCommand, WithoutRulesFilletsAndButtsHaveTheUsualSizeAndSayThatItIsAProposal) {
  for (const auto& [drawing, proposal] : {std::pair("stiffened.json", "7 fillets and 0 butts have a size"),
                                          std::pair("butt.json", "0 fillets and 1 butt have a size")}) {
    use_result(drawing);
    const ProgramRun run = import(
        {"--metal", "S355J2", "--schedules-by", "use", "--weldment", drawing, "--output", path("out.json")});
    EXPECT_EQ(run.exit_code, 0) << run.errors << run.output;
    EXPECT_NE(run.output.find(proposal), std::string::npos) << run.output;
    EXPECT_LE(run_program({"evaluate", path("out.json")}).exit_code, 1);
  }
}

TEST_F(DrawingImportCommand, ARuleCanBeTurnedOff) {
  use_result("stiffened.json");
  const ProgramRun run =
      import({"--throat-rule", "none", "--metal", "S355J2", "--schedules-by", "use", "--json"});
  EXPECT_EQ(run.exit_code, 1);
  const JsonNode result = parse_json(run.output, "output");
  EXPECT_EQ(result.find("counts")->find("open")->number, 7);
  for (const JsonNode& candidate : result.find("candidates")->elements)
    EXPECT_EQ(candidate.find("proposed_size")->kind, JsonNode::Kind::null);
}

TEST_F(DrawingImportCommand, APreviewWritesNothing) {
  use_result("stiffened.json");
  const std::string before = read_file(plan, 1u << 20);
  std::vector<std::string> words = complete;
  words.push_back("--preview");
  EXPECT_EQ(import(words).exit_code, 0);
  EXPECT_EQ(read_file(plan, 1u << 20), before);
}

TEST_F(DrawingImportCommand, WithoutTheProgramOneLineSaysWhatToInstall) {
  setenv("SEAMTAKT_DRAWING_PROGRAM", path("absent").c_str(), 1);
  const ProgramRun run = import(complete);
  EXPECT_EQ(run.exit_code, 3);
  EXPECT_EQ(run.output, "");
  EXPECT_NE(run.errors.find("packaging/setup drawing"), std::string::npos) << run.errors;
}

TEST_F(DrawingImportCommand, TheProgramsOwnRefusalIsPassedOn) {
  use_program("echo 'frame.step: found only surfaces, expected solid parts' >&2; exit 2");
  const ProgramRun run = import(complete);
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(run.errors, "frame.step: found only surfaces, expected solid parts\n");
}

TEST_F(DrawingImportCommand, ACrashAHangAndNonsenseOfTheProgramAreSaidInOneLine) {
  use_program("kill -SEGV $$");
  EXPECT_EQ(import(complete).exit_code, 3);
  use_program("echo '{\"format\": \"seamtakt-drawing\"'");
  const ProgramRun nonsense = import(complete);
  EXPECT_EQ(nonsense.exit_code, 2);
  EXPECT_EQ(std::count(nonsense.errors.begin(), nonsense.errors.end(), '\n'), 1);
  use_program("exit 7");
  EXPECT_EQ(import(complete).exit_code, 3);
  use_program("exec sleep 60");
  std::vector<std::string> words = complete;
  words.insert(words.end(), {"--seconds", "1s"});
  const auto begin = std::chrono::steady_clock::now();
  EXPECT_EQ(import(words).exit_code, 3);
  EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(30));
}

TEST_F(DrawingImportCommand, OptionsOfListsAndDrawingsArentMixed) {
  use_result("stiffened.json");
  EXPECT_EQ(import({"--schedules"}).exit_code, 2);
  EXPECT_EQ(run_program({"import", "list.csv", "--into", plan, "--up", "+Z"}).exit_code, 2);
}

TEST_F(DrawingImportCommand, ADrawingInTwoDimensionsIsAskedWhatItDoesNotSay) {
  use_program(R"sh(echo '{"format": "seamtakt-drawing", "version": 1, "gap_mm": 0, "parts": [], "joints": [],
    "source": {"path": "a.dxf", "sha256": "00", "schema": "DXF AC1015", "unit": "mm"}, "notes": [], "layers": [
    {"name": "seams", "paths": [{"id": "1A", "closed": false, "points_mm": [[0, 0], [300, 0]]}]},
    {"name": "plates", "paths": [{"id": "2A", "closed": true, "points_mm": [[0, 0], [300, 0], [300, 90]]}]}]}')sh");
  std::vector<std::string> words = {"import",  "a.dxf",  "--into",         plan,
                                    "--metal", "S355J2", "--schedules-by", "use"};
  const auto run_with = [&](std::vector<std::string> more) {
    words.insert(words.end(), more.begin(), more.end());
    return run_program(words);
  };
  EXPECT_EQ(run_with({}).exit_code, 2);
  EXPECT_NE(run_with({"--layer-seams", "seams"}).errors.find("--z"), std::string::npos);
  EXPECT_NE(run_with({"--z", "10mm"}).errors.find("--joint"), std::string::npos);
  EXPECT_EQ(run_with({"--joint", "tee"}).exit_code, 1) << "a seam lacks a thickness";
  const ProgramRun run = run_with({"--layer-plates", "plates", "--thickness", "8mm", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors << run.output;
  EXPECT_EQ(parse_json(run.output, "output").find("counts")->find("plates")->number, 1);
  const JsonNode saved = parse_json(read_file(plan, 1u << 20), plan);
  const JsonNode& seam = saved.find("weldments")->elements[0].find("seams")->elements.at(0);
  EXPECT_EQ(seam.find("throat_mm")->number, 4);
  EXPECT_EQ(seam.find("path_mm")->elements.at(1).elements.at(2).number, 10);
  EXPECT_EQ(import({"--z", "10mm"}).exit_code, 2) << "a STEP file says it itself";
}

TEST_F(DrawingImportCommand, UnknownMetalsAndPartsAreRefused) {
  use_result("stiffened.json");
  EXPECT_EQ(import({"--metal", "S3555J2"}).exit_code, 2);
  EXPECT_EQ(import({"--thickness", "rob=8mm"}).exit_code, 2);
  EXPECT_EQ(import({"--thickness", "rib=-8mm"}).exit_code, 2);
  EXPECT_EQ(import({"--throat-rule", "half"}).exit_code, 2);
}

}  // namespace
