// The commands that read arc logs and measured points, run as a user runs them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <thread>
#include <tuple>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "cli/read_watch.hpp"
#include "support/folder_test.hpp"
#include "support/program_paths.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class RecordsCommands : public FolderTest {
 protected:
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
  std::thread writer([&, watch = std::make_unique<ReadWatch>(log)] {
    for (int i = 50; i < 100; i += 10) {
      EXPECT_TRUE(watch->wait()) << "what stands there has been read";
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

TEST_F(RecordsCommands, AFollowedLogIsStoredOnceItIsWholeAndAgainAddsNothing) {
  const std::string head = "time_s,current_A,voltage_V\n";
  const std::string log = write("growing.csv", head + rows(0, 50));
  std::thread writer([&, watch = std::make_unique<ReadWatch>(log)] {
    EXPECT_TRUE(watch->wait());
    std::ofstream(log, std::ios::app) << rows(50, 100);
  });
  setenv("XDG_DATA_HOME", path("data").c_str(), 1);
  const std::string store = "sqlite:" + path("followed.sqlite");
  const auto followed =
      run_program({"audit", log, "--follow", "--follow-idle", "2s", "--process", "135", "--store", store});
  writer.join();
  EXPECT_NE(followed.output.find("Stored 1 pass"), std::string::npos) << followed.output << followed.errors;
  const auto again = run_program({"audit", log, "--process", "135", "--store", store});
  EXPECT_NE(again.output.find("Nothing added"), std::string::npos) << again.output << again.errors;
  EXPECT_EQ(run_program({"ledger", "verify", "--store", store}).exit_code, 0);
  // One that isn't whole is no log to keep.
  const std::string half = write("half.csv", head + rows(0, 50) + "5.0,2"),
                    other = "sqlite:" + path("half.sqlite");
  const auto refused =
      run_program({"audit", half, "--follow", "--follow-idle", "1s", "--process", "135", "--store", other});
  EXPECT_EQ(refused.exit_code, 2) << refused.output;
  EXPECT_FALSE(std::filesystem::exists(path("half.sqlite")));
  unsetenv("XDG_DATA_HOME");
}

TEST_F(RecordsCommands, FollowingThatIsStoppedTellsWhatCameAndThatNothingIsStored) {
  const std::string log = write("growing.csv", "time_s,current_A,voltage_V\n" + rows(0, 50));
  const std::string command =
      std::string("timeout -s INT 1.5 ") + seamtakt_program() + " audit " + log +
      " --follow --follow-idle 60s --process 135 --json --store sqlite:" + path("stopped.sqlite") + " > " +
      path("out.json") + " 2> " + path("err.txt");
  std::ignore = std::system(command.c_str());
  const JsonNode told = parse_json(read_file(path("out.json"), 1 << 20), "out.json");
  EXPECT_EQ(told.find("rows")->find("read")->number, 50);
  const auto& findings = told.find("findings")->elements;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const JsonNode& finding) {
    return finding.find("rule")->string == "audit.store.not-whole";
  }));
  EXPECT_FALSE(std::filesystem::exists(path("stopped.sqlite")));
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

TEST_F(RecordsCommands, LearnFindsHowFastTheRobotsMoveAndWhatAStartTakes) {
  const std::string log = path("moves.csv");
  const std::string command = std::string(demo_log_program()) + " " + demo_plan +
                              " --units 3 --rate 20 --clean --moves --output " + log;
  ASSERT_EQ(std::system(command.c_str()), 0);
  const auto run = run_program({"learn", log, "--plan", demo_plan, "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = parse_json(run.output, "learn");
  int speeds = 0, starts = 0;
  for (const JsonNode& parameter : result.find("parameters")->elements) {
    const std::string& name = parameter.find("name")->string;
    const bool is_speed = name.find("/air_speed_mm_s") != std::string::npos,
               is_start = name.find("/arc_start_s") != std::string::npos;
    if (!is_speed && !is_start) continue;
    // The truth of the generator: 0.85 of the plan's speed, and 0.2 s more a start. Rows come every 0.05 s,
    // and the standing before the first one is cut off to whole rows.
    const double old_value = parameter.find("old")->number;
    const double truth = is_speed ? 0.85 * old_value : old_value + 0.2;
    const double margin = is_speed ? 0.02 * truth : 0.05;
    EXPECT_LE(parameter.find("low_95")->number, truth + margin) << name;
    EXPECT_GE(parameter.find("high_95")->number, truth - margin) << name;
    EXPECT_NEAR(parameter.find("new")->number, truth, is_speed ? 0.05 * truth : 0.08) << name;
    EXPECT_TRUE(parameter.find("proposed")->boolean) << name;
    ++(is_speed ? speeds : starts);
  }
  EXPECT_EQ(speeds, 2);
  EXPECT_EQ(starts, 2);
  // The demo's own log has five seconds between passes whatever the distance: nothing can be learned from it.
  const auto without = run_program({"learn", demo_log, "--plan", demo_plan, "--json"});
  EXPECT_EQ(without.output.find("air_speed_mm_s\""), std::string::npos);
  EXPECT_NE(without.output.find("learn.moves.unclear"), std::string::npos);
  EXPECT_NE(without.output.find("learn.deposition.unknown"), std::string::npos);
}

TEST_F(RecordsCommands, LearnTakesWhatTheScalesSay) {
  const auto audited = run_program({"audit", demo_log, "--plan", demo_plan, "--json"});
  const JsonNode passes = parse_json(audited.output, "audit");
  // Every pass of the solid wire's F5S weighed: 0.95 of the 1.2 mm wire that its record says was fed.
  std::string scales = "unit_serial,weldment,seam,pass,gained_g\n";
  for (const JsonNode& pass : passes.find("passes")->elements) {
    if (pass.find("schedule")->string != "F5S") continue;
    const double volume_mm3 = 3.14159265358979 * 0.6 * 0.6 * pass.find("wire_feed_speed_m_min")->number *
                              1000 / 60 * pass.find("arc_time_s")->number;
    scales += pass.find("unit_serial")->string + "," + pass.find("weldment")->string + "," +
              pass.find("seam")->string + "," + std::to_string(static_cast<int>(pass.find("pass")->number)) +
              "," + std::to_string(volume_mm3 * 7.85e-3 * 0.95) + "\n";
  }
  std::ofstream(path("scales.csv")) << scales;
  const auto run =
      run_program({"learn", demo_log, "--plan", demo_plan, "--weighed", path("scales.csv"), "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = parse_json(run.output, "learn");
  int found = 0;
  for (const JsonNode& parameter : result.find("parameters")->elements)
    if (parameter.find("name")->string == "wires/S12/deposition_efficiency") {
      ++found;
      EXPECT_NEAR(parameter.find("new")->number, 0.95, 1e-4);
      EXPECT_TRUE(parameter.find("proposed")->boolean);
    }
  EXPECT_EQ(found, 1);
  EXPECT_FALSE(result.find("changes")->find("leg_mm")->elements.empty()) << "less metal, smaller legs";
  EXPECT_EQ(run.output.find("learn.deposition.unknown"), std::string::npos);
}

TEST_F(RecordsCommands, MeasureJudgesTheDemosPoints) {
  const auto run = run_program(
      {"measure", demo_plan, "--weldment", "BD", "--points", demo_folder + "points.csv", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = parse_json(run.output, "measure");
  EXPECT_FALSE(result.find("features")->elements.empty());
  EXPECT_FALSE(result.find("points")->elements.empty());
  const auto table =
      run_program({"measure", demo_plan, "--weldment", "BD", "--points", demo_folder + "points.csv"});
  EXPECT_NE(table.output.find("Feature"), std::string::npos);
  EXPECT_EQ(run_program({"measure", demo_plan, "--weldment", "BD", "--points", path("none.csv")}).exit_code,
            2);
}

}  // namespace
