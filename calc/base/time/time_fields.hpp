#pragma once

#include <string_view>

#include "base/time/log_time.hpp"

namespace seamtakt {

/// The parts of a time stamp.
struct TimeFields {
  int year = 1970, month = 1, day = 1, hour = 0, minute = 0, second = 0;
  std::int64_t fraction_ns = 0;
  int utc_offset_min = 0;
  bool has_offset = false;
};

/// False where the fields are no time of the calendar, or before 1970 or after 2114. A leap second (second
/// 60) is taken as the second that follows.
bool compose_time(const TimeFields& fields, LogTime& time);

/// Reads 1 to `most` digits; false where there is none. Advances `text`.
bool take_digits(std::string_view& text, int most, int& value);

/// Reads decimals after a decimal sign already taken, to nanoseconds; further digits are cut. False without
/// one.
bool take_fraction_ns(std::string_view& text, std::int64_t& ns);

/// Reads "Z", "+hh", "+hhmm" or "+hh:mm".
bool take_utc_offset(std::string_view& text, TimeFields& fields);

}  // namespace seamtakt
