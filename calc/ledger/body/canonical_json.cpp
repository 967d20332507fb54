#include "ledger/body/canonical_json.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <stdexcept>

#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

std::u16string utf16(std::string_view text) {
  std::u16string units;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8Character character = utf8_character(text, at);
    char32_t code = character.code;
    if (code >= 0x10000) {
      code -= 0x10000;
      units += static_cast<char16_t>(0xd800 + (code >> 10));
      units += static_cast<char16_t>(0xdc00 + (code & 0x3ff));
    } else {
      units += static_cast<char16_t>(code);
    }
    at += std::max<std::size_t>(character.bytes, 1);
  }
  return units;
}

void append_object(std::string& out, const JsonNode& object);

void append(std::string& out, const JsonNode& value) {
  switch (value.kind) {
    case JsonNode::Kind::null:
      out += "null";
      break;
    case JsonNode::Kind::boolean:
      out += value.boolean ? "true" : "false";
      break;
    case JsonNode::Kind::number:
      append_canonical_number(out, value.number);
      break;
    case JsonNode::Kind::string:
      append_canonical_string(out, value.string);
      break;
    case JsonNode::Kind::array:
      out += '[';
      for (std::size_t i = 0; i < value.elements.size(); ++i) {
        if (i > 0) out += ',';
        append(out, value.elements[i]);
      }
      out += ']';
      break;
    case JsonNode::Kind::object:
      append_object(out, value);
      break;
  }
}

void append_object(std::string& out, const JsonNode& object) {
  std::vector<const JsonMember*> members;
  for (const auto& member : object.members) members.push_back(&member);
  std::sort(members.begin(), members.end(),
            [](const auto* a, const auto* b) { return canonical_key_less(a->key, b->key); });
  out += '{';
  for (std::size_t i = 0; i < members.size(); ++i) {
    if (i > 0) out += ',';
    append_canonical_string(out, members[i]->key);
    out += ':';
    append(out, members[i]->value);
  }
  out += '}';
}

}  // namespace

bool canonical_key_less(std::string_view a, std::string_view b) {
  const auto [x, y] = std::mismatch(a.begin(), a.end(), b.begin(), b.end());
  if (x == a.end() || y == b.end()) return a.size() < b.size();
  // Bytes sort like UTF-16 units, except surrogate pairs (lead byte F0 and above) against U+E000 to U+FFFF
  // (EE, EF).
  const auto p = static_cast<unsigned char>(*x), q = static_cast<unsigned char>(*y);
  return p < 0xee && q < 0xee ? p < q : utf16(a) < utf16(b);
}

std::string canonical_json(const JsonNode& value) {
  std::string out;
  append(out, value);
  return out;
}

void append_canonical_number(std::string& out, double value) {
  if (!std::isfinite(value)) throw std::logic_error("JSON: a number that isn't finite");
  if (value == 0) {
    out += '0';
    return;
  }
  if (value < 0) out += '-';
  // Shortest digits that read back as the same double; "d.ddde+XX".
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, std::abs(value), std::chars_format::scientific);
  char digits[20];
  int count = 0, exponent = 0;
  const char* at = text;
  for (; *at != 'e'; ++at)
    if (*at != '.') digits[count++] = *at;
  ++at;
  std::from_chars(*at == '+' ? at + 1 : at, end.ptr, exponent);
  const int point = exponent + 1;  // digits before the decimal sign
  const auto size = static_cast<std::size_t>(count);
  if (count <= point && point <= 21) {
    out.append(digits, size).append(static_cast<std::size_t>(point - count), '0');
  } else if (0 < point && point <= 21) {
    const auto whole = static_cast<std::size_t>(point);
    out.append(digits, whole).append(".").append(digits + whole, size - whole);
  } else if (-6 < point && point <= 0) {
    out.append("0.").append(static_cast<std::size_t>(-point), '0').append(digits, size);
  } else {
    out += digits[0];
    if (count > 1) out.append(".").append(digits + 1, size - 1);
    out.append(exponent < 0 ? "e-" : "e+").append(std::to_string(std::abs(exponent)));
  }
}

void append_canonical_string(std::string& out, std::string_view text) {
  constexpr char digits[] = "0123456789abcdef";
  out += '"';
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    switch (c) {
      case '"':
        out += "\\\"";
        break;
      case '\\':
        out += "\\\\";
        break;
      case '\b':
        out += "\\b";
        break;
      case '\t':
        out += "\\t";
        break;
      case '\n':
        out += "\\n";
        break;
      case '\f':
        out += "\\f";
        break;
      case '\r':
        out += "\\r";
        break;
      default:
        if (byte < 0x20)
          out.append("\\u00").append(1, digits[byte >> 4]).append(1, digits[byte & 15]);
        else
          out += c;
    }
  }
  out += '"';
}

}  // namespace seamtakt
