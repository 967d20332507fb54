#include "base/time/time_fields.hpp"

namespace seamtakt {

namespace {

/// Exactly `count` digits.
bool exact_digits(std::string_view& text, std::size_t count, int& value) {
  if (text.size() < count) return false;
  for (std::size_t i = 0; i < count; ++i)
    if (text[i] < '0' || text[i] > '9') return false;
  return take_digits(text, static_cast<int>(count), value);
}

bool take_char(std::string_view& text, char c) {
  if (text.empty() || text[0] != c) return false;
  text.remove_prefix(1);
  return true;
}

}  // namespace

bool parse_iso8601(std::string_view text, LogTime& time) {
  TimeFields fields;
  if (!exact_digits(text, 4, fields.year)) return false;
  const bool extended = take_char(text, '-');
  if (!exact_digits(text, 2, fields.month)) return false;
  if (extended && !take_char(text, '-')) return false;
  if (!exact_digits(text, 2, fields.day)) return false;
  if (!take_char(text, 'T') && !take_char(text, 't') && !take_char(text, ' ')) return false;
  if (!exact_digits(text, 2, fields.hour)) return false;
  const bool colons = take_char(text, ':');
  if (!exact_digits(text, 2, fields.minute)) return false;
  const bool has_seconds = colons ? take_char(text, ':') : !text.empty() && text[0] >= '0' && text[0] <= '9';
  if (has_seconds) {
    if (!exact_digits(text, 2, fields.second)) return false;
    if ((take_char(text, '.') || take_char(text, ',')) && !take_fraction_ns(text, fields.fraction_ns))
      return false;
  }
  if (!text.empty() && !take_utc_offset(text, fields)) return false;
  return text.empty() && compose_time(fields, time);
}

}  // namespace seamtakt
