#include <array>

#include "base/error.hpp"
#include "base/time/time_fields.hpp"

namespace seamtakt {

namespace {

constexpr std::array<std::string_view, 12> month_names = {"january",   "february", "march",    "april",
                                                          "may",       "june",     "july",     "august",
                                                          "september", "october",  "november", "december"};

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool begins_with(std::string_view text, std::string_view word) {
  if (text.size() < word.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i)
    if (lower(text[i]) != word[i]) return false;
  return true;
}

void skip_blanks(std::string_view& text) {
  while (!text.empty() && (text[0] == ' ' || text[0] == '\t')) text.remove_prefix(1);
}

/// Conversions that abbreviate several others.
std::string written_out(std::string_view pattern) {
  std::string result;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (pattern[i] != '%' || i + 1 == pattern.size()) {
      result += pattern[i];
      continue;
    }
    switch (pattern[++i]) {
      case 'T':
        result += "%H:%M:%S";
        break;
      case 'R':
        result += "%H:%M";
        break;
      case 'D':
        result += "%m/%d/%y";
        break;
      case 'F':
        result += "%Y-%m-%d";
        break;
      case 'n':
      case 't':
        result += ' ';
        break;
      default:
        (result += '%') += pattern[i];
    }
  }
  return result;
}

/// What a pattern has gathered from a text.
struct Gathered {
  TimeFields fields;
  int day_of_year = 0;
  bool afternoon = false, twelve_hours = false, absolute = false;
  std::int64_t absolute_ns = 0;
};

bool take_month_name(std::string_view& text, int& month) {
  for (std::size_t i = 0; i < month_names.size(); ++i) {
    for (const std::size_t length : {month_names[i].size(), std::size_t{3}}) {
      if (!begins_with(text, month_names[i].substr(0, length))) continue;
      text.remove_prefix(length);
      month = static_cast<int>(i) + 1;
      return true;
    }
  }
  return false;
}

bool take_half_of_day(std::string_view& text, Gathered& gathered) {
  const bool morning = begins_with(text, "am");
  if (!morning && !begins_with(text, "pm")) return false;
  gathered.afternoon = !morning;
  text.remove_prefix(2);
  return true;
}

bool take_short_year(std::string_view& text, int& year) {
  if (!take_digits(text, 2, year)) return false;
  year += year < 69 ? 2000 : 1900;  // as POSIX strptime
  return true;
}

bool take_seconds(std::string_view& text, TimeFields& fields) {
  if (!take_digits(text, 2, fields.second)) return false;
  if (text.size() < 2 || (text[0] != '.' && text[0] != ',') || text[1] < '0' || text[1] > '9') return true;
  const std::string_view before = text;
  text.remove_prefix(1);
  if (take_fraction_ns(text, fields.fraction_ns)) return true;
  text = before;
  return true;
}

bool take_epoch_seconds(std::string_view& text, Gathered& gathered) {
  std::size_t length = 0;
  while (length < text.size() && ((text[length] >= '0' && text[length] <= '9') || text[length] == '.'))
    ++length;
  if (!parse_seconds(text.substr(0, length), false, gathered.absolute_ns)) return false;
  gathered.absolute = true;
  text.remove_prefix(length);
  return true;
}

bool take_zone_name(std::string_view& text, TimeFields& fields) {
  const bool utc = begins_with(text, "utc") || begins_with(text, "gmt");
  if (!utc && !begins_with(text, "z")) return false;
  text.remove_prefix(utc ? 3 : 1);
  fields.has_offset = true;
  return true;
}

/// whole_seconds: the pattern reads the decimals of the second elsewhere (%f).
bool take(char conversion, bool whole_seconds, std::string_view& text, Gathered& gathered) {
  TimeFields& fields = gathered.fields;
  if (conversion != '%') skip_blanks(text);
  switch (conversion) {
    case 'Y':
      return take_digits(text, 4, fields.year);
    case 'y':
      return take_short_year(text, fields.year);
    case 'm':
      return take_digits(text, 2, fields.month);
    case 'b':
    case 'B':
    case 'h':
      return take_month_name(text, fields.month);
    case 'd':
    case 'e':
      return take_digits(text, 2, fields.day);
    case 'j':
      return take_digits(text, 3, gathered.day_of_year) && gathered.day_of_year >= 1;
    case 'H':
      return take_digits(text, 2, fields.hour);
    case 'I':
      gathered.twelve_hours = true;
      return take_digits(text, 2, fields.hour);
    case 'M':
      return take_digits(text, 2, fields.minute);
    case 'S':
      return whole_seconds ? take_digits(text, 2, fields.second) : take_seconds(text, fields);
    case 'f':
      return take_fraction_ns(text, fields.fraction_ns);
    case 'p':
      return take_half_of_day(text, gathered);
    case 'z':
      return take_utc_offset(text, fields);
    case 'Z':
      return take_zone_name(text, fields);
    case 's':
      return take_epoch_seconds(text, gathered);
    default:
      break;
  }
  if (text.empty() || text[0] != '%') return false;
  text.remove_prefix(1);
  return true;
}

bool finish(Gathered& gathered, LogTime& time) {
  TimeFields& fields = gathered.fields;
  if (gathered.absolute) {
    time = {gathered.absolute_ns, 0, true};
    return time.ns >= 0;
  }
  if (gathered.twelve_hours) {
    if (fields.hour < 1 || fields.hour > 12) return false;
    fields.hour = fields.hour % 12 + (gathered.afternoon ? 12 : 0);
  }
  if (!compose_time(fields, time)) return false;
  if (gathered.day_of_year == 0) return true;
  const bool leap = days_from_civil(fields.year + 1, 1, 1) - days_from_civil(fields.year, 1, 1) == 366;
  if (gathered.day_of_year > (leap ? 366 : 365)) return false;
  time.ns += std::int64_t{gathered.day_of_year - 1} * 86400 * 1'000'000'000;
  return true;
}

bool has_any(const std::string& pattern, std::string_view conversions) {
  for (std::size_t i = 0; i + 1 < pattern.size(); ++i)
    if (pattern[i] == '%' && conversions.find(pattern[++i]) != std::string_view::npos) return true;
  return false;
}

void check_conversions(const std::string& pattern, const std::string& where) {
  constexpr std::string_view known = "YymbBhdejHIMSfpzZs%";
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    if (pattern[i] != '%') continue;
    const std::string conversion = pattern.substr(i, 2);
    if (conversion.size() < 2 || known.find(conversion[1]) == std::string_view::npos)
      throw InputError(where, '"' + printable(conversion) + '"',
                       "a conversion such as %Y, %m, %d, %H, %M or %S"_word);
    ++i;
  }
  const bool date = has_any(pattern, "Yy") &&
                    (has_any(pattern, "j") || (has_any(pattern, "mbBh") && has_any(pattern, "de")));
  const bool time = has_any(pattern, "HI");
  if (!has_any(pattern, "s") && !(date && time))
    throw InputError(where, '"' + printable(pattern) + '"',
                     "a pattern with year, month, day and hour, or %s"_word);
  if (has_any(pattern, "I") && !has_any(pattern, "p"))
    throw InputError(where, "%I without %p"_word, "%H, or %I with %p"_word);
}

}  // namespace

TimeFormat::TimeFormat(std::string pattern, const std::string& where) : pattern_(written_out(pattern)) {
  check_conversions(pattern_, where);
}

bool TimeFormat::parse(std::string_view text, LogTime& time) const {
  Gathered gathered;
  const bool whole_seconds = has_any(pattern_, "f");
  for (std::size_t i = 0; i < pattern_.size(); ++i) {
    const char c = pattern_[i];
    if (c == '%') {
      if (!take(pattern_[++i], whole_seconds, text, gathered)) return false;
    } else if (c == ' ') {
      skip_blanks(text);
    } else {
      if (text.empty() || text[0] != c) return false;
      text.remove_prefix(1);
    }
  }
  skip_blanks(text);
  return text.empty() && finish(gathered, time);
}

}  // namespace seamtakt
