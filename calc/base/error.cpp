#include "base/error.hpp"

#include <algorithm>
#include <cstdio>
#include <iterator>
#include <utility>

#include "base/text/utf8.hpp"

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

/// Characters that would let a name from a file change how the rest of the line reads, or look like another
/// name: C1 controls, line breaks, bidirectional controls, and what can't be seen (zero widths, fillers,
/// tags; Unicode's Default_Ignorable_Code_Point except variation selectors and joiners of graphemes,
/// recalled).
bool misleads(char32_t code) {
  static constexpr std::pair<char32_t, char32_t> hidden[] = {
      {0x80, 0x9f},     {0xad, 0xad},     {0x61c, 0x61c},   {0x115f, 0x1160},   {0x180e, 0x180e},
      {0x200b, 0x200f}, {0x2028, 0x202e}, {0x2060, 0x206f}, {0x3164, 0x3164},   {0xfeff, 0xfeff},
      {0xffa0, 0xffa0}, {0xfff9, 0xfffb}, {0xfffe, 0xffff}, {0x1d173, 0x1d17a}, {0xe0000, 0xe007f}};
  return std::any_of(std::begin(hidden), std::end(hidden),
                     [code](const auto& range) { return code >= range.first && code <= range.second; });
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

InputError::InputError(std::string where, Phrase found, Phrase expected, std::string pointer)
    : std::runtime_error(message(where, found.sentence().english(), expected.sentence().english(), pointer)),
      where_(std::move(where)),
      found_(found.sentence()),
      expected_(expected.sentence()),
      pointer_(std::move(pointer)) {}

namespace {

/// The character at `at`, which is moved on, as it may be printed.
std::string printable_piece(std::string_view text, std::size_t& at) {
  const Utf8Character character = utf8_character(text, at);
  const auto byte = static_cast<unsigned char>(text[at]);
  const std::size_t from = at;
  at += character.bytes == 0 ? 1 : character.bytes;
  if (character.bytes == 0 || byte < 0x20 || byte == 0x7f) return escaped_byte(byte);
  if (misleads(character.code)) return escaped_code(character.code);
  return std::string(text.substr(from, at - from));
}

}  // namespace

std::string printable(std::string_view text, std::size_t limit) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    const std::string piece = printable_piece(text, at);
    if (result.size() + piece.size() > limit) return result + "...";
    result += piece;
  }
  return result;
}

std::string printable_lines(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const bool plain = (text[at] >= 0x20 && text[at] < 0x7f) || text[at] == '\n';
    if (plain)
      result += text[at++];
    else
      result += printable_piece(text, at);
  }
  return result;
}

}  // namespace seamtakt
