#include "base/json_scanner.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <limits>

#include "base/large_pages.hpp"
#include "base/utf8.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

enum class Byte : unsigned char { plain, quote, backslash, control, beyond_ascii };

constexpr std::array<Byte, 256> kinds_of_bytes() {
  std::array<Byte, 256> kinds{};
  for (std::size_t i = 0; i < kinds.size(); ++i)
    kinds[i] = i < 0x20 ? Byte::control : i < 0x80 ? Byte::plain : Byte::beyond_ascii;
  kinds['"'] = Byte::quote;
  kinds['\\'] = Byte::backslash;
  return kinds;
}
constexpr std::array<Byte, 256> byte_kinds = kinds_of_bytes();

Byte kind_of(char c) {
  return byte_kinds[static_cast<unsigned char>(c)];
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// The value of a hexadecimal digit; 16 where it is none.
unsigned hex_digit(char c) {
  if (is_digit(c)) return static_cast<unsigned>(c - '0');
  const char lower = static_cast<char>(c | 0x20);
  return lower >= 'a' && lower <= 'f' ? static_cast<unsigned>(lower - 'a') + 10 : 16;
}

bool is_high_surrogate(unsigned unit) {
  return unit >= 0xd800 && unit < 0xdc00;
}
bool is_low_surrogate(unsigned unit) {
  return unit >= 0xdc00 && unit < 0xe000;
}

}  // namespace

bool JsonScanner::run() {
  if (source_.size() > limits_.bytes || source_.size() >= std::numeric_limits<std::uint32_t>::max())
    return false;
  if (source_.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
  text_.entries_.reserve(source_.size() / 8);
  prefer_large_pages(text_.entries_.data(), text_.entries_.capacity() * sizeof(JsonText::Entry));
  skip_blanks();
  if (!value()) return false;
  skip_blanks();
  return at_ == source_.size();
}

void JsonScanner::skip_blanks() {
  while (at_ < source_.size() &&
         (source_[at_] == ' ' || source_[at_] == '\n' || source_[at_] == '\t' || source_[at_] == '\r'))
    ++at_;
}

bool JsonScanner::take(char c) {
  if (at_ == source_.size() || source_[at_] != c) return false;
  ++at_;
  return true;
}

std::size_t JsonScanner::open() {
  text_.entries_.push_back({static_cast<std::uint32_t>(at_), 0, 0, 0});
  return text_.entries_.size() - 1;
}

void JsonScanner::close(std::size_t index, std::uint32_t count) {
  JsonText::Entry& entry = text_.entries_[index];
  entry.end = static_cast<std::uint32_t>(at_);
  entry.count = count;
  entry.after = static_cast<std::uint32_t>(text_.entries_.size());
}

bool JsonScanner::value() {
  if (at_ == source_.size() || ++values_ > limits_.values) return false;
  switch (source_[at_]) {
    case '{':
      return object();
    case '[':
      return array();
    case '"':
      return string();
    case 't':
      return word("true");
    case 'f':
      return word("false");
    case 'n':
      return word("null");
    default:
      return number();
  }
}

bool JsonScanner::word(std::string_view expected) {
  const std::size_t index = open();
  if (source_.substr(at_, expected.size()) != expected) return false;
  at_ += expected.size();
  close(index, 0);
  return true;
}

bool JsonScanner::array() {
  if (depth_++ >= limits_.depth) return false;
  const std::size_t index = open();
  std::uint32_t count = 0;
  ++at_;
  skip_blanks();
  if (!take(']'))
    for (;;) {
      if (++count > limits_.members || !value()) return false;
      skip_blanks();
      if (take(']')) break;
      if (!take(',')) return false;
      skip_blanks();
    }
  close(index, count);
  --depth_;
  return true;
}

bool JsonScanner::object() {
  if (depth_++ >= limits_.depth) return false;
  const std::size_t index = open();
  std::uint32_t count = 0;
  Keys keys;
  ++at_;
  skip_blanks();
  if (!take('}'))
    for (;;) {
      const std::size_t key = text_.entries_.size();
      if (at_ == source_.size() || source_[at_] != '"' || !string()) return false;
      if (++count > limits_.members || !key_is_new(index, key, keys)) return false;
      skip_blanks();
      if (!take(':')) return false;
      skip_blanks();
      if (!value()) return false;
      skip_blanks();
      if (take('}')) break;
      if (!take(',')) return false;
      skip_blanks();
    }
  close(index, count);
  --depth_;
  return true;
}

/// Where a key's bit isn't set, there is no need to compare.
bool JsonScanner::key_is_new(std::size_t object_index, std::size_t key_index, Keys& keys) const {
  const auto& entries = text_.entries_;
  const auto raw = [&](std::size_t i) {
    return source_.substr(entries[i].begin, entries[i].end - entries[i].begin);
  };
  const auto has_escape = [](std::string_view key) { return key.find('\\') != std::string_view::npos; };
  const auto each_earlier = [&](const auto& visit) {
    for (std::size_t i = object_index + 1; i < key_index; i = entries[i + 1].after) visit(raw(i));
  };
  constexpr std::size_t many = 64;
  const std::string_view key = raw(key_index);
  if (!keys.all && key_index - object_index > 2 * many) {
    keys.all.emplace();
    each_earlier([&](std::string_view earlier) { keys.all->insert(unescaped_json(earlier)); });
  }
  if (keys.all) return keys.all->insert(unescaped_json(key)).second;
  std::size_t hash = key.size() * 7;
  for (const std::size_t place : {key.size() / 4, key.size() / 2, key.size() - 2})
    hash = hash * 5 + static_cast<unsigned char>(key[place]);
  const std::uint64_t bit = std::uint64_t{1} << (hash & 63);
  // An escaped key may be any other in disguise, and any later one may be it.
  const bool escaped = has_escape(key), compare = escaped || (keys.seen & bit) != 0;
  keys.seen |= escaped ? ~std::uint64_t{0} : bit;
  if (!compare) return true;
  bool is_new = true;
  each_earlier([&](std::string_view earlier) {
    if (earlier == key ||
        ((escaped || has_escape(earlier)) && unescaped_json(earlier) == unescaped_json(key)))
      is_new = false;
  });
  return is_new;
}

bool JsonScanner::string() {
  const std::size_t index = open();
  bool escaped = false;
  for (++at_;;) {
    while (at_ < source_.size() && kind_of(source_[at_]) == Byte::plain) ++at_;
    if (at_ == source_.size()) return false;
    const Byte kind = kind_of(source_[at_]);
    if (kind == Byte::quote) break;
    if (kind == Byte::control) return false;
    if (kind == Byte::backslash) {
      escaped = true;
      if (!escape()) return false;
      continue;
    }
    const std::size_t bytes = utf8_character(source_, at_).bytes;
    if (bytes == 0) return false;
    at_ += bytes;
  }
  ++at_;
  close(index, 0);
  const std::size_t begin = text_.entries_[index].begin;
  if (at_ - begin - 2 <= limits_.string_bytes) return true;
  return escaped && unescaped_json(source_.substr(begin, at_ - begin)).size() <= limits_.string_bytes;
}

bool JsonScanner::code_unit(unsigned& unit) {
  unit = 0;
  for (std::size_t i = 0; i < 4; ++i, ++at_) {
    const unsigned digit = at_ < source_.size() ? hex_digit(source_[at_]) : 16;
    if (digit > 15) return false;
    unit = unit * 16 + digit;
  }
  return true;
}

bool JsonScanner::escape() {
  ++at_;
  if (at_ == source_.size()) return false;
  const char c = source_[at_++];
  if (c != 'u') return std::string_view("\"\\/bfnrt").find(c) != std::string_view::npos;
  unsigned unit = 0, low = 0;
  if (!code_unit(unit) || unit == 0 || is_low_surrogate(unit)) return false;
  return !is_high_surrogate(unit) || (take('\\') && take('u') && code_unit(low) && is_low_surrogate(low));
}

bool JsonScanner::digits() {
  const std::size_t begin = at_;
  while (at_ < source_.size() && is_digit(source_[at_])) ++at_;
  return at_ > begin;
}

bool JsonScanner::number() {
  const std::size_t index = open(), begin = at_;
  take('-');
  if (!take('0') && !digits()) return false;
  if (take('.') && !digits()) return false;
  bool may_overflow = at_ - begin > 300;
  if (take('e') || take('E')) {
    may_overflow = true;
    if (!take('+')) take('-');
    if (!digits()) return false;
  }
  close(index, 0);
  return !may_overflow || std::isfinite(json_number(source_.substr(begin, at_ - begin)));
}

std::string unescaped_json(std::string_view quoted) {
  std::string text;
  const auto unit_at = [&](std::size_t at) {
    unsigned unit = 0;
    for (std::size_t i = at; i < at + 4; ++i) unit = unit * 16 + hex_digit(quoted[i]);
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
  // Up to 15 digits and a power of ten up to 22 are exact, and so their quotient is rounded once, as it must
  // be.
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
