#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "plan/plan.hpp"

namespace seamtakt {

/// Times of a clock on the wall: no time zone, and each day has 24 hours (summer time doesn't come or go).
/// Readings are seconds since 1970-01-01T00:00 on the same clock.

/// "2026-11-25T06:00", with or without seconds; empty where the text is no such time.
std::optional<double> parse_clock_s(std::string_view text);

/// "2026-11-25T06:00:30", rounded to the second.
std::string clock_text(double clock_s);

/// Minutes since midnight of "hh:mm", 0 to 1439; empty where the text is no such time.
std::optional<int> minute_of_day(std::string_view text);

/// 0 for mon to 6 for sun; empty for other texts.
std::optional<int> weekday_of(std::string_view text);

/// The day of the week of a reading, 0 for Monday to 6 for Sunday.
int weekday_of_clock(double clock_s);

/// A shift or a break of it, in minutes since the midnight before the shift.
struct ShiftMinutes {
  int from = 0, to = 0;  ///< to > from; above 1440: on the next day
};

/// From and to of a shift. Its texts must be times of day.
ShiftMinutes shift_minutes(const Shift& shift);

/// A break, counted as the shift is: one that begins before the shift's from is on the next day. Its texts
/// must be times of day.
ShiftMinutes break_minutes(const Shift& shift, const TextPair& one);

}  // namespace seamtakt
