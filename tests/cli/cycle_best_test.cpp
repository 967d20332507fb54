#include <gtest/gtest.h>
#include <sys/wait.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/program_paths.hpp"
#include "support/scratch_folder.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

const std::vector<JsonNode>& weldments(const JsonNode& root) {
  return root.find("weldments")->elements;
}

}  // namespace

TEST(CycleBest, BringsTheDemoWithinTaktAndNearItsBound) {
  const ProgramRun given = run_program({"cycle", demo_plan, "--json"});
  const ProgramRun best = run_program({"cycle", demo_plan, "--order", "best", "--steps", "60000", "--json"});
  EXPECT_EQ(given.exit_code, 1);
  EXPECT_EQ(best.exit_code, 0) << best.output.substr(0, 400);
  const JsonNode before = parse_json(given.output, "given"), after = parse_json(best.output, "best");
  ASSERT_EQ(weldments(before).size(), weldments(after).size());
  for (std::size_t i = 0; i < weldments(after).size(); ++i) {
    const JsonNode& cycle = weldments(after)[i];
    const double time_s = number(cycle, "cycle_time_s"), bound_s = number(cycle, "lower_bound_s");
    EXPECT_LT(time_s, number(weldments(before)[i], "cycle_time_s"));
    EXPECT_GE(number(cycle, "takt_margin_s"), 0);
    EXPECT_LE(bound_s, time_s);
    EXPECT_NEAR(number(cycle, "gap_pct"), 100 * (time_s - bound_s) / time_s, 1e-9);
    EXPECT_LE(number(cycle, "gap_pct"), 8);
    EXPECT_EQ(bound_s, number(weldments(before)[i], "lower_bound_s"));
  }
}

TEST(CycleBest, TheSameSeedAndStepsGiveTheSameBytes) {
  const std::vector<std::string> arguments{"cycle", demo_plan, "--order", "best",  "--steps",
                                           "3000",  "--seed",  "17",      "--json"};
  const ProgramRun first = run_program(arguments), second = run_program(arguments);
  EXPECT_EQ(first.output, second.output);
  EXPECT_TRUE(first.errors.empty()) << first.errors;
}

TEST(CycleBest, AnOrderThatIsWrittenIsThePlansGivenOne) {
  const ScratchFolder folder;
  const std::string taken = folder / "taken.weldplan.json";
  const ProgramRun best =
      run_program({"cycle", demo_plan, "--order", "best", "--steps", "3000", "--json", "--output", taken});
  EXPECT_LE(best.exit_code, 1) << best.errors;
  const ProgramRun given = run_program({"cycle", taken, "--json"});
  const JsonNode found = parse_json(best.output, "best"), again = parse_json(given.output, "given");
  ASSERT_EQ(weldments(found).size(), 3u);
  for (std::size_t i = 0; i < 3; ++i)
    EXPECT_EQ(number(weldments(found)[i], "cycle_time_s"), number(weldments(again)[i], "cycle_time_s"));
  EXPECT_EQ(run_program({"cycle", taken, "--output", taken}).exit_code, 2) << "the plan that is read stays";
}

TEST(CycleBest, EndsAtItsTime) {
  const auto begun = std::chrono::steady_clock::now();
  const ProgramRun run =
      run_program({"cycle", demo_plan, "--order", "best", "--seconds", "600ms", "--summary"});
  EXPECT_LE(run.exit_code, 1) << run.output;
  EXPECT_LT(std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count(), 10);
}

TEST(CycleBest, InterruptedItPrintsTheBestFound) {
  const ScratchFolder folder;
  const std::string command = std::string("timeout --foreground --preserve-status -s INT 2 '") +
                              seamtakt_program() + "' cycle '" + demo_plan +
                              "' --order best --seconds 300 --json > '" + folder / "out" + "' 2> '" +
                              folder / "errors" + "'";
  const auto begun = std::chrono::steady_clock::now();
  const int status = std::system(command.c_str());
  EXPECT_LT(std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count(), 30);
  EXPECT_TRUE(WIFEXITED(status));
  EXPECT_LE(WEXITSTATUS(status), 1);
  std::ifstream file(folder / "out");
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  EXPECT_EQ(weldments(parse_json(text, "out")).size(), 3u);
}

TEST(Cycle, NamesTheLargestLossesOfEachWeldment) {
  const ProgramRun run = run_program({"cycle", demo_plan, "--weldment", "TT", "--summary"});
  EXPECT_NE(run.output.find("  TT: waiting 1687 s, sensing 253.8 s, air moves 199.5 s\n"), std::string::npos)
      << run.output.substr(0, 1500);
}

TEST(Cycle, WithoutARobotTheOthersTakeOverAndTheRestIsListed) {
  const JsonNode all =
      parse_json(run_program({"cycle", demo_plan, "--weldment", "TT", "--json"}).output, "all");
  const ProgramRun run =
      run_program({"cycle", demo_plan, "--weldment", "TT", "--without-robot", "R2", "--json"});
  EXPECT_EQ(run.exit_code, 1) << run.errors;
  const JsonNode result = parse_json(run.output, "without");
  std::set<std::string> unreached;
  for (const JsonNode& finding : result.find("findings")->elements) {
    const std::string rule = finding.find("rule")->string, where = finding.find("where")->string;
    EXPECT_TRUE(where.starts_with("TT")) << where;
    EXPECT_NE(rule, "cycle.robot.none");  // said once, as unreached
    if (rule == "cell.robot-out.unreached") unreached.insert(where);
  }
  const JsonNode& cycle = weldments(result).front();
  std::set<std::string> welded, welded_by_all;
  for (const JsonNode& move : cycle.find("moves")->elements) {
    EXPECT_NE(move.find("robot")->string, "R2");
    if (move.find("kind")->string == "arc") welded.insert("TT/" + move.find("seam")->string);
  }
  for (const JsonNode& move : weldments(all).front().find("moves")->elements)
    if (move.find("kind")->string == "arc") welded_by_all.insert("TT/" + move.find("seam")->string);
  for (const std::string& seam : unreached) EXPECT_FALSE(welded.contains(seam)) << seam;
  // A part of the seams is no weldment: no margin, and how many are unwelded.
  EXPECT_EQ(cycle.find("takt_margin_s")->kind, JsonNode::Kind::null);
  EXPECT_EQ(cycle.find("robot_seams")->number, 58);
  std::set<std::string> unwelded;
  for (const JsonNode& seam : cycle.find("unwelded_seams")->elements) unwelded.insert("TT/" + seam.string);
  EXPECT_EQ(unwelded, unreached);
  const ProgramRun text =
      run_program({"cycle", demo_plan, "--weldment", "TT", "--without-robot", "R2", "--summary"});
  EXPECT_NE(text.output.find("\nTT: 29 of 58 robot seams unwelded. The weldment fails, and its time has no "
                             "margin.\n"),
            std::string::npos)
      << text.output.substr(0, 900);
  EXPECT_NE(weldments(all).front().find("takt_margin_s")->kind, JsonNode::Kind::null);
  EXPECT_TRUE(weldments(all).front().find("unwelded_seams")->elements.empty());
  welded.insert(unreached.begin(), unreached.end());
  EXPECT_EQ(welded, welded_by_all);
  const ProgramRun unknown = run_program({"cycle", demo_plan, "--without-robot", "R9"});
  EXPECT_EQ(unknown.exit_code, 2);
  EXPECT_EQ(unknown.errors, "--without-robot: found \"R9\", expected one of R1, R2\n");
}

TEST(CycleBest, RefusesWhatIsNoLimit) {
  for (const std::vector<std::string>& options : std::vector<std::vector<std::string>>{{"--seconds", "0"},
                                                                                       {"--seconds", "-1s"},
                                                                                       {"--seconds", "5mm"},
                                                                                       {"--steps", "x"},
                                                                                       {"--seed", "-x"}}) {
    std::vector<std::string> arguments{"cycle", demo_plan, "--order", "best"};
    arguments.insert(arguments.end(), options.begin(), options.end());
    const ProgramRun run = run_program(arguments);
    EXPECT_EQ(run.exit_code, 2) << options.front() << " " << options.back();
    EXPECT_TRUE(run.output.empty());
    EXPECT_FALSE(run.errors.empty());
  }
  EXPECT_EQ(run_program({"cycle", demo_plan, "--order", "worst"}).exit_code, 2);
}
