#include "exchange/sheets/xml_text.hpp"

#include "base/error.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

bool is_control(char32_t code) {
  return code < 0x20 && code != '\t' && code != '\n' && code != '\r';
}

}  // namespace

std::string xml_text(std::string_view text, XmlControls controls) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_character(text, at);
    const std::size_t bytes = character.bytes == 0 ? 1 : character.bytes;
    const std::string_view piece = text.substr(at, bytes);
    at += bytes;
    const bool is_none = character.bytes == 0 || character.code == 0xfffe || character.code == 0xffff;
    const bool escape = is_none || (is_control(character.code) && controls == XmlControls::escaped);
    result += escape ? printable(piece) : std::string(piece);
  }
  return result;
}

}  // namespace seamtakt
