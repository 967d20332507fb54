#include "plan/clock_time.hpp"

#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>

namespace seamtakt {

namespace {

constexpr int day_min = 24 * 60;
constexpr double day_s = 86400;
constexpr std::array<std::string_view, 7> weekdays{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};

/// The digits at a place as a number; empty where one of them is no digit.
std::optional<int> digits_at(std::string_view text, std::size_t at, std::size_t count) {
  if (at + count > text.size()) return std::nullopt;
  int value = 0;
  for (const char c : text.substr(at, count)) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

std::optional<double> parse_day_s(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits_at(text, 0, 4), month = digits_at(text, 5, 2), day = digits_at(text, 8, 2);
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(*year),
                                         std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  if (!date.ok()) return std::nullopt;
  return static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count()) * day_s;
}

}  // namespace

std::optional<int> minute_of_day(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  const auto hour = digits_at(text, 0, 2), minute = digits_at(text, 3, 2);
  if (!hour || !minute || *hour > 23 || *minute > 59) return std::nullopt;
  return *hour * 60 + *minute;
}

std::optional<double> parse_clock_s(std::string_view text) {
  if ((text.size() != 16 && text.size() != 19) || text[10] != 'T') return std::nullopt;
  const auto day = parse_day_s(text.substr(0, 10));
  const auto minute = minute_of_day(text.substr(11, 5));
  if (!day || !minute) return std::nullopt;
  int second = 0;
  if (text.size() == 19) {
    const auto given = digits_at(text, 17, 2);
    if (text[16] != ':' || !given || *given > 59) return std::nullopt;
    second = *given;
  }
  return *day + *minute * 60.0 + second;
}

std::string clock_text(double clock_s) {
  const auto seconds = static_cast<long long>(std::llround(clock_s));
  const auto whole = static_cast<long long>(day_s);
  const long long days = seconds >= 0 ? seconds / whole : -((whole - 1 - seconds) / whole);
  const int of_day = static_cast<int>(seconds - days * whole);
  const std::chrono::year_month_day date{
      std::chrono::sys_days(std::chrono::days(static_cast<std::chrono::days::rep>(days)))};
  char text[48];
  std::snprintf(text, sizeof text, "%04d-%02u-%02uT%02d:%02d:%02d", static_cast<int>(date.year()),
                static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), of_day / 3600,
                of_day / 60 % 60, of_day % 60);
  return text;
}

std::optional<int> weekday_of(std::string_view text) {
  for (std::size_t i = 0; i < weekdays.size(); ++i)
    if (weekdays[i] == text) return static_cast<int>(i);
  return std::nullopt;
}

int weekday_of_clock(double clock_s) {
  const double days = std::floor(clock_s / day_s);
  // 1970-01-01 was a Thursday.
  const double weekday = std::fmod(days + 3, 7);
  return static_cast<int>(weekday < 0 ? weekday + 7 : weekday);
}

ShiftMinutes shift_minutes(const Shift& shift) {
  const int from = minute_of_day(shift.from).value(), to = minute_of_day(shift.to).value();
  return {from, to > from ? to : to + day_min};
}

ShiftMinutes break_minutes(const Shift& shift, const TextPair& one) {
  const int shift_from = minute_of_day(shift.from).value();
  int from = minute_of_day(one[0]).value(), to = minute_of_day(one[1]).value();
  if (from < shift_from) from += day_min;
  while (to <= from) to += day_min;
  return {from, to};
}

}  // namespace seamtakt
