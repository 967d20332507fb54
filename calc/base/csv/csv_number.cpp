#include <algorithm>
#include <charconv>
#include <cmath>
#include <iterator>

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

/// Blanks that a spreadsheet drops before it looks: ASCII's, the one that doesn't break and the ideographic
/// one.
std::string_view without_blanks_before(std::string_view text) {
  constexpr std::string_view wide_blanks[] = {"\xC2\xA0", "\xE3\x80\x80"};
  for (;;) {
    const std::size_t blanks = text.find_first_not_of(" \t\r\n");
    text.remove_prefix(std::min(blanks, text.size()));
    const auto wide = std::find_if(std::begin(wide_blanks), std::end(wide_blanks),
                                   [text](std::string_view blank) { return text.starts_with(blank); });
    if (wide == std::end(wide_blanks)) return text;
    text.remove_prefix(wide->size());
  }
}

/// Signs by which a spreadsheet knows a formula; some take the full-width ones (U+FF1D, U+FF0B, U+FF0D,
/// U+FF20) for the same.
bool begins_a_formula(std::string_view text) {
  constexpr std::string_view signs[] = {
      "=", "+", "-", "@", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};
  return std::any_of(std::begin(signs), std::end(signs),
                     [text](std::string_view sign) { return text.starts_with(sign); });
}

/// Whether a spreadsheet would take the text for a formula, or for the end of a field.
bool needs_guard(std::string_view text) {
  const bool begins_with_control =
      !text.empty() && (text[0] == '\t' || text[0] == '\r' || text[0] == '\n' || text[0] == '\0');
  double number = 0;
  return begins_with_control ||
         (begins_a_formula(without_blanks_before(text)) && !parse_number(text, number));
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

std::string csv_unguarded(std::string_view field) {
  const bool is_guarded = field.starts_with('\'') && needs_guard(field.substr(1));
  return std::string(is_guarded ? field.substr(1) : field);
}

std::string csv_field(std::string_view text) {
  std::string field = needs_guard(text) ? "'" : "";
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
