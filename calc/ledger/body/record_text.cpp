#include "ledger/body/record_text.hpp"

#include "base/error.hpp"
#include "base/text/utf8.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

namespace {

/// Control characters, blanks of every width and characters without width (Unicode's White_Space, and
/// invisible format characters; recalled).
bool shows(char32_t code) {
  const bool is_control = code <= 0x20 || (code >= 0x7f && code <= 0xa0);
  const bool is_blank = code == 0xad || code == 0x1680 || (code >= 0x2000 && code <= 0x200f) ||
                        (code >= 0x2028 && code <= 0x202f) || (code >= 0x205f && code <= 0x206f) ||
                        code == 0x3000 || code == 0xfeff;
  return !is_control && !is_blank;
}

bool is_blank_text(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_character(text, at);
    if (shows(character.code)) return false;
    at += character.bytes;
  }
  return true;
}

}  // namespace

void check_record_text(const std::string& where, std::string_view text, std::size_t longest) {
  if (const std::size_t at = first_invalid_utf8(text); at != std::string_view::npos)
    throw InputError(where, Sentence("text.not-utf-8"_key, {{"byte", at + 1}}), "UTF-8 text"_word);
  if (is_blank_text(text))
    throw InputError(where, text.empty() ? "nothing"_word : "a blank text"_word, "a text"_word);
  if (text.size() > longest)
    throw InputError(where, Sentence("text.bytes"_key, {{"bytes", text.size()}}),
                     Sentence("text.bytes.at-most"_key, {{"bytes", longest}}));
}

void check_date(const std::string& text, const char* where) {
  if (text.size() != 10 || !utc_seconds(text + "T00:00:00Z"))
    throw InputError(where, "\"" + printable(text, 40) + "\"", "a date such as 2026-11-25"_word);
}

}  // namespace seamtakt
