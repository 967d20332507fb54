#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace seamtakt {

/// May begin a UTF-8 file; it isn't part of the text.
inline constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

/// A character of UTF-8 text. `bytes` is 0 where the bytes at that place aren't valid UTF-8
/// (overlong forms, surrogates and values above U+10FFFF aren't; Unicode standard, table 3-7).
struct Utf8Character {
  char32_t code = 0;
  std::size_t bytes = 0;
};

/// The character that begins at byte `at`; at < text.size().
Utf8Character utf8_character(std::string_view text, std::size_t at);

/// Byte index of the first byte that isn't valid UTF-8, or npos.
std::size_t first_invalid_utf8(std::string_view text);

/// Whether a byte of valid UTF-8 is the first one of its character.
inline bool begins_utf8_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xc0) != 0x80;
}

/// Characters (code points) of valid UTF-8.
std::size_t utf8_character_count(std::string_view text);

/// A character as UTF-8 bytes; code is a Unicode scalar value.
std::string utf8_bytes(char32_t code);

/// Columns that text takes on a terminal: 0 for combining marks, 2 for wide East Asian characters, 1 else
/// (control characters and bytes that aren't UTF-8 too). Source: utf8proc's table of the Unicode standard.
std::size_t display_width(std::string_view text);

}  // namespace seamtakt
