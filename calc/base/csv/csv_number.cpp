#include <charconv>
#include <cmath>

#include "base/csv/csv.hpp"

namespace seamtakt {

namespace {

bool parse_whole(std::string_view text, double& value) {
  // from_chars takes no plus sign, which loggers do write.
  if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
  double parsed = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), parsed);
  if (end.ec != std::errc() || end.ptr != text.data() + text.size() || !std::isfinite(parsed)) return false;
  value = parsed;
  return true;
}

}  // namespace

bool parse_number(std::string_view text, double& value, bool decimal_comma) {
  const std::size_t comma = decimal_comma ? text.find(',') : std::string_view::npos;
  if (comma == std::string_view::npos) return parse_whole(text, value);
  // "1.250,5" has a sign for thousands: refused rather than guessed at.
  if (text.find('.') != std::string_view::npos || text.size() > 400) return false;
  std::string with_point(text);
  with_point[comma] = '.';
  return parse_whole(with_point, value);
}

std::string csv_field(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  const std::string_view start = first == std::string_view::npos ? std::string_view() : text.substr(first);
  const bool begins_with_control =
      !text.empty() && (text[0] == '\t' || text[0] == '\r' || text[0] == '\n' || text[0] == '\0');
  const bool looks_like_formula =
      !start.empty() && std::string_view("=+-@").find(start[0]) != std::string_view::npos;
  double number = 0;
  const bool guard = begins_with_control || (looks_like_formula && !parse_number(text, number));
  std::string field = guard ? "'" : "";
  field += text;
  const bool outer_blank = !text.empty() && (text.front() == ' ' || text.back() == ' ');
  if (!outer_blank && field.find_first_of("\",;\t\r\n") == std::string::npos) return field;
  std::string quoted = "\"";
  for (char c : field) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

}  // namespace seamtakt
