#pragma once

#include <string>
#include <string_view>

#include "base/text/ascii.hpp"

namespace seamtakt {

/// Whole numbers up to here are exact as doubles: 2^53.
inline constexpr double largest_exact_integer = 9007199254740992.0;

/// What the text of a JSON string or number means; the text must be valid.

/// The value of a hexadecimal digit; 16 where it is none.
constexpr unsigned json_hex_digit(char c) {
  if (is_digit(c)) return static_cast<unsigned>(c - '0');
  const char lower = static_cast<char>(c | 0x20);
  return lower >= 'a' && lower <= 'f' ? static_cast<unsigned>(lower - 'a') + 10 : 16;
}

/// The halves of a pair of UTF-16 code units.
constexpr bool is_high_surrogate(unsigned unit) {
  return unit >= 0xd800 && unit < 0xdc00;
}
constexpr bool is_low_surrogate(unsigned unit) {
  return unit >= 0xdc00 && unit < 0xe000;
}

/// The text of a JSON string with its quotes.
std::string unescaped_json(std::string_view quoted);

/// The number that a JSON number's text is; infinite where it is beyond a double's range.
double json_number(std::string_view text);

}  // namespace seamtakt
