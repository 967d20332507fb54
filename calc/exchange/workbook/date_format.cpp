#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>

#include "base/text/ascii.hpp"
#include "exchange/workbook/book_forms.hpp"

namespace seamtakt {

namespace {

bool is_built_in_date(std::size_t id) {
  return (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);
}

/// The first section of a code, without what it shows as it is and without colours, conditions and
/// languages; elapsed times, "[h]", stay.
std::string signs_of(std::string_view code) {
  std::string signs;
  for (std::size_t i = 0; i < code.size() && code[i] != ';'; ++i) {
    const char sign = code[i];
    if (sign == '\\' || sign == '_' || sign == '*') {
      ++i;
    } else if (sign == '"') {
      i = std::min(code.find('"', i + 1), code.size());
    } else if (sign == '[') {
      const std::size_t end = std::min(code.find(']', i), code.size());
      const std::string inside = lower_case(code.substr(i + 1, end - i - 1));
      if (!inside.empty() && inside.find_first_not_of("hms") == std::string::npos) signs += inside;
      i = end;
    } else {
      signs += sign;
    }
  }
  return lower_case(signs);
}

}  // namespace

bool is_date_format(std::size_t id, std::string_view code) {
  if (is_built_in_date(id)) return true;
  const std::string signs = signs_of(code);
  return signs != "general" && signs.find_first_of("ymdhs") != std::string::npos;
}

std::optional<std::string> date_of_serial(double days, bool begins_1904) {
  constexpr double last_day = 2958466;  // 10000-01-01
  if (!(days >= 0) || days >= last_day) return std::nullopt;
  double whole = std::floor(days);
  double seconds = std::round((days - whole) * 86400);
  if (seconds >= 86400) {
    seconds = 0;
    whole += 1;
  }
  using namespace std::chrono;
  sys_days first = begins_1904 ? sys_days{year{1904} / 1 / 1} : sys_days{year{1899} / 12 / 30};
  // Before day 60 the count lacks the day that 1900 didn't have.
  if (!begins_1904 && whole < 60) first += std::chrono::days{1};
  const year_month_day date{first + std::chrono::days{static_cast<int>(whole)}};
  if (static_cast<int>(date.year()) > 9999) return std::nullopt;
  char text[32];
  std::snprintf(text, sizeof text, "%04d-%02u-%02u", static_cast<int>(date.year()),
                static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
  std::string shown = text;
  if (seconds > 0) {
    const int left = static_cast<int>(seconds);
    std::snprintf(text, sizeof text, "T%02d:%02d:%02d", left / 3600, left / 60 % 60, left % 60);
    shown += text;
  }
  return shown;
}

}  // namespace seamtakt
