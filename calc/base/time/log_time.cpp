#include "base/time/log_time.hpp"

#include <charconv>
#include <cmath>
#include <cstdio>
#include <limits>

#include "base/csv/csv.hpp"

namespace seamtakt {

namespace {

constexpr std::int64_t second_ns = 1'000'000'000;
constexpr std::int64_t day_s = 86400;
/// Below the end of 64-bit nanoseconds, so that differences of two times can't overflow either.
constexpr double seconds_limit = 4.6e9;

constexpr std::int64_t powers_of_ten[] = {1,      10,      100,      1000,      10000,
                                          100000, 1000000, 10000000, 100000000, 1000000000};

/// The calendar date of a day number: inverse of days_from_civil.
struct CivilDate {
  int year, month, day;
};

std::int64_t floor_div(std::int64_t a, std::int64_t b) {
  return a / b - (a % b < 0 ? 1 : 0);
}

CivilDate civil_from_days(std::int64_t days) {
  // Counted in 400-year eras from 0000-03-01, so that the leap day is the last of its year.
  days += 719468;
  const std::int64_t era = floor_div(days, 146097);
  const std::int64_t day_of_era = days - era * 146097;
  const std::int64_t year_of_era =
      (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
  const std::int64_t day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const std::int64_t month_from_march = (5 * day_of_year + 2) / 153;
  const auto day = static_cast<int>(day_of_year - (153 * month_from_march + 2) / 5 + 1);
  const auto month = static_cast<int>(month_from_march < 10 ? month_from_march + 3 : month_from_march - 9);
  const auto year = static_cast<int>(year_of_era + era * 400 + (month <= 2 ? 1 : 0));
  return {year, month, day};
}

std::string date_of_seconds(std::int64_t seconds) {
  const CivilDate date = civil_from_days(floor_div(seconds, day_s));
  char text[40];
  std::snprintf(text, sizeof text, "%04d-%02d-%02d", date.year, date.month, date.day);
  return text;
}

/// Digits with at most one decimal sign and an optional sign: true where the fast, exact way can take it.
bool parse_plain_seconds(std::string_view text, bool decimal_comma, std::int64_t& ns) {
  std::size_t at = 0;
  const bool negative = !text.empty() && text[0] == '-';
  if (negative) ++at;
  std::int64_t whole = 0;
  const std::size_t first_digit = at;
  for (; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
    if (at - first_digit >= 10) return false;
    whole = whole * 10 + (text[at] - '0');
  }
  std::size_t digits = at - first_digit;
  std::int64_t fraction = 0;
  if (at < text.size() && (text[at] == '.' || (decimal_comma && text[at] == ','))) {
    const std::size_t first_decimal = ++at;
    for (; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
      if (at - first_decimal >= 9) return false;
      fraction = fraction * 10 + (text[at] - '0');
    }
    digits += at - first_decimal;
    fraction *= powers_of_ten[9 - (at - first_decimal)];
  }
  if (at != text.size() || digits == 0 || static_cast<double>(whole) > seconds_limit) return false;
  ns = whole * second_ns + fraction;
  if (negative) ns = -ns;
  return true;
}

}  // namespace

std::int64_t days_from_civil(int year, int month, int day) {
  const std::int64_t y = year - (month <= 2 ? 1 : 0);
  const std::int64_t era = floor_div(y, 400);
  const std::int64_t year_of_era = y - era * 400;
  const std::int64_t month_from_march = month > 2 ? month - 3 : month + 9;
  const std::int64_t day_of_year = (153 * month_from_march + 2) / 5 + day - 1;
  return era * 146097 + year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year - 719468;
}

std::string date_text(const LogTime& time) {
  return date_of_seconds(floor_div(time.ns, second_ns) + std::int64_t{time.utc_offset_min} * 60);
}

std::string utc_text_of_ns(std::int64_t ns) {
  const std::int64_t seconds = floor_div(ns, second_ns);
  const auto of_day = static_cast<int>(seconds - floor_div(seconds, day_s) * day_s);
  const auto fraction = static_cast<int>(ns - seconds * second_ns);
  char text[48];
  std::snprintf(text, sizeof text, "T%02d:%02d:%02d", of_day / 3600, of_day / 60 % 60, of_day % 60);
  std::string result = date_of_seconds(seconds) + text;
  if (fraction != 0) {
    std::snprintf(text, sizeof text, ".%09d", fraction);
    result += text;
    result.erase(result.find_last_not_of('0') + 1);
  }
  return result + "Z";
}

bool parse_seconds(std::string_view text, bool decimal_comma, std::int64_t& ns) {
  if (parse_plain_seconds(text, decimal_comma, ns)) return true;
  double seconds = 0;
  if (!parse_number(text, seconds, decimal_comma) || std::fabs(seconds) > seconds_limit) return false;
  ns = std::llround(seconds * 1e9);
  return true;
}

}  // namespace seamtakt
