// The calendar compiled: against minutes counted one by one, and readings of the clock.
#include <gtest/gtest.h>

#include <random>

#include "line/work_hours.hpp"
#include "line_plan.hpp"
#include "plan/clock_time.hpp"

namespace seamtakt::test {
namespace {

TEST(ClockTime, ReadsAndWritesTheClock) {
  // date -u -d 2026-11-30T06:00 +%s
  EXPECT_EQ(parse_clock_s("2026-11-30T06:00"), 1796018400);
  EXPECT_EQ(parse_clock_s("1970-01-01T00:00:07"), 7);
  EXPECT_EQ(clock_text(1796018400.4), "2026-11-30T06:00:00");
  EXPECT_EQ(clock_text(1796018399.6), "2026-11-30T06:00:00");
  EXPECT_EQ(clock_text(-1), "1969-12-31T23:59:59");
  EXPECT_EQ(clock_text(951782400), "2000-02-29T00:00:00");
  EXPECT_EQ(weekday_of_clock(1796018400), 0);  // a Monday
  EXPECT_EQ(weekday_of_clock(1796018400 - 7 * 3600), 6);
  for (const char* text :
       {"2026-11-31T06:00", "2026-11-30", "2026-11-30 06:00", "2026-11-30T24:00", "2026-11-30T06:60",
        "2026-11-30T6:00", "2026-02-29T06:00", "", "2026-11-30T06:00:60"})
    EXPECT_FALSE(parse_clock_s(text)) << text;
  EXPECT_EQ(minute_of_day("23:59"), 1439);
  for (const char* text : {"24:00", "7:00", "07:60", "07-00", "+7:00", ""})
    EXPECT_FALSE(minute_of_day(text)) << text;
}

TEST(WorkHours, LeaveOutNightsAndBreaks) {
  Calendar calendar;
  calendar.start = "2026-11-30T07:00";  // a Monday
  calendar.shifts = {shift_of({"mon", "tue"}, "08:00", "12:00", {{"10:00", "10:30"}})};
  const WorkHours hours(calendar);
  EXPECT_EQ(hours.begin_s(0), 3600);
  EXPECT_EQ(hours.end_s(3600), 2 * 3600);
  EXPECT_EQ(hours.end_s(7200), 3 * 3600);           // 10:00
  EXPECT_EQ(hours.begin_s(7200), 3.5 * 3600);       // 10:30
  EXPECT_EQ(hours.end_s(3.5 * 3600), 5 * 3600);     // Monday 12:00
  EXPECT_EQ(hours.begin_s(3.5 * 3600), 25 * 3600);  // Tuesday 08:00
  EXPECT_EQ(hours.end_s(7 * 3600), 29 * 3600);
  EXPECT_EQ(hours.begin_s(7 * 3600), (7 * 24 + 1) * 3600);
  EXPECT_EQ(hours.work_s(3 * 3600 + 900), 7200);
  EXPECT_EQ(hours.work_s(0), 0);
  EXPECT_EQ(hours.work_s(6 * 86400), 7 * 3600);
  EXPECT_EQ(hours.clock(3600), "2026-11-30T08:00:00");
  EXPECT_EQ(hours.day(), "2026-11-30");
  EXPECT_EQ(hours.day_end_s(), 5 * 3600);
  // So near to the end of a shift that only the rounding of a sum keeps it from it.
  EXPECT_EQ(hours.end_s(3.5 * 3600 + 1e-9), 5 * 3600);
  EXPECT_EQ(hours.begin_s(3.5 * 3600 - 1e-9), 25 * 3600);
}

TEST(WorkHours, OfANightUnderWayEndWithIt) {
  Calendar calendar;
  calendar.start = "2026-12-05T02:00";  // a Saturday, in Friday's night
  calendar.shifts = {shift_of({"fri"}, "22:00", "06:00")};
  const WorkHours hours(calendar);
  EXPECT_EQ(hours.day(), "2026-12-05");
  EXPECT_EQ(hours.day_end_s(), 4 * 3600);
  EXPECT_EQ(hours.begin_s(4 * 3600), (6 * 24 + 20) * 3600.0);
}

TEST(WorkHours, OverTheEndOfTheWeekGoOn) {
  Calendar calendar;
  calendar.start = "2026-12-06T23:00";  // a Sunday
  calendar.shifts = {shift_of({"sun"}, "22:00", "06:00"), shift_of({"mon"}, "06:00", "08:00")};
  const WorkHours hours(calendar);
  EXPECT_EQ(hours.end_s(3600), 3600);
  EXPECT_EQ(hours.begin_s(3600), 3600);
  EXPECT_EQ(hours.begin_s(7 * 3600), 7 * 3600);  // one shift follows the other at 06:00
  EXPECT_EQ(hours.end_s(9 * 3600), 9 * 3600);
  EXPECT_EQ(hours.begin_s(9 * 3600), (7 * 24 - 1) * 3600);
}

TEST(WorkHours, AgreeWithMinutesCountedOneByOne) {
  const std::vector<std::string> names = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    std::mt19937_64 random(seed);
    const auto up_to = [&](int most) {
      return static_cast<int>(random() % static_cast<std::uint64_t>(most + 1));
    };
    Calendar calendar;
    calendar.start = "2026-12-0" + std::to_string(1 + up_to(6)) + "T" + (up_to(1) ? "05:00" : "15:30");
    std::vector<char> works(10080, 0);  // of the week from Monday 00:00
    for (const int from : {6, 14, 22}) {
      const auto text = [](int hour) { return (hour < 10 ? "0" : "") + std::to_string(hour) + ":00"; };
      Shift shift = shift_of({}, text(from), text((from + 8) % 24));
      const int pause = (from + 1 + up_to(5)) % 24;
      if (up_to(1)) shift.breaks = {{text(pause), text(pause).replace(3, 2, "25")}};
      for (int day = 0; day < 7; ++day) {
        if (up_to(2) == 0) continue;
        shift.days.push_back(names[static_cast<std::size_t>(day)]);
        for (int minute = 0; minute < 480; ++minute)
          works[static_cast<std::size_t>((day * 1440 + from * 60 + minute) % 10080)] = 1;
        const int rest = (pause - from + 24) % 24 * 60;
        for (int minute = 0; minute < 25 && !shift.breaks.empty(); ++minute)
          works[static_cast<std::size_t>((day * 1440 + from * 60 + rest + minute) % 10080)] = 0;
      }
      if (!shift.days.empty()) calendar.shifts.push_back(shift);
    }
    if (calendar.shifts.empty()) continue;
    const WorkHours hours(calendar);
    const double start_s = parse_clock_s(calendar.start).value();
    const int start_min = weekday_of_clock(start_s) * 1440 + (calendar.start.ends_with("05:00") ? 300 : 930);
    double worked_min = 0;
    for (int minute = 0; minute < 3 * 10080; ++minute) {
      const bool on = works[static_cast<std::size_t>((start_min + minute) % 10080)];
      ASSERT_NEAR(hours.work_s(minute * 60.0), worked_min * 60, 1e-6)
          << "calendar " << seed << ", " << minute;
      if (on) {
        const double middle_s = minute * 60.0 + 30;
        ASSERT_NEAR(hours.work_s(middle_s), worked_min * 60 + 30, 1e-6) << "calendar " << seed;
        ASSERT_NEAR(hours.end_s(worked_min * 60 + 30), middle_s, 1e-6)
            << "calendar " << seed << ", " << minute;
        ASSERT_NEAR(hours.begin_s(worked_min * 60 + 30), middle_s, 1e-6) << "calendar " << seed;
        // What begins with this minute begins now, however long nothing was done before it.
        ASSERT_NEAR(hours.begin_s(worked_min * 60), minute * 60.0, 1e-6)
            << "calendar " << seed << ", " << minute;
        worked_min += 1;
        ASSERT_NEAR(hours.end_s(worked_min * 60), minute * 60.0 + 60, 1e-6) << "calendar " << seed;
      }
    }
  }
}

}  // namespace
}  // namespace seamtakt::test
