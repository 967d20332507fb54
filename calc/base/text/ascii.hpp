#pragma once

#include <string>
#include <string_view>

namespace seamtakt {

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// `text` without the `blanks` at its ends.
inline std::string_view trimmed(std::string_view text, std::string_view blanks = " \t\r\n") {
  const std::size_t begin = text.find_first_not_of(blanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

/// The letters A to Z as a to z; all else as it is, whatever the locale.
inline std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

}  // namespace seamtakt
