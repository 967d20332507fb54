// The commands that read arc logs and measured points, run as a user runs them.
#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <thread>

#include "base/json_node.hpp"
#include "cli/program.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

const std::string demo = std::string(SEAMTAKT_SOURCE_DIR) + "/reference/demo/";
const std::string demo_plan = demo + "ground-equipment.weldplan.json";
const std::string demo_log = demo + "arc-log.csv.gz";

class RecordsCommands : public testing::Test {
 protected:
  void SetUp() override {
    char name[] = "/tmp/seamtakt-records-XXXXXX";
    folder_ = mkdtemp(name);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::string path(const std::string& name) const { return folder_ / name; }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(path(name), std::ios::binary) << text;
    return path(name);
  }

  std::filesystem::path folder_;
};

std::string rows(int from, int to) {
  std::string text;
  for (int i = from; i < to; ++i)
    text += std::to_string(i / 10) + "." + std::to_string(i % 10) + "," + std::to_string(200 + i % 3) +
            ",25." + std::to_string(i % 7) + "\n";
  return text;
}

TEST_F(RecordsCommands, TheNumberOfThreadsChangesNoByteOfTheAudit) {
  const auto one = run_program({"audit", demo_log, "--plan", demo_plan, "--threads", "1", "--json"});
  EXPECT_EQ(one.exit_code, 1) << one.errors;
  for (const char* threads : {"2", "5"})
    EXPECT_EQ(run_program({"audit", demo_log, "--plan", demo_plan, "--threads", threads, "--json"}).output,
              one.output);
}

TEST_F(RecordsCommands, AFollowedLogIsReadToWhereItIsWritten) {
  const std::string head = "time_s,current_A,voltage_V\n";
  const std::string log = write("growing.csv", head + rows(0, 50));
  std::thread writer([&] {
    for (int i = 50; i < 100; i += 10) {
      std::this_thread::sleep_for(std::chrono::milliseconds(150));
      std::ofstream(log, std::ios::app) << rows(i, i + 10);
    }
    std::ofstream(log, std::ios::app) << "10.0,2";  // half a row
  });
  const auto followed =
      run_program({"audit", log, "--follow", "--follow-idle", "1s", "--process", "135", "--json"});
  writer.join();
  const auto whole =
      run_program({"audit", write("whole.csv", head + rows(0, 100)), "--process", "135", "--json"});
  const JsonNode got = parse_json(followed.output, "followed"), want = parse_json(whole.output, "whole");
  EXPECT_EQ(got.find("rows")->find("read")->number, 100);
  EXPECT_EQ(got.find("rows")->find("rejected")->number, 0) << "a half-written row isn't a bad one";
  EXPECT_EQ(got.find("passes")->elements.at(0).find("energy_J")->number,
            want.find("passes")->elements.at(0).find("energy_J")->number);
  EXPECT_EQ(run_program({"audit", "-", "--follow"}).exit_code, 2);
}

TEST_F(RecordsCommands, LearnFindsHowTheDemosWiresReallyMelt) {
  const auto run =
      run_program({"learn", demo_log, "--plan", demo_plan, "--output", path("plan2.json"), "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = parse_json(run.output, "learn");
  int wires = 0;
  for (const JsonNode& parameter : result.find("parameters")->elements) {
    if (parameter.find("name")->string.find("alpha_mm_s_A") == std::string::npos) continue;
    ++wires;
    // The demo's logger melts its wires by 1.03 times the plan's law.
    const double truth = 1.03 * parameter.find("old")->number;
    EXPECT_LE(parameter.find("low_95")->number, truth) << parameter.find("name")->string;
    EXPECT_GE(parameter.find("high_95")->number, truth) << parameter.find("name")->string;
  }
  EXPECT_GE(wires, 1);
  EXPECT_FALSE(result.find("changes")->find("heat_input_kJ_mm")->elements.empty());
  EXPECT_EQ(run_program({"evaluate", path("plan2.json"), "--json"}).errors, "") << "the proposal is a plan";
  EXPECT_EQ(run_program({"learn", demo_log, "--plan", demo_plan, "--output", demo_plan}).exit_code, 2)
      << "a proposal never replaces the plan";
}

TEST_F(RecordsCommands, MeasureJudgesTheDemosPoints) {
  const auto run =
      run_program({"measure", demo_plan, "--weldment", "BD", "--points", demo + "points.csv", "--json"});
  ASSERT_LE(run.exit_code, 1) << run.errors;
  const JsonNode result = parse_json(run.output, "measure");
  EXPECT_FALSE(result.find("features")->elements.empty());
  EXPECT_FALSE(result.find("points")->elements.empty());
  const auto table = run_program({"measure", demo_plan, "--weldment", "BD", "--points", demo + "points.csv"});
  EXPECT_NE(table.output.find("Feature"), std::string::npos);
  EXPECT_EQ(run_program({"measure", demo_plan, "--weldment", "BD", "--points", path("none.csv")}).exit_code,
            2);
}

}  // namespace
