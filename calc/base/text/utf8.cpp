#include "base/text/utf8.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>

namespace seamtakt {

namespace {

bool is_ascii(char byte) {
  return static_cast<unsigned char>(byte) < 0x80;
}

/// Soft hyphens and characters that direct the text take no column; some of them have one in the table.
bool takes_no_column(char32_t code) {
  const auto category = utf8proc_category(static_cast<utf8proc_int32_t>(code));
  return category == UTF8PROC_CATEGORY_MN || category == UTF8PROC_CATEGORY_ME ||
         category == UTF8PROC_CATEGORY_CF;
}

}  // namespace

Utf8Character utf8_character(std::string_view text, std::size_t at) {
  // At most four bytes: what follows isn't this character's.
  const std::string_view bytes = text.substr(at, 4);
  utf8proc_int32_t code = 0;
  const utf8proc_ssize_t size = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(bytes.data()),
                                                 static_cast<utf8proc_ssize_t>(bytes.size()), &code);
  if (size <= 0) return {};
  return {static_cast<char32_t>(code), static_cast<std::size_t>(size)};
}

std::size_t first_invalid_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    if (is_ascii(text[at])) {
      ++at;
      continue;
    }
    const Utf8Character character = utf8_character(text, at);
    if (character.bytes == 0) return at;
    at += character.bytes;
  }
  return std::string_view::npos;
}

std::size_t utf8_character_count(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_utf8_character));
}

std::string utf8_bytes(char32_t code) {
  std::array<utf8proc_uint8_t, 4> bytes;
  const auto size = utf8proc_encode_char(static_cast<utf8proc_int32_t>(code), bytes.data());
  return {reinterpret_cast<const char*>(bytes.data()), static_cast<std::size_t>(size)};
}

std::size_t display_width(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    if (is_ascii(text[at])) {
      ++width;
      ++at;
      continue;
    }
    const Utf8Character character = utf8_character(text, at);
    at += std::max<std::size_t>(character.bytes, 1);
    if (character.bytes > 0 && takes_no_column(character.code)) continue;
    const int columns =
        character.bytes > 0 ? utf8proc_charwidth(static_cast<utf8proc_int32_t>(character.code)) : 1;
    width += static_cast<std::size_t>(std::max(columns, 1));
  }
  return width;
}

}  // namespace seamtakt
