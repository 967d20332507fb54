// `line` with a calendar, through the program.
#include <gtest/gtest.h>

#include "base/json/json_node.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class LineClock : public FolderTest {
 protected:
  /// A plan with this line (JSON) and a weldment A.
  std::string plan(const std::string& line) {
    return write("p.weldplan.json",
                 R"({"format": "weldplan", "version": 1, "weldments": [{"id": "A", "seams": []}], "line": )" +
                     line + "}");
  }
  /// So many of A, due on Monday 2026-03-02.
  std::string orders(int count) {
    std::string text = "unit_serial,weldment,due\n";
    for (int i = 1; i <= count; ++i) text += "U" + std::to_string(i) + ",A,2026-03-02\n";
    return write("orders.csv", text);
  }
};

}  // namespace

TEST_F(LineClock, WithACalendarTimesAreOnTheClockAndDuesAreJudged) {
  // An hour a unit, four hours a day: Monday until 10:00 four units, Tuesday two. Due on Monday, until
  // midnight.
  const std::string file = plan(R"({"stages": [{"id": "weld", "time": 3600}], "calendar": {
      "start": "2026-03-02T06:00", "shifts": [{"days": ["mon", "tue"], "from": "06:00", "to": "10:00"}]}})");
  const ProgramRun run = run_program({"line", file, "--orders", orders(6), "--json"});
  EXPECT_EQ(run.exit_code, 1) << run.errors;
  const JsonNode result = json_of(run);
  EXPECT_EQ(text_of(result, "calendar_start"), "2026-03-02T06:00:00");
  EXPECT_EQ(text_of(result, "finished_clock"), "2026-03-03T08:00:00");
  EXPECT_EQ(number(result, "working_s"), 6 * 3600);
  EXPECT_EQ(number(result, "makespan_s"), 26 * 3600);
  EXPECT_EQ(number(result, "throughput_per_h"), 1);
  EXPECT_EQ(text_of(result, "first_day"), "2026-03-02");
  EXPECT_EQ(text_of(result, "first_day_clock"), "2026-03-02T10:00:00");
  EXPECT_EQ(number(result, "finished_first_day"), 4);
  EXPECT_EQ(number(result, "late_orders"), 2);
  const auto& unfinished = result.find("unfinished_first_day")->elements;
  ASSERT_EQ(unfinished.size(), 2u);
  EXPECT_EQ(unfinished[0].string, "U5");
  const auto& units = result.find("units")->elements;
  EXPECT_EQ(text_of(units.at(3), "end_clock"), "2026-03-02T10:00:00");
  EXPECT_EQ(text_of(units.at(4), "start_clock"), "2026-03-03T06:00:00");
  EXPECT_EQ(number(units.at(4), "start_s"), 24 * 3600);
  EXPECT_EQ(number(units.at(4), "late_s"), 7 * 3600);
  EXPECT_EQ(number(units.at(4), "late_pct"), 100);
  EXPECT_FALSE(units.at(3).find("late_s"));
  EXPECT_EQ(number(units.at(3), "late_pct"), 0);
  const std::string text = run_program({"line", file, "--orders", orders(6)}).output;
  EXPECT_NE(text.find("Not finished on 2026-03-02 in this draw: U5, U6."), std::string::npos) << text;
  EXPECT_NE(text.find("Late orders on the mean: 2."), std::string::npos) << text;
  EXPECT_NE(text.find("2026-03-03T07:00:00"), std::string::npos) << text;
}

TEST_F(LineClock, WithoutACalendarNothingOfAClockIsSaid) {
  const std::string demo = source_path("/reference/demo/");
  const JsonNode result = json_of(run_program(
      {"line", demo + "ground-equipment.weldplan.json", "--orders", demo + "orders-day.csv", "--json"}));
  for (const char* key :
       {"calendar_start", "finished_clock", "working_s", "first_day", "unfinished_first_day", "late_orders"})
    EXPECT_FALSE(result.find(key)) << key;
  for (const char* key : {"start_clock", "end_clock", "late_s", "late_pct"})
    EXPECT_FALSE(result.find("units")->elements[0].find(key)) << key;
  EXPECT_FALSE(result.find("stages")->elements[0].find("no_person_pct"));
}
