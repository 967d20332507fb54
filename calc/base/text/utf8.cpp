#include "base/text/utf8.hpp"

#include <algorithm>
#include <array>

namespace seamtakt {

namespace {

unsigned byte_at(std::string_view text, std::size_t at) {
  return static_cast<unsigned char>(text[at]);
}

/// Length and smallest allowed code of the sequence that a lead byte begins; 0 where it begins none.
struct Lead {
  std::size_t bytes;
  char32_t smallest;
  unsigned payload_mask;
};

Lead lead_of(unsigned byte) {
  if (byte < 0x80) return {1, 0, 0x7f};
  if (byte >= 0xc2 && byte <= 0xdf) return {2, 0x80, 0x1f};
  if (byte >= 0xe0 && byte <= 0xef) return {3, 0x800, 0x0f};
  if (byte >= 0xf0 && byte <= 0xf4) return {4, 0x10000, 0x07};
  return {0, 0, 0};
}

struct CodeRange {
  char32_t first, last;
};

bool in_any(char32_t code, const CodeRange* begin, const CodeRange* end) {
  return std::any_of(begin, end,
                     [code](CodeRange range) { return code >= range.first && code <= range.last; });
}

constexpr std::array<CodeRange, 7> zero_width = {{{0x0300, 0x036f},
                                                  {0x0591, 0x05bd},
                                                  {0x064b, 0x065f},
                                                  {0x200b, 0x200f},
                                                  {0x20d0, 0x20ff},
                                                  {0xfe00, 0xfe0f},
                                                  {0xfe20, 0xfe2f}}};
constexpr std::array<CodeRange, 8> double_width = {{{0x1100, 0x115f},
                                                    {0x2e80, 0x303e},
                                                    {0x3041, 0xa4cf},
                                                    {0xac00, 0xd7a3},
                                                    {0xf900, 0xfaff},
                                                    {0xff00, 0xff60},
                                                    {0x1f300, 0x1faff},
                                                    {0x20000, 0x3fffd}}};

}  // namespace

Utf8Character utf8_character(std::string_view text, std::size_t at) {
  const Lead lead = lead_of(byte_at(text, at));
  if (lead.bytes == 0 || at + lead.bytes > text.size()) return {};
  char32_t code = byte_at(text, at) & lead.payload_mask;
  for (std::size_t i = 1; i < lead.bytes; ++i) {
    const unsigned byte = byte_at(text, at + i);
    if ((byte & 0xc0) != 0x80) return {};
    code = (code << 6) | (byte & 0x3f);
  }
  const bool surrogate = code >= 0xd800 && code <= 0xdfff;
  if (code < lead.smallest || code > 0x10ffff || surrogate) return {};
  return {code, lead.bytes};
}

std::size_t first_invalid_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    if (byte_at(text, at) < 0x80) {
      ++at;
      continue;
    }
    const Utf8Character character = utf8_character(text, at);
    if (character.bytes == 0) return at;
    at += character.bytes;
  }
  return std::string_view::npos;
}

std::string utf8_bytes(char32_t code) {
  const auto byte = [](char32_t value) { return static_cast<char>(static_cast<unsigned char>(value)); };
  const auto tail = [&](int shift) { return byte(0x80 | ((code >> shift) & 0x3f)); };
  if (code < 0x80) return {byte(code)};
  if (code < 0x800) return {byte(0xc0 | (code >> 6)), tail(0)};
  if (code < 0x10000) return {byte(0xe0 | (code >> 12)), tail(6), tail(0)};
  return {byte(0xf0 | (code >> 18)), tail(12), tail(6), tail(0)};
}

std::size_t display_width(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_character(text, at);
    if (character.bytes == 0) {
      ++width;
      ++at;
      continue;
    }
    at += character.bytes;
    if (in_any(character.code, zero_width.begin(), zero_width.end())) continue;
    width += in_any(character.code, double_width.begin(), double_width.end()) ? 2 : 1;
  }
  return width;
}

}  // namespace seamtakt
