#include "base/error.hpp"

#include <cstdio>
#include <utility>

#include "base/utf8.hpp"

namespace seamtakt {

namespace {

/// Long enough for any path and phrase, short enough for one line of a log.
constexpr std::size_t message_limit = 2000;

std::string message(const std::string& where, const std::string& found, const std::string& expected,
                    const std::string& pointer) {
  std::string line;
  if (!where.empty()) line += where + ": ";
  line += "found " + found;
  if (!expected.empty()) line += ", expected " + expected;
  if (!pointer.empty()) line += " (at " + pointer + ")";
  return printable(line, message_limit);
}

/// Characters that would let a name from a file change how the rest of the line reads.
bool misleads(char32_t code) {
  const bool c1_control = code >= 0x80 && code <= 0x9f;
  const bool bidirectional = code == 0x61c || code == 0x200e || code == 0x200f ||
                             (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069);
  const bool line_break = code == 0x2028 || code == 0x2029;
  return c1_control || bidirectional || line_break || code == 0xfeff;
}

std::string escaped_byte(unsigned char byte) {
  char text[8];
  std::snprintf(text, sizeof text, "\\x%02X", byte);
  return text;
}

std::string escaped_code(char32_t code) {
  char text[16];
  std::snprintf(text, sizeof text, "\\u{%04X}", static_cast<unsigned>(code));
  return text;
}

}  // namespace

InputError::InputError(std::string where, std::string found, std::string expected, std::string pointer)
    : std::runtime_error(message(where, found, expected, pointer)),
      where_(std::move(where)),
      found_(std::move(found)),
      expected_(std::move(expected)),
      pointer_(std::move(pointer)) {}

std::string printable(std::string_view text, std::size_t limit) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_character(text, at);
    const auto byte = static_cast<unsigned char>(text[at]);
    std::string piece;
    if (character.bytes == 0 || byte < 0x20 || byte == 0x7f) {
      piece = escaped_byte(byte);
    } else if (misleads(character.code)) {
      piece = escaped_code(character.code);
    } else {
      piece = text.substr(at, character.bytes);
    }
    if (result.size() + piece.size() > limit) return result + "...";
    result += piece;
    at += character.bytes == 0 ? 1 : character.bytes;
  }
  return result;
}

}  // namespace seamtakt
