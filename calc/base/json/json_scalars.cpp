#include "base/json/json_scalars.hpp"

#include <charconv>
#include <cstdint>
#include <limits>

#include "base/json/json_node.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

std::string unescaped_json(std::string_view quoted) {
  std::string text;
  const auto unit_at = [&](std::size_t at) {
    unsigned unit = 0;
    for (std::size_t i = at; i < at + 4; ++i) unit = unit * 16 + json_hex_digit(quoted[i]);
    return unit;
  };
  for (std::size_t at = 1; at + 1 < quoted.size();) {
    if (quoted[at] != '\\') {
      text += quoted[at++];
      continue;
    }
    const char c = quoted[at + 1];
    at += 2;
    if (c != 'u') {
      constexpr std::string_view letters = "bfnrt", meanings = "\b\f\n\r\t";
      const std::size_t which = letters.find(c);
      text += which == std::string_view::npos ? c : meanings[which];
      continue;
    }
    char32_t code = unit_at(at);
    at += 4;
    if (is_high_surrogate(static_cast<unsigned>(code))) {
      code = 0x10000 + ((code & 0x3ff) << 10) + (unit_at(at + 2) & 0x3ff);
      at += 6;
    }
    text += utf8_bytes(code);
  }
  return text;
}

double json_number(std::string_view text) {
  // Up to 15 digits and a power of ten up to 22 are exact, so their quotient is rounded once, as it must be.
  constexpr double tens[] = {1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                             1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
  if (text.size() <= 16) {
    const bool negative = text.front() == '-';
    std::int64_t whole = 0;
    std::size_t point = text.size();
    bool simple = true;
    for (std::size_t i = negative; i < text.size() && simple; ++i) {
      if (text[i] == '.')
        point = i + 1;
      else if (is_digit(text[i]))
        whole = whole * 10 + (text[i] - '0');
      else
        simple = false;
    }
    const std::size_t count = text.size() - negative - (point < text.size() ? 1 : 0);
    if (simple && count <= 15) {
      if (whole == 0) return negative && point < text.size() ? -0.0 : 0.0;
      const double value = static_cast<double>(negative ? -whole : whole);
      return point < text.size() ? value / tens[text.size() - point] : value;
    }
  }
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error == std::errc()) return value == 0 && text == "-0" ? 0.0 : value;
  // Beyond the range of doubles: the careful reader tells too large from too small.
  try {
    return parse_json(text, "").number;
  } catch (const std::exception&) {
    return std::numeric_limits<double>::infinity();
  }
}

}  // namespace seamtakt
