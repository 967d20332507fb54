#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// An instant: nanoseconds since 1970-01-01T00:00Z, or since the log's own zero where it counts seconds.
/// Whole nanoseconds, so that the differences of time stamps are exact.
struct LogTime {
  std::int64_t ns = 0;
  std::int16_t utc_offset_min = 0;
  bool has_offset = false;
};

/// Instants that are read, as text for messages.
inline constexpr const char* log_time_span = "a time between 1970 and 2114";

/// Days from 1970-01-01 to a date of the Gregorian calendar; month 1..12, day 1..31.
std::int64_t days_from_civil(int year, int month, int day);

/// "2026-11-25": the calendar date at the clock that wrote the time.
std::string date_text(const LogTime& time);
/// "2026-11-25T10:57:03.250Z": in UTC, with as many decimals as needed.
std::string utc_text_of_ns(std::int64_t ns);

/// Seconds since the log's zero: a decimal number, `decimal_comma` as in parse_number. Exact to the
/// nanosecond up to nine decimals. False where it isn't a finite number within +-4.6e9 s.
bool parse_seconds(std::string_view text, bool decimal_comma, std::int64_t& ns);

/// ISO 8601: "2026-11-25T10:57:03.25+01:00"; a blank instead of T, a comma before the decimals, no offset
/// (taken as UTC, has_offset stays false) and the basic form "20261125T105703Z" are read too. Years 1970 to
/// 2114.
bool parse_iso8601(std::string_view text, LogTime& time);

/// A pattern as strptime takes it: %Y %y %m %d %H %I %M %S %p %b %B %z %Z %j %f %s %T %D %F %R %e %n %t %%.
/// Numbers may lack zero padding; %S includes decimals; a blank matches any number of blanks.
/// English month names and am/pm, whatever the locale.
class TimeFormat {
 public:
  /// InputError{where, ...} for a pattern with an unknown conversion or without a date or a time of day.
  TimeFormat(std::string pattern, const std::string& where);

  bool parse(std::string_view text, LogTime& time) const;
  const std::string& pattern() const { return pattern_; }

 private:
  std::string pattern_;  ///< with %T, %D, %F, %R written out
};

}  // namespace seamtakt
