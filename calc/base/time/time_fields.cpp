#include "base/time/time_fields.hpp"

#include "base/text/ascii.hpp"

namespace seamtakt {

namespace {

int days_in_month(int year, int month) {
  constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return days[month - 1] + (month == 2 && leap ? 1 : 0);
}

}  // namespace

bool compose_time(const TimeFields& f, LogTime& time) {
  if (f.year < 1970 || f.year > 2114 || f.month < 1 || f.month > 12) return false;
  if (f.day < 1 || f.day > days_in_month(f.year, f.month)) return false;
  if (f.hour < 0 || f.hour > 23 || f.minute < 0 || f.minute > 59 || f.second < 0 || f.second > 60)
    return false;
  const std::int64_t days = days_from_civil(f.year, f.month, f.day);
  const std::int64_t seconds = days * 86400 + f.hour * 3600 + (f.minute - f.utc_offset_min) * 60 + f.second;
  time.ns = seconds * 1'000'000'000 + f.fraction_ns;
  time.utc_offset_min = static_cast<std::int16_t>(f.utc_offset_min);
  time.has_offset = f.has_offset;
  return true;
}

bool take_digits(std::string_view& text, int most, int& value) {
  int parsed = 0;
  std::size_t count = 0;
  while (count < static_cast<std::size_t>(most) && count < text.size() && is_digit(text[count]))
    parsed = parsed * 10 + (text[count++] - '0');
  if (count == 0) return false;
  value = parsed;
  text.remove_prefix(count);
  return true;
}

bool take_fraction_ns(std::string_view& text, std::int64_t& ns) {
  std::int64_t scale = 100'000'000, parsed = 0;
  std::size_t count = 0;
  for (; count < text.size() && is_digit(text[count]); ++count, scale /= 10)
    parsed += (text[count] - '0') * scale;
  if (count == 0) return false;
  ns = parsed;
  text.remove_prefix(count);
  return true;
}

bool take_utc_offset(std::string_view& text, TimeFields& fields) {
  if (text.empty()) return false;
  const char sign = text[0];
  text.remove_prefix(1);
  fields.has_offset = true;
  fields.utc_offset_min = 0;
  if (sign == 'Z' || sign == 'z') return true;
  if (sign != '+' && sign != '-') return false;
  if (text.size() < 2 || !is_digit(text[1])) return false;
  int hours = 0, minutes = 0;
  if (!take_digits(text, 2, hours)) return false;
  if (!text.empty() && text[0] == ':') text.remove_prefix(1);
  if (!text.empty() && is_digit(text[0])) {
    if (text.size() < 2 || !is_digit(text[1]) || !take_digits(text, 2, minutes)) return false;
  }
  if (hours > 14 || minutes > 59) return false;
  fields.utc_offset_min = (hours * 60 + minutes) * (sign == '-' ? -1 : 1);
  return true;
}

}  // namespace seamtakt
