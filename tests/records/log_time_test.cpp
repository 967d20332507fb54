#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "base/error.hpp"
#include "base/time/log_time.hpp"

namespace seamtakt::test {
namespace {

std::string iso(const std::string& text) {
  LogTime time;
  return parse_iso8601(text, time) ? utc_text_of_ns(time.ns) : "refused";
}

std::string by(const std::string& pattern, const std::string& text) {
  LogTime time;
  return TimeFormat(pattern, "test").parse(text, time) ? utc_text_of_ns(time.ns) : "refused";
}

TEST(Iso8601, ReadsTheFormsOfTheStandard) {
  EXPECT_EQ(iso("2026-11-25T10:57:03Z"), "2026-11-25T10:57:03Z");
  EXPECT_EQ(iso("2026-11-25T10:57:03.25+01:00"), "2026-11-25T09:57:03.25Z");
  EXPECT_EQ(iso("2026-11-25 10:57:03,125"), "2026-11-25T10:57:03.125Z");
  EXPECT_EQ(iso("20261125T105703Z"), "2026-11-25T10:57:03Z");
  EXPECT_EQ(iso("2026-11-25T10:57-0330"), "2026-11-25T14:27:00Z");
  EXPECT_EQ(iso("2026-11-25T10:57:03.123456789123Z"), "2026-11-25T10:57:03.123456789Z");
  EXPECT_EQ(iso("2024-02-29T23:59:60Z"), "2024-03-01T00:00:00Z") << "a leap second is the next second";
  EXPECT_EQ(iso("1970-01-01T00:00:00Z"), "1970-01-01T00:00:00Z");
}

TEST(Iso8601, RefusesWhatIsNoTime) {
  for (const char* text :
       {"", "2026", "2026-11-25", "2026-11-25T", "2026-13-01T00:00:00Z", "2026-02-29T00:00:00Z",
        "2026-11-25T24:00:00Z", "2026-11-25T10:60:00Z", "2026-11-25T10:57:03X", "2026-11-25T10:57:03+1",
        "2026-11-25T10:57:03+15:00", "9999-01-01T00:00:00Z", "1969-12-31T23:59:59Z", "2026-1-25T10:57:03Z",
        " 2026-11-25T10:57:03Z", "2026-11-25T10:57:03.Z", "2026-11-25T10:57:03Z ", "2026-11-2510:57:03Z"})
    EXPECT_EQ(iso(text), "refused") << '"' << text << '"';
}

TEST(Iso8601, TellsWhetherAnOffsetWasGiven) {
  LogTime time;
  ASSERT_TRUE(parse_iso8601("2026-11-25T10:57:03", time));
  EXPECT_FALSE(time.has_offset);
  ASSERT_TRUE(parse_iso8601("2026-11-25T00:30:00+02:00", time));
  EXPECT_TRUE(time.has_offset);
  EXPECT_EQ(date_text(time), "2026-11-25") << "the date at the clock that wrote it, which is the 24th in UTC";
}

TEST(TimeFormat, ReadsWithoutZeroPadding) {
  EXPECT_EQ(by("%m/%d/%Y %H:%M:%S", "9/9/2022 04:41:14.028"), "2022-09-09T04:41:14.028Z");
  EXPECT_EQ(by("%m/%d/%Y %H:%M:%S", "10/21/2022 10:08:57.489"), "2022-10-21T10:08:57.489Z");
  EXPECT_EQ(by("%d.%m.%Y %H:%M", "7.3.2026 6:05"), "2026-03-07T06:05:00Z");
}

TEST(TimeFormat, ReadsTheOtherConversions) {
  EXPECT_EQ(by("%m/%d/%y %I:%M:%S %p", "3/7/26 12:05:09 AM"), "2026-03-07T00:05:09Z");
  EXPECT_EQ(by("%m/%d/%y %I:%M:%S %p", "3/7/26 12:05:09 pm"), "2026-03-07T12:05:09Z");
  EXPECT_EQ(by("%d %b %Y %T", "07 Mar 2026 06:05:09"), "2026-03-07T06:05:09Z");
  EXPECT_EQ(by("%B %e, %Y %R", "March 7, 2026 06:05"), "2026-03-07T06:05:00Z");
  EXPECT_EQ(by("%F %H:%M:%S.%f %z", "2026-03-07 06:05:09.5 +0200"), "2026-03-07T04:05:09.5Z");
  EXPECT_EQ(by("%Y-%j %T", "2024-366 00:00:01"), "2024-12-31T00:00:01Z");
  EXPECT_EQ(by("%s", "1772863509.25"), "2026-03-07T06:05:09.25Z");
  EXPECT_EQ(by("%Y%m%d%H%M%S", "20260307060509"), "2026-03-07T06:05:09Z");
  EXPECT_EQ(by("%F %T %Z", "2026-03-07 06:05:09 UTC"), "2026-03-07T06:05:09Z");
}

TEST(TimeFormat, RefusesWhatDoesNotFit) {
  EXPECT_EQ(by("%m/%d/%Y %H:%M:%S", "21/10/2022 10:08:57"), "refused");
  EXPECT_EQ(by("%m/%d/%Y %H:%M:%S", "10/21/22 10:08:57"), "refused")
      << "a year of two digits where four are meant";
  EXPECT_EQ(by("%m/%d/%Y %H:%M:%S", "10/21/2022 10:08:57 PM"), "refused");
  EXPECT_EQ(by("%Y-%j %T", "2023-366 00:00:01"), "refused");
  EXPECT_EQ(by("%d %b %Y %T", "07 Mrz 2026 06:05:09"), "refused");
  EXPECT_EQ(by("%m/%d/%y %I:%M %p", "3/7/26 13:05 PM"), "refused");
}

TEST(TimeFormat, APatternMustTellDateAndTime) {
  EXPECT_THROW(TimeFormat("%H:%M:%S", "c"), InputError);
  EXPECT_THROW(TimeFormat("%Y-%m-%d", "c"), InputError);
  EXPECT_THROW(TimeFormat("%Y-%m-%d %Q", "c"), InputError);
  EXPECT_THROW(TimeFormat("%Y-%m-%d %I:%M", "c"), InputError);
  EXPECT_THROW(TimeFormat("%Y-%m-%d %H:%M %", "c"), InputError);
  EXPECT_THROW(TimeFormat("", "c"), InputError);
}

TEST(Seconds, AreExactToTheNanosecond) {
  std::int64_t ns = 0;
  ASSERT_TRUE(parse_seconds("0.1", false, ns));
  EXPECT_EQ(ns, 100'000'000);
  ASSERT_TRUE(parse_seconds("1772863509.123456789", false, ns));
  EXPECT_EQ(ns, 1'772'863'509'123'456'789);
  ASSERT_TRUE(parse_seconds("-1.5", false, ns));
  EXPECT_EQ(ns, -1'500'000'000);
  ASSERT_TRUE(parse_seconds("12,25", true, ns));
  EXPECT_EQ(ns, 12'250'000'000);
  ASSERT_TRUE(parse_seconds("1.5e3", false, ns));
  EXPECT_EQ(ns, 1'500'000'000'000);
  ASSERT_TRUE(parse_seconds(".5", false, ns));
  EXPECT_EQ(ns, 500'000'000);
}

TEST(Seconds, RefuseWhatIsNoTime) {
  std::int64_t ns = 0;
  for (const char* text :
       {"", "-", ".", "1.2.3", "nan", "inf", "0x10", "1e30", "-1e10", " 1", "1 ", "1,5", "12:30"})
    EXPECT_FALSE(parse_seconds(text, false, ns)) << text;
}

RC_GTEST_PROP(Calendar, UtcTextReadsBackAsTheSameInstant, ()) {
  const auto ns = *rc::gen::inRange<std::int64_t>(0, 4'500'000'000LL * 1'000'000'000LL);
  LogTime time;
  RC_ASSERT(parse_iso8601(utc_text_of_ns(ns), time));
  RC_ASSERT(time.ns == ns);
}

}  // namespace
}  // namespace seamtakt::test
