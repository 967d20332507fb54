// The cell programmer's and production engineer's tasks with `line`, through the program.
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

std::vector<std::string> serials(const JsonNode& result) {
  std::vector<std::string> list;
  for (const JsonNode& unit : result.find("units")->elements) list.push_back(text_of(unit, "serial"));
  return list;
}

class LineCommand : public FolderTest {
 protected:
  /// A plan with a line of these stages (JSON), two weldments A and B.
  std::string plan(const std::string& line) {
    return write(
        "p.weldplan.json",
        R"({"format": "weldplan", "version": 1, "weldments": [{"id": "A", "tack_s": 900, "seams": []},
                     {"id": "B", "tack_s": 1500, "seams": []}], "line": )" +
            line + "}");
  }
  std::string orders(const std::string& letters) {
    std::string text = "unit_serial,weldment,due\n";
    for (std::size_t i = 0; i < letters.size(); ++i)
      text += "U" + std::to_string(i + 1) + "," + letters[i] + ",2026-03-02\n";
    return write("orders.csv", text);
  }
};

void expect_one_line(const ProgramRun& run, const std::string& message) {
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(run.output, "");
  EXPECT_EQ(run.errors, message + "\n");
}

}  // namespace

TEST_F(LineCommand, TwentyMinutesOfTaktAreThreeUnitsAnHour) {
  const std::string file =
      plan(R"({"takt_s": 1200, "stages": [{"id": "weld", "time": 1200, "servers": 1}]})");
  const ProgramRun run = run_program({"line", file, "--orders", orders(std::string(24, 'A')), "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  EXPECT_EQ(number(result, "throughput_per_h"), 3);
  EXPECT_EQ(number(result, "takt_misses"), 0);
  EXPECT_EQ(number(result, "makespan_s"), 28800);
  EXPECT_EQ(text_of(result, "bottleneck"), "weld");
  ASSERT_EQ(result.find("units")->elements.size(), 24u);
  EXPECT_EQ(number(result.find("units")->elements[1], "start_s"), 1200);
  EXPECT_EQ(number(result.find("units")->elements[1], "end_s"), 2400);
  EXPECT_NEAR(number(result.find("stages")->elements[0], "busy_pct"), 100, 1e-9);
}

TEST_F(LineCommand, GivesTheContractsKeys) {
  const ProgramRun run = run_program({"line", demo_plan, "--orders", demo_orders, "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  for (const char* key :
       {"units", "makespan_s", "throughput_per_h", "takt_misses", "stages", "bottleneck", "findings",
        "takt_misses_by_cause", "worst_window", "cures", "waiting", "provenance"})
    EXPECT_TRUE(result.find(key)) << key;
  ASSERT_EQ(result.find("stages")->elements.size(), 6u);
  for (const JsonNode& stage : result.find("stages")->elements)
    EXPECT_NEAR(number(stage, "busy_pct") + number(stage, "blocked_pct") + number(stage, "starved_pct") +
                    number(stage, "stopped_pct"),
                100, 1e-6);
  EXPECT_EQ(result.find("units")->elements.size(), 24u);
}

TEST_F(LineCommand, TomorrowsTwentyFourOrdersAreLevelled) {
  // Misses before and after, the bottleneck, and what one more tack bench is worth.
  const ProgramRun run = run_program({"line", demo_plan, "--orders", demo_orders, "--level", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  const JsonNode& levelling = *result.find("levelling");
  EXPECT_LT(number(*levelling.find("after"), "takt_misses"),
            number(*levelling.find("before"), "takt_misses"));
  EXPECT_EQ(text_of(result, "bottleneck"), "cell");
  const auto& cures = result.find("cures")->elements;
  const auto bench = std::find_if(cures.begin(), cures.end(), [](const JsonNode& cure) {
    return text_of(cure, "stage") == "tack" && text_of(cure, "change") == "1 server more";
  });
  ASSERT_NE(bench, cures.end());
  EXPECT_GE(number(*bench, "throughput_per_h"),
            number(*result.find("mean_of_runs"), "throughput_per_h") * 0.99);
  // The same units, and those due by the first shift's end before the others.
  std::vector<std::string> after = serials(result), before;
  for (const JsonNode& serial : levelling.find("order_before")->elements) before.push_back(serial.string);
  EXPECT_NE(after, before);
  EXPECT_EQ(std::set<std::string>(after.begin(), after.end()),
            std::set<std::string>(before.begin(), before.end()));
  EXPECT_EQ(std::set<std::string>(after.begin(), after.begin() + 12),
            std::set<std::string>(before.begin(), before.begin() + 12));
}

TEST_F(LineCommand, ACartShortOfAPartWaitsAndTheNextGoes) {
  const ProgramRun run =
      run_program({"line", demo_plan, "--orders", demo_orders, "--carts", demo_folder + "carts", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  const auto& waiting = result.find("waiting")->elements;
  ASSERT_EQ(waiting.size(), 1u);
  EXPECT_EQ(text_of(waiting[0], "serial"), "AE-26-0106");
  EXPECT_EQ(text_of(waiting[0], "for"), "1 BD-gusset is missing (3 of 4 there)");
  EXPECT_EQ(text_of(waiting[0], "released_instead"), "AE-26-0107");
  // One strip too many on the cart of 0104 warns, and the unit goes.
  const auto& findings = result.find("findings")->elements;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const JsonNode& finding) {
    return text_of(finding, "rule") == "line.cart.extra" && text_of(finding, "where") == "AE-26-0104";
  }));
  const std::vector<std::string> released = serials(result);
  EXPECT_EQ(released.size(), 23u);
  EXPECT_EQ(std::count(released.begin(), released.end(), "AE-26-0106"), 0);
  // The effect on the shift: the line's result with all carts complete is shown beside it.
  ASSERT_TRUE(result.find("with_all_carts"));
  EXPECT_GT(number(*result.find("with_all_carts"), "makespan_s"),
            number(*result.find("mean_of_runs"), "makespan_s"));
  const ProgramRun table = run_program(
      {"line", demo_plan, "--orders", demo_orders, "--carts", demo_folder + "carts", "--summary"});
  EXPECT_NE(table.output.find("1 BD-gusset is missing (3 of 4 there)"), std::string::npos);
}

TEST_F(LineCommand, ARobotOutForTheShiftListsTheSeamsThatNobodyReaches) {
  const ProgramRun all = run_program({"line", demo_plan, "--orders", demo_orders, "--json"});
  const ProgramRun run =
      run_program({"line", demo_plan, "--orders", demo_orders, "--without-robot", "R2", "--json"});
  ASSERT_EQ(run.exit_code, 1) << run.errors;
  const JsonNode result = json_of(run);
  std::size_t unreached = 0, taken_over = 0;
  for (const JsonNode& finding : result.find("findings")->elements) {
    unreached += text_of(finding, "rule") == "cell.robot-out.unreached";
    taken_over += text_of(finding, "rule") == "cell.robot-out.taken-over";
    EXPECT_NE(text_of(finding, "rule"), "cycle.robot.none");  // said once
  }
  EXPECT_GT(unreached + taken_over, 0u);
  // The result must not look better: an unwelded unit isn't finished, waits, and is a miss.
  EXPECT_GT(number(json_of(all), "throughput_per_h"), 0);
  EXPECT_LE(number(result, "throughput_per_h"), number(json_of(all), "throughput_per_h"));
  EXPECT_GE(number(result, "takt_misses"), number(result, "units_not_run"));
  EXPECT_GT(number(result, "units_not_run"), 0);
  EXPECT_EQ(number(result, "units_not_run") + number(result, "unit_count"), 24);
  for (const JsonNode& unit : result.find("waiting")->elements) {
    EXPECT_GT(number(unit, "unwelded_seams"), 0);
    EXPECT_TRUE(text_of(unit, "for").starts_with("nobody welds ")) << text_of(unit, "for");
  }
  EXPECT_EQ(number(json_of(all), "units_not_run"), 0);
  expect_one_line(run_program({"line", demo_plan, "--orders", demo_orders, "--without-robot", "R9"}),
                  "--without-robot: found \"R9\", expected one of R1, R2");
}

TEST_F(LineCommand, WithoutAnyOfItsRobotsTheDemoSaysHowManyUnitsWait) {
  for (const char* robot : {"R1", "R2"}) {
    const ProgramRun run =
        run_program({"line", demo_plan, "--orders", demo_orders, "--without-robot", robot, "--summary"});
    EXPECT_EQ(run.exit_code, 1) << run.errors;
    EXPECT_NE(run.output.find(" units aren't run: seams of theirs are unwelded. They wait.\n"),
              std::string::npos)
        << run.output.substr(0, 600);
    EXPECT_NE(run.output.find("nobody welds "), std::string::npos);
  }
}

TEST_F(LineCommand, AWeldmentThatTheListOfRobotsLeavesUnweldedIsNotRun) {
  std::string text = read_file(demo_plan, 1u << 24);
  const std::size_t loader = text.find("\"id\": \"BL\""), robots = text.find("\"robots\": [\"R1\"", loader);
  ASSERT_NE(robots, std::string::npos);
  text.insert(robots + std::string("\"robots\": [").size(), "\"R3\"], \"x_was\": [");
  const std::size_t cell = text.find("\"home_mm\"");
  ASSERT_NE(cell, std::string::npos);
  // A third robot that the seam alone names, and that is out.
  const std::size_t list = text.rfind('{', cell);
  text.insert(list, "{\"id\": \"R3\", \"home_mm\": [0, 0, 0]}, ");
  const std::string plan = write("three.weldplan.json", text);
  const JsonNode all = json_of(run_program({"line", plan, "--orders", demo_orders, "--json"}));
  const ProgramRun run =
      run_program({"line", plan, "--orders", demo_orders, "--without-robot", "R3", "--json"});
  ASSERT_EQ(run.exit_code, 1) << run.errors;
  const JsonNode result = json_of(run);
  EXPECT_EQ(number(result, "units_not_run"), 8);  // the belt loaders of the day
  EXPECT_EQ(number(result, "unit_count"), 16);
  EXPECT_LE(number(result, "throughput_per_h"), number(all, "throughput_per_h"));
  for (const JsonNode& unit : result.find("units")->elements) EXPECT_NE(text_of(unit, "weldment"), "BL");
  for (const JsonNode& unit : result.find("waiting")->elements) EXPECT_EQ(text_of(unit, "weldment"), "BL");
}

TEST_F(LineCommand, TheHeadlineIsTheMeanOfTheRuns) {
  const JsonNode result = json_of(run_program({"line", demo_plan, "--orders", demo_orders, "--json"}));
  const JsonNode& mean = *result.find("mean_of_runs");
  EXPECT_EQ(number(result, "runs"), 200);
  for (const char* key : {"throughput_per_h", "throughput_p10_per_h", "throughput_p90_per_h", "takt_misses",
                          "takt_lost_s", "makespan_s"})
    EXPECT_EQ(number(result, key), number(mean, key)) << key;
  EXPECT_LT(number(result, "throughput_p10_per_h"), number(result, "throughput_per_h"));
  EXPECT_LT(number(result, "throughput_per_h"), number(result, "throughput_p90_per_h"));
  // Units and stages are of the draw that is named, and a run of that seed alone is that draw.
  const JsonNode& draw = *result.find("draw");
  const auto seed = static_cast<long>(number(draw, "seed"));
  EXPECT_GE(number(draw, "throughput_per_h"), number(result, "throughput_p10_per_h"));
  EXPECT_LE(number(draw, "throughput_per_h"), number(result, "throughput_p90_per_h"));
  const JsonNode one = json_of(run_program(
      {"line", demo_plan, "--orders", demo_orders, "--runs", "1", "--seed", std::to_string(seed), "--json"}));
  EXPECT_EQ(number(one, "throughput_per_h"), number(draw, "throughput_per_h"));
  EXPECT_EQ(number(one, "makespan_s"), number(draw, "makespan_s"));
  EXPECT_EQ(number(*one.find("draw"), "seed"), seed);
  EXPECT_EQ(number(one.find("units")->elements[23], "end_s"),
            number(result.find("units")->elements[23], "end_s"));
  EXPECT_EQ(one.find("throughput_p10_per_h")->kind, JsonNode::Kind::null);
}

TEST_F(LineCommand, TheTextSaysWhatItsHeadlineIsMadeOf) {
  const std::string mean = run_program({"line", demo_plan, "--orders", demo_orders, "--summary"}).output;
  EXPECT_NE(mean.find("Means of 200 runs, seeds 1 and on."), std::string::npos) << mean.substr(0, 800);
  EXPECT_NE(mean.find("is one draw, the one in the middle by throughput: seed "), std::string::npos);
  const std::string one =
      run_program({"line", demo_plan, "--orders", demo_orders, "--runs", "1", "--seed", "9", "--summary"})
          .output;
  EXPECT_NE(one.find("One draw of chance, seed 9"), std::string::npos) << one.substr(0, 800);
  EXPECT_EQ(one.find("Means of"), std::string::npos);
  const std::string file = plan(R"({"takt_s": 1200, "stages": [{"id": "weld", "time": 1200}]})");
  const ProgramRun certain = run_program({"line", file, "--orders", orders("AAA"), "--summary"});
  EXPECT_NE(certain.output.find("Nothing in this line is left to chance: one run says all."),
            std::string::npos);
  const JsonNode json = json_of(run_program({"line", file, "--orders", orders("AAA"), "--json"}));
  EXPECT_EQ(number(json, "runs"), 1);
  EXPECT_EQ(number(json, "throughput_p10_per_h"), 3);
}

TEST_F(LineCommand, TwoHundredRunsOfADayTakeNoTime) {
  // Some 0.1 s; other work on the machine and sanitizers may take it ten times as long.
  const auto begun = std::chrono::steady_clock::now();
  EXPECT_EQ(run_program({"line", demo_plan, "--orders", demo_orders, "--json"}).exit_code, 0);
  EXPECT_LT(std::chrono::steady_clock::now() - begun, std::chrono::seconds(5));
}

TEST_F(LineCommand, AnOrderPulledForwardComesOutEarlier) {
  // The last order first: its end moves forward, and the whole day is computed again.
  std::ifstream file(demo_orders);
  std::string header, row, rest, last;
  std::getline(file, header);
  while (std::getline(file, row)) {
    if (!last.empty()) rest += last + "\n";
    last = row;
  }
  const std::string pulled = write("pulled.csv", header + "\n" + last + "\n" + rest);
  const JsonNode before = json_of(run_program({"line", demo_plan, "--orders", demo_orders, "--json"}));
  const ProgramRun run = run_program({"line", demo_plan, "--orders", pulled, "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode after = json_of(run);
  EXPECT_EQ(serials(after).front(), "AE-26-0124");
  EXPECT_LT(number(after.find("units")->elements[0], "end_s"),
            number(before.find("units")->elements[23], "end_s"));
  // It is due later than those that it passed: said, not refused.
  const auto& findings = after.find("findings")->elements;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const JsonNode& finding) {
    return text_of(finding, "rule") == "line.due.order";
  }));
}

TEST_F(LineCommand, IsTheSameForTheSameSeedAndAnotherForAnother) {
  const auto run = [&](const char* seed) {
    return run_program(
               {"line", demo_plan, "--orders", demo_orders, "--seed", seed, "--unit-count", "60", "--json"})
        .output;
  };
  const std::string first = run("7");
  EXPECT_FALSE(first.empty());
  EXPECT_EQ(first, run("7"));
  EXPECT_NE(first, run("8"));
}

TEST_F(LineCommand, TheBestOrderInTheCellLeavesItLessToDo) {
  const auto cell_work_s = [](const char* order) {
    const ProgramRun run = run_program(
        {"line", demo_plan, "--orders", demo_orders, "--order", order, "--steps", "2000", "--json"});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    const JsonNode result = json_of(run);
    return number(result.find("stages")->elements.at(2), "busy_pct") / 100 * number(result, "makespan_s");
  };
  EXPECT_LT(cell_work_s("best"), cell_work_s("given"));
}

TEST_F(LineCommand, TipAndWireChangesCostTime) {
  const auto makespan = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"line", demo_plan, "--orders", demo_orders, "--json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const ProgramRun run = run_program(arguments);
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return number(json_of(run), "makespan_s");
  };
  const double plain = makespan({});
  EXPECT_GT(makespan({"--tip-every", "2h", "--tip-change", "3min"}), plain);
  EXPECT_GT(makespan({"--wire-package", "16kg", "--wire-change", "10min"}), plain);
  expect_one_line(run_program({"line", demo_plan, "--orders", demo_orders, "--tip-every", "2kg"}),
                  "--tip-every: found unit \"kg\" in \"2kg\", expected a number with s, ms, min or h");
}

TEST_F(LineCommand, SaysInOneLineWhatIsWrongWithAnOrderFile) {
  const std::string file = plan(R"({"stages": [{"id": "weld", "time": 1200}]})");
  const auto line = [&](const std::string& text) {
    return run_program({"line", file, "--orders", write("bad.csv", text)});
  };
  const std::string path = (folder / "bad.csv").string();
  expect_one_line(line("unit_serial,due\nU1,\n"),
                  path + ":1:1: found the columns unit_serial, due, expected a column \"weldment\"");
  expect_one_line(line("unit_serial,weldment\nU1,A\nU1,B\n"),
                  path + ":3:1: found the serial \"U1\" again, expected each once; it stands in line 2");
  expect_one_line(line("unit_serial,weldment\nU1,C\n"),
                  path + ":2:4: found \"C\", expected one of the plan's weldments A, B");
  expect_one_line(line("unit_serial,weldment,due\nU1,A,2026-02-30\n"),
                  path + ":2:6: found \"2026-02-30\", expected a date YYYY-MM-DD or YYYY-MM-DDThh:mm");
  EXPECT_EQ(line("").exit_code, 2);
  EXPECT_EQ(line("unit_serial,weldment\nU1\n").exit_code, 2);
  EXPECT_EQ(run_program({"line", file, "--orders", (folder / "none.csv").string()}).exit_code, 2);
  EXPECT_EQ(run_program({"line", file}).exit_code, 2);
}

TEST_F(LineCommand, RefusesAPlanWithoutALine) {
  const std::string file = write(
      "p.weldplan.json", R"({"format": "weldplan", "version": 1, "weldments": [{"id": "A", "seams": []}]})");
  expect_one_line(run_program({"line", file, "--orders", orders("A")}),
                  file + ": found no line, expected a plan with a line (at /line)");
}

TEST_F(LineCommand, RefusesReworkToALaterStage) {
  const std::string file = plan(
      R"({"stages": [{"id": "a", "time": 1, "yield_pct": 90, "rework_to": "b"}, {"id": "b", "time": 1}]})");
  const ProgramRun run = run_program({"line", file, "--orders", orders("A")});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("p.weldplan.json: stage a/rework_to: found a stage behind it"), std::string::npos)
      << run.errors;
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1);
}

TEST_F(LineCommand, ALineThatDoesNotKeepTaktFails) {
  const std::string file =
      plan(R"({"takt_s": 1200, "stages": [{"id": "tack", "time": "tack"}, {"id": "weld", "time": 1100}]})");
  const ProgramRun run = run_program({"line", file, "--orders", orders("BBBBBB"), "--json"});
  EXPECT_EQ(run.exit_code, 1);
  const JsonNode result = json_of(run);
  EXPECT_EQ(number(result, "takt_misses"), 5);
  EXPECT_EQ(text_of(result.find("takt_misses_by_cause")->elements.at(0), "stage"), "tack");
  EXPECT_EQ(text_of(result.find("cures")->elements.at(0), "stage"), "tack");
  EXPECT_EQ(text_of(result.find("cures")->elements.at(0), "change"), "1 server more");
}

TEST_F(LineCommand, ManyUnitsTakeNoTimeWorthMentioning) {
  const std::string file =
      plan(R"({"takt_s": 1200, "stages": [{"id": "tack", "time": "tack", "servers": 2, "buffer_after": 2,
      "availability": 0.9, "repair_s": 300}, {"id": "weld", "time": 700, "buffer_after": 1}, {"id": "check", "time": 300, "yield_pct": 95,
      "rework_to": "weld", "rework_s": 200}]})");
  const ProgramRun run =
      run_program({"line", file, "--orders", orders("ABBA"), "--unit-count", "100000", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_EQ(json_of(run).find("units")->elements.size(), 100000u);
}
