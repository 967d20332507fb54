// What a plan's line is refused for: one clear line each, and the place of it.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt::test {
namespace {

/// What a plan with this line (JSON) is refused for: "POINTER: found ..., expected ...".
std::string refusal_of(const std::string& line) {
  const std::string text = R"({"format": "weldplan", "version": 1, "line": )" + line + "}";
  try {
    const Plan plan = parse_plan(text, "p");
    // What is read and written again is the same plan.
    EXPECT_EQ(write_plan(parse_plan(write_plan(plan), "p")), write_plan(plan));
    return "accepted";
  } catch (const InputError& error) {
    return error.pointer() + ": found " + error.found().english() + ", expected " +
           error.expected().english();
  }
}

std::string with_shifts(const std::string& shifts, const std::string& start = "2026-11-30T06:00") {
  return refusal_of(R"({"calendar": {"start": ")" + start + R"(", "shifts": [)" + shifts + "]}}");
}

const std::string early = R"({"days": ["mon", "tue"], "from": "06:00", "to": "14:00"})";

TEST(LineRelations, TakeCalendarsThatHaveASense) {
  EXPECT_EQ(with_shifts(early), "accepted");
  // One shift follows the other; a break after midnight; the whole day; from Sunday night into Monday
  // morning.
  EXPECT_EQ(with_shifts(early + R"(, {"days": ["mon"], "from": "14:00", "to": "22:00"})"), "accepted");
  EXPECT_EQ(
      with_shifts(
          R"({"days": ["fri"], "from": "22:00", "to": "06:00", "breaks": [["23:50", "00:10"], ["02:00", "02:30"]]})"),
      "accepted");
  EXPECT_EQ(with_shifts(R"({"days": ["sat"], "from": "06:00", "to": "06:00"})"), "accepted");
  EXPECT_EQ(with_shifts(early + R"(, {"days": ["sun"], "from": "22:00", "to": "06:00"})"), "accepted");
  EXPECT_EQ(
      with_shifts(
          R"({"days": ["mon"], "from": "06:00", "to": "14:00", "breaks": [["06:00", "06:10"], ["13:50", "14:00"]]})"),
      "accepted");
}

TEST(LineRelations, RefuseDaysAndTimesThatAreNone) {
  EXPECT_EQ(
      with_shifts(early, "2026-11-31T06:00"),
      "/line/calendar/start: found \"2026-11-31T06:00\", expected a local time YYYY-MM-DDThh:mm of the years "
      "1970 to 2199");
  EXPECT_NE(with_shifts(early, "2026-11-30"), "accepted");
  EXPECT_NE(with_shifts(early, "1969-12-31T23:00"), "accepted");
  EXPECT_NE(with_shifts(early, "2200-01-01T00:00"), "accepted");
  EXPECT_EQ(
      with_shifts(R"({"days": ["mon", "thu", "tues"], "from": "06:00", "to": "14:00"})"),
      "/line/calendar/shifts/0/days/2: found \"tues\", expected one of mon, tue, wed, thu, fri, sat and sun; "
      "the nearest is tue");
  EXPECT_EQ(
      with_shifts(R"({"days": ["mon", "mon"], "from": "06:00", "to": "14:00"})"),
      "/line/calendar/shifts/0/days/1: found the day mon a second time, expected each day once in a shift");
  EXPECT_EQ(with_shifts(R"({"days": ["mon"], "from": "6:00", "to": "14:00"})"),
            "/line/calendar/shifts/0/from: found \"6:00\", expected a time of day hh:mm from 00:00 to 23:59");
  EXPECT_EQ(with_shifts(R"({"days": ["mon"], "from": "06:00", "to": "24:00"})"),
            "/line/calendar/shifts/0/to: found \"24:00\", expected a time of day hh:mm from 00:00 to 23:59");
  EXPECT_EQ(
      with_shifts(R"({"days": ["mon"], "from": "06:00", "to": "14:00", "breaks": [["09:00", "9:15"]]})"),
      "/line/calendar/shifts/0/breaks/0/1: found \"9:15\", expected a time of day hh:mm from 00:00 to 23:59");
}

TEST(LineRelations, RefuseBreaksOutsideTheirShift) {
  EXPECT_EQ(
      with_shifts(R"({"days": ["mon"], "from": "06:00", "to": "14:00", "breaks": [["13:50", "14:10"]]})"),
      "/line/calendar/shifts/0/breaks/0: found a break from 13:50 to 14:10, expected a break within its "
      "shift, "
      "06:00 to 14:00");
  for (const char* pause : {R"(["05:00", "05:10"])", R"(["09:00", "09:00"])", R"(["10:00", "09:00"])",
                            R"(["05:50", "06:10"])", R"(["14:00", "14:10"])"})
    EXPECT_NE(with_shifts(R"({"days": ["mon"], "from": "06:00", "to": "14:00", "breaks": [)" +
                          std::string(pause) + "]}"),
              "accepted")
        << pause;
  EXPECT_EQ(
      with_shifts(
          R"({"days": ["mon"], "from": "06:00", "to": "14:00", "breaks": [["06:00", "10:30"], ["10:00", "14:00"]]})"),
      "/line/calendar/shifts: found shifts without time to work, expected a shift that is longer than its "
      "breaks");
}

TEST(LineRelations, RefuseShiftsThatOverlap) {
  EXPECT_EQ(
      with_shifts(early + R"(, {"days": ["wed", "tue"], "from": "13:00", "to": "22:00"})"),
      "/line/calendar/shifts/1/days/1: found a shift on tue from 13:00 to 22:00 that overlaps the one on tue "
      "from 06:00 to 14:00, expected shifts that don't overlap");
  // Sunday's night reaches into Monday's morning.
  EXPECT_EQ(
      with_shifts(early + R"(, {"days": ["sun"], "from": "22:00", "to": "07:00"})"),
      "/line/calendar/shifts/0/days/0: found a shift on mon from 06:00 to 14:00 that overlaps the one on sun "
      "from 22:00 to 07:00, expected shifts that don't overlap");
  EXPECT_NE(with_shifts(early + ", " + early), "accepted");
  // A day that is worked through, and the next morning.
  EXPECT_NE(
      with_shifts(
          R"({"days": ["mon"], "from": "08:00", "to": "08:00"}, {"days": ["tue"], "from": "06:00", "to": "10:00"})"),
      "accepted");
}

TEST(LineRelations, RefuseAPullWithoutATakt) {
  EXPECT_EQ(refusal_of(R"({"pull": "takt"})"),
            "/line/pull: found \"takt\" without takt_s, expected a line with takt_s, or \"free\"");
  EXPECT_EQ(refusal_of(R"({"pull": "takt", "takt_s": 600})"), "accepted");
  EXPECT_EQ(refusal_of(R"({"pull": "free"})"), "accepted");
}

TEST(LineRelations, RefuseVariationThatContradictsItself) {
  const auto stage = [](const std::string& keys) {
    return refusal_of(R"({"stages": [{"id": "a", "time": 10, "servers": 1, )" + keys + "}]}");
  };
  EXPECT_EQ(stage(R"("cv": 0.3)"), "accepted");
  EXPECT_EQ(stage(R"("time_range_s": [10, 10, 30])"), "accepted");
  EXPECT_EQ(
      stage(R"("cv": 0.3, "time_range_s": [10, 20, 30])"),
      "/line/stages/0/time_range_s: found a time range beside cv, expected one of the two: each says how the "
      "time varies");
  EXPECT_EQ(
      stage(R"("time_range_s": [20, 10, 30])"),
      "/line/stages/0/time_range_s: found times that don't rise, expected the least, the usual and the most "
      "time, in this order");
}

TEST(LineRelations, RefuseAStageInTheListsOfTwoGroups) {
  const std::string stages =
      R"({"stages": [{"id": "a", "time": 10, "servers": 1}, {"id": "b", "time": 10, "servers": 1}], )";
  EXPECT_EQ(refusal_of(stages + R"("operators": [{"id": "x", "count": 1, "stages": ["a", "b"]}]})"),
            "accepted");
  EXPECT_EQ(refusal_of(stages +
                       R"("operators": [{"id": "x", "stages": ["a"]}, {"id": "y", "stages": ["b", "a"]}]})"),
            "/line/operators/1/stages/1: found the stage a, which is in the list of x already, expected a "
            "stage in the "
            "list of one group, once");
}

}  // namespace
}  // namespace seamtakt::test
