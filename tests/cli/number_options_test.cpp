// Absurd numbers on the command line and in files: refused in one line, at once.
#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
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

void expect_refused_at_once(const std::vector<std::string>& arguments, const std::string& message) {
  const auto begun = std::chrono::steady_clock::now();
  const ProgramRun run = run_program(arguments);
  std::string line;
  for (const std::string& argument : arguments) line += argument + " ";
  EXPECT_EQ(run.exit_code, 2) << line;
  EXPECT_EQ(run.output, "") << line;
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << line << run.errors;
  EXPECT_NE(run.errors.find(message), std::string::npos) << line << run.errors;
  EXPECT_LT(std::chrono::steady_clock::now() - begun, std::chrono::seconds(20)) << line;
}

struct BadNumber {
  std::vector<std::string> command;
  const char *option, *value, *expected;
};

std::vector<BadNumber> bad_numbers() {
  const std::vector<std::string> cycle = {"cycle", demo_plan, "--order", "best"},
                                 line = {"line", demo_plan, "--orders", demo_orders},
                                 audit = {"audit", demo_log},
                                 learn = {"learn", demo_log, "--plan", demo_plan},
                                 window = {"window", demo_plan, "--schedule", "MF5", "--seam", "BD/S01"};
  return {
      {cycle, "--steps", "-1", "a whole number from 1 to 1000000000000"},
      {cycle, "--steps", "1e3", "a whole number from 1 to 1000000000000"},
      {cycle, "--steps", "99999999999999999999", "a whole number from 1 to 1000000000000"},
      {cycle, "--seed", "-1", "a whole number from 0 to 18446744073709551615"},
      {cycle, "--seed", "0x10", "a whole number from 0 to 18446744073709551615"},
      {cycle, "--seconds", "1e308", "a value from 1e-06 to 1000000 s"},
      {cycle, "--seconds", "1e999", "--seconds"},
      {cycle, "--seconds", "nan", "--seconds"},
      {cycle, "--seconds", "0", "a value from 1e-06 to 1000000 s"},
      {cycle, "--seconds", "-5s", "a value from 1e-06 to 1000000 s"},
      {line, "--steps", "-1", "a whole number from 1 to 100000000"},
      {line, "--seed", "-1", "a whole number from 0 to 18446744073709551615"},
      {line, "--runs", "-1", "a whole number from 1 to 100000"},
      {line, "--runs", "0", "a whole number from 1 to 100000"},
      {line, "--runs", "2.5", "a whole number from 1 to 100000"},
      {line, "--unit-count", "-1", "a whole number from 1 to 200000"},
      {line, "--unit-count", "200001", "a whole number from 1 to 200000"},
      {line, "--window", "-3", "a whole number from 1 to 1000000"},
      {line, "--tip-every", "0.1s", "a value from 1 to 1000000 s"},
      {line, "--tip-change", "-1s", "a value from 0 to 1000000 s"},
      {line, "--tip-change", "1e308s", "a value from 0 to 1000000 s"},
      {line, "--wire-package", "1e300kg", "a value from 0.001 to 10000 kg"},
      {line, "--wire-change", "-1", "a value from 0 to 1000000 s"},
      {audit, "--arc-current", "-5A", "a value from 0 to 10000 A"},
      {audit, "--arc-current", "1e308", "a value from 0 to 10000 A"},
      {audit, "--arc-off", "-1s", "a value from 0 to 1000000 s"},
      {audit, "--follow-idle", "1e308s", "a value from 0 to 1000000 s"},
      {audit, "--length-tolerance", "-1%", "a value from 0 to 100 %"},
      {audit, "--max-rejected", "-1", "a whole number from 0 to 9223372036854775807"},
      {audit, "--max-passes", "0", "a whole number from 1 to 10000000"},
      {audit, "--max-passes", "-1", "a whole number from 1 to 10000000"},
      {learn, "--max-passes", "1e9", "a whole number from 1 to 10000000"},
      {audit, "--sort-window", "-1", "a whole number from 0 to 10000000"},
      {audit, "--sort-window", "10000000000000", "a whole number from 0 to 10000000"},
      {audit, "--threads", "-1", "a whole number from 0 to 1024"},
      {audit, "--threads", "1000000", "a whole number from 0 to 1024"},
      {audit, "--pass", "-1", "a whole number from 1 to 10000"},
      {learn, "--threads", "-1", "a whole number from 0 to 1024"},
      {window, "--size", "-1", "a whole number from 2 to 2000"},
      {window, "--size", "1000000000", "a whole number from 2 to 2000"},
      {{"calc", "heat-input", "--power", "5kW", "--travel-speed", "8", "--u-power", "1%"},
       "--monte-carlo",
       "-1",
       "a whole number from 2 to 100000000"},
      {{"ledger", "list", "--store", "sqlite:none.sqlite"},
       "--limit",
       "-1",
       "a whole number from 0 to 9223372036854775807"},
      {{"ledger", "verify", "--store", "sqlite:none.sqlite"},
       "--from",
       "-1",
       "a whole number from 1 to 9223372036854775807"},
  };
}

class NumberOptions : public FolderTest {
 protected:
  /// The demo with the first `key` that is followed by `old_text` changed.
  std::string demo_with(const std::string& old_text, const std::string& new_text) {
    std::string text = read_file(demo_plan, 1u << 24);
    const std::size_t at = text.find(old_text);
    EXPECT_NE(at, std::string::npos) << old_text;
    return write("p.weldplan.json", text.replace(at, old_text.size(), new_text));
  }
};

}  // namespace

TEST_F(NumberOptions, OutsideTheirRangeAreBadInput) {
  for (const BadNumber& bad : bad_numbers()) {
    std::vector<std::string> arguments = bad.command;
    arguments.insert(arguments.end(), {bad.option, bad.value});
    expect_refused_at_once(arguments, bad.expected);
    arguments.resize(bad.command.size());
    arguments.push_back(std::string(bad.option) + "=" + bad.value);
    expect_refused_at_once(arguments, bad.expected);
  }
}

TEST_F(NumberOptions, TheEndsOfTheirRangeAreTaken) {
  EXPECT_EQ(run_program({"cycle", demo_plan, "--order", "best", "--steps", "1", "--seed",
                         "18446744073709551615", "--seconds", "1000000", "--summary"})
                .exit_code,
            1);
  EXPECT_LE(run_program({"line", demo_plan, "--orders", demo_orders, "--runs", "1", "--seed", "0", "--window",
                         "1000000", "--summary"})
                .exit_code,
            1);
  EXPECT_EQ(run_program({"window", demo_plan, "--schedule", "F4S", "--seam", "BD/S01", "--size", "2"}).errors,
            "");
}

TEST_F(NumberOptions, CoordinatesBeyondAKilometreAreRefusedEverywhere) {
  const std::string far_path = demo_with("\"path_mm\": [[", "\"path_mm\": [[1e9, 0, 0], [");
  const std::vector<std::vector<std::string>> commands = {{"evaluate", far_path},
                                                          {"cycle", far_path},
                                                          {"line", far_path, "--orders", demo_orders},
                                                          {"audit", demo_log, "--plan", far_path}};
  for (const std::vector<std::string>& command : commands)
    expect_refused_at_once(command,
                           "found 1000000000, expected a number from -1000000 to 1000000 mm (at "
                           "/weldments/0/seams/0/path_mm/0/0)");
  const std::string far_home = demo_with("\"home_mm\": [", "\"home_mm\": [-1000000.5, 0, 0], \"x_was\": [");
  expect_refused_at_once({"cycle", far_home},
                         "expected a number from -1000000 to 1000000 mm (at /cell/robots/0/home_mm/0)");
  const std::string points = write("points.csv", "point,x_mm,y_mm,z_mm\nP1,0,0,1e7\n");
  expect_refused_at_once({"measure", demo_plan, "--weldment", "BD", "--points", points},
                         "points.csv:2:8: found \"1e7\", expected a coordinate from -1000000 to 1000000 mm");
  // A coordinate of a logged row is rejected with the row, and more than --max-rejected of them is bad input.
  const std::string log =
      write("log.csv", "time_s,current_A,voltage_V,x_mm,y_mm\n0,200,25,0,0\n1,200,25,1e9,0\n");
  EXPECT_EQ(run_program({"audit", log}).exit_code, 2);
}

TEST_F(NumberOptions, TimesOfMonthsAreRefused) {
  for (const char* time : {"1e308", "1e15", "10000001"}) {
    const std::string load = demo_with("\"load_s\": ", "\"load_s\": " + std::string(time) + ", \"x_was\": ");
    expect_refused_at_once({"line", load, "--orders", demo_orders}, "(at /weldments/0/load_s)");
    const std::string stage =
        demo_with("\"repair_s\": ", "\"repair_s\": " + std::string(time) + ", \"x_was\": ");
    expect_refused_at_once({"line", stage, "--orders", demo_orders}, "/repair_s)");
  }
  expect_refused_at_once(
      {"line", demo_with("\"load_s\": ", "\"load_s\": 1e999, \"x_was\": "), "--orders", demo_orders}, "");
  // Stops without end within one unit's work hung the line.
  expect_refused_at_once(
      {"line", demo_with("\"repair_s\": ", "\"repair_s\": 1e-9, \"x_was\": "), "--orders", demo_orders},
      "expected at most 1000 stops while a unit is there");
}
