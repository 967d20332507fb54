#include <gtest/gtest.h>

#include <algorithm>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

JsonNode map_of(const std::vector<std::string>& more) {
  std::vector<std::string> arguments{"window", demo_plan, "--schedule", "F6S", "--seam", "BD/S05", "--json"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const ProgramRun run = run_program(arguments);
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  return parse_json(run.output, "output");
}

}  // namespace

TEST(Window, TheDocumentHasTwoAxesAndMapsOfThatShape) {
  const JsonNode map = map_of({"--size", "7"});
  for (const char* axis : {"wire_feed_speed_m_min", "travel_speed_mm_s"}) {
    ASSERT_TRUE(map.find(axis));
    ASSERT_EQ(map.find(axis)->elements.size(), 7u);
    for (std::size_t i = 1; i < 7; ++i)
      EXPECT_GT(map.find(axis)->elements[i].number, map.find(axis)->elements[i - 1].number);
  }
  for (const char* key : {"heat_input_kJ_mm", "deposit_area_mm2", "leg_mm", "cooling_time_s",
                          "preheat_needed_C", "haz_hardness_HV"}) {
    const JsonNode* values = map.find("maps")->find(key);
    ASSERT_TRUE(values) << key;
    ASSERT_EQ(values->elements.size(), 7u) << key;
    for (const JsonNode& row : values->elements) EXPECT_EQ(row.elements.size(), 7u) << key;
  }
  ASSERT_EQ(map.find("feasible")->elements.size(), 7u);
  EXPECT_EQ(map.find("feasible")->elements[3].elements.size(), 7u);
  // More wire is a larger leg, more speed a smaller one.
  const auto leg = [&](std::size_t i, std::size_t j) {
    return map.find("maps")->find("leg_mm")->elements[i].elements[j].number;
  };
  EXPECT_GT(leg(6, 3), leg(0, 3));
  EXPECT_LT(leg(3, 6), leg(3, 0));
}

TEST(Window, TheScheduleIsInItsWindowAndEachLimitHasItsMargin) {
  const JsonNode map = map_of({});
  EXPECT_EQ(map.find("wire_feed_speed_m_min")->elements.size(), 50u);
  EXPECT_EQ(map.find("working_point")->find("feasible")->boolean, true);
  EXPECT_GT(map.find("feasible_pct")->number, 1);
  bool leg_seen = false;
  for (const JsonNode& limit : map.find("limits")->elements) {
    if (limit.find("rule")->string != "fillet.leg.undersize") continue;
    leg_seen = true;
    EXPECT_EQ(limit.find("bound")->number, 6);
    EXPECT_NEAR(limit.find("margin")->number, limit.find("value")->number - 6, 1e-12);
    EXPECT_GT(limit.find("alone_pct")->number, 0);
  }
  EXPECT_TRUE(leg_seen);
}

TEST(Window, PeopleSeeTheRegionTheMarginsAndTheLimits) {
  const ProgramRun run = run_program({"window", demo_plan, "--schedule", "F6S", "--seam", "BD/S05"});
  EXPECT_EQ(run.exit_code, 0);
  for (const char* words :
       {"% of the map keeps all limits", "o the schedule", "##", "Margin", "fillet.leg.undersize"})
    EXPECT_NE(run.output.find(words), std::string::npos) << words;
}

TEST(Window, AScheduleOutsideItsWindowEndsWithTheFailsOfEvaluate) {
  // TT/S49 is welded with F5S, which is too small for it; F6S isn't.
  const ProgramRun planned = run_program({"evaluate", demo_plan, "--weldment", "TT"});
  EXPECT_EQ(planned.exit_code, 1);
  const ProgramRun outside = run_program({"window", demo_plan, "--schedule", "F5S", "--seam", "TT/S49"});
  EXPECT_EQ(outside.exit_code, 1);
  for (const ProgramRun* run : {&planned, &outside})
    EXPECT_NE(run->output.find("Fillet leg is 5.11 of 6 mm"), std::string::npos) << run->output;
  EXPECT_EQ(run_program({"window", demo_plan, "--schedule", "F6S", "--seam", "TT/S49"}).exit_code, 0);
}

TEST(Window, BadInputIsOneLineAndTwo) {
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"window", demo_plan, "--schedule", "F6S"},
        {"window", demo_plan, "--seam", "BD/S05"},
        {"window", demo_plan, "--schedule", "F6", "--seam", "BD/S05"},
        {"window", demo_plan, "--schedule", "F6S", "--seam", "BD/S5"},
        {"window", demo_plan, "--schedule", "F6S", "--seam", "BD/S05", "--size", "1"},
        {"window", demo_plan, "--schedule", "F6S", "--seam", "BD/S05", "--size", "-4"},
        {"window", demo_plan, "--schedule", "F6S", "--seam", "BD/S05", "--size", "1000000000"},
        {"window", demo_plan + ".absent", "--schedule", "F6S", "--seam", "BD/S05"}}) {
    const ProgramRun run = run_program(arguments);
    EXPECT_EQ(run.exit_code, 2) << run.errors;
    EXPECT_EQ(run.output, "");
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  }
}
