#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstring>

#include "base/text/utf8.hpp"
#include "ledger/body/canonical_json.hpp"

namespace seamtakt {

namespace {

constexpr int deepest = 64;
constexpr std::ptrdiff_t decimal_digits = 15;  // that a double keeps

constexpr std::uint64_t low_bits = 0x0101010101010101, high_bits = 0x8080808080808080;

std::uint64_t eight_bytes(const char* at) {
  std::uint64_t word = 0;
  std::memcpy(&word, at, sizeof word);
  return word;
}

/// Most bodies are, and then they need no decoding.
bool is_ascii(std::string_view text) {
  std::uint64_t any = 0;
  std::size_t at = 0;
  for (; at + 8 <= text.size(); at += 8) any |= eight_bytes(text.data() + at);
  for (; at < text.size(); ++at) any |= static_cast<unsigned char>(text[at]);
  return (any & high_bits) == 0;
}

/// Marks the bytes of a word that are a quote, a backslash or below a blank: the lowest mark is exact, those
/// above it may be false.
std::uint64_t marks_of_special(std::uint64_t word) {
  const auto marks_of_zero = [](std::uint64_t x) { return (x - low_bits) & ~x & high_bits; };
  return marks_of_zero(word ^ ('"' * low_bits)) | marks_of_zero(word ^ ('\\' * low_bits)) |
         ((word - 0x20 * low_bits) & ~word & high_bits);
}

/// Walks over canonical JSON text and stops at the first byte that canonical_json wouldn't have written.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : at_(text.data()), end_(text.data() + text.size()) {}

  bool object(std::vector<CanonicalMember>* members, int depth) {
    if (depth > deepest || !take('{')) return false;
    if (take('}')) return true;
    Text last;
    bool is_first = true;
    do {
      Text key;
      if (!string(key) || !take(':')) return false;
      if (!is_first && !follows(last, key)) return false;
      last = key;
      is_first = false;
      const char* begin = at_;
      if (!value(depth + 1)) return false;
      if (members != nullptr)
        members->push_back({key.inside, {begin, static_cast<std::size_t>(at_ - begin)}});
    } while (take(','));
    return take('}');
  }
  bool at_end() const { return at_ == end_; }

 private:
  struct Text {
    std::string_view inside;  ///< without quotes
    bool has_escapes = false;
  };

  bool take(char c) {
    if (at_ == end_ || *at_ != c) return false;
    ++at_;
    return true;
  }
  bool word(std::string_view text) {
    if (!std::string_view(at_, static_cast<std::size_t>(end_ - at_)).starts_with(text)) return false;
    at_ += text.size();
    return true;
  }
  bool value(int depth) {
    if (at_ == end_) return false;
    Text ignored;
    switch (*at_) {
      case '"':
        return string(ignored);
      case '{':
        return object(nullptr, depth);
      case '[':
        return array(depth);
      case 'n':
        return word("null");
      case 't':
        return word("true");
      case 'f':
        return word("false");
      default:
        return number();
    }
  }
  bool array(int depth) {
    if (depth > deepest || !take('[')) return false;
    if (take(']')) return true;
    do {
      if (!value(depth + 1)) return false;
    } while (take(','));
    return take(']');
  }

  bool string(Text& text) {
    if (!take('"')) return false;
    const char* begin = at_;
    text.has_escapes = false;
    for (;;) {
      skip_plain();
      if (at_ == end_ || static_cast<unsigned char>(*at_) < 0x20) return false;
      if (*at_ == '"') break;
      if (*at_ == '\\') {
        if (!escape()) return false;
        text.has_escapes = true;
      }
      ++at_;
    }
    text.inside = {begin, static_cast<std::size_t>(at_ - begin)};
    ++at_;
    return true;
  }
  /// To a byte that may be special, or to the last seven.
  void skip_plain() {
    while (end_ - at_ >= 8) {
      const std::uint64_t marks = marks_of_special(eight_bytes(at_));
      if (marks == 0) {
        at_ += 8;
        continue;
      }
      if constexpr (std::endian::native == std::endian::little) at_ += std::countr_zero(marks) / 8;
      return;
    }
  }
  /// Leaves `at_` on the escape's last character.
  bool escape() {
    if (++at_ == end_) return false;
    if (std::string_view("\"\\btnfr").find(*at_) != std::string_view::npos) return true;
    if (end_ - at_ < 5 || at_[0] != 'u' || at_[1] != '0' || at_[2] != '0') return false;
    const auto lower_hex = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    const char high = at_[3], low = at_[4];
    if ((high != '0' && high != '1') || !lower_hex(low)) return false;
    // Those that have a short escape are written with it, and NUL isn't allowed.
    if (high == '0' && std::string_view("089acd").find(low) != std::string_view::npos) return false;
    at_ += 4;
    return true;
  }

  bool number() {
    const char* begin = at_;
    take('-');
    const char* whole = at_;
    skip_digits();
    const auto whole_count = at_ - whole;
    if (whole_count == 0 || (*whole == '0' && whole_count > 1)) return false;
    const bool is_whole = at_ == end_ || (*at_ != '.' && *at_ != 'e' && *at_ != 'E');
    // A whole number below 10^15 is already canonical; zero has no sign.
    if (is_whole && whole_count <= decimal_digits) return *whole != '0' || whole == begin;
    return (at_ != end_ && *at_ == '.' && short_fraction(*whole == '0' ? 0 : whole_count)) ||
           written_alike(begin);
  }
  void skip_digits() {
    while (at_ != end_ && *at_ >= '0' && *at_ <= '9') ++at_;
  }
  /// Decimal numbers of at most 15 significant digits map to different doubles, so the text is the shortest
  /// of its double; not below 1e-6, which is written with an exponent. Otherwise nothing is consumed.
  bool short_fraction(std::ptrdiff_t whole_count) {
    const char* point = at_;
    const char* digits = ++at_;
    skip_digits();
    const bool ends = at_ == end_ || (*at_ != 'e' && *at_ != 'E');
    const char* first = digits;
    if (whole_count == 0)
      while (first != at_ && *first == '0') ++first;
    if (ends && at_ != digits && at_[-1] != '0' && first - digits <= 5 &&
        whole_count + (at_ - first) <= decimal_digits)
      return true;
    at_ = point;
    return false;
  }
  bool written_alike(const char* begin) {
    while (at_ != end_ &&
           ((*at_ >= '0' && *at_ <= '9') || *at_ == '.' || *at_ == 'e' || *at_ == '+' || *at_ == '-'))
      ++at_;
    double value = 0;
    const auto read = std::from_chars(begin, at_, value);
    if (read.ec != std::errc() || read.ptr != at_ || !std::isfinite(value)) return false;
    written_.clear();
    append_canonical_number(written_, value);
    return written_ == std::string_view(begin, static_cast<std::size_t>(at_ - begin));
  }

  /// Keys with escapes are compared unescaped.
  static bool follows(const Text& last, const Text& key) {
    if (!last.has_escapes && !key.has_escapes) return canonical_key_less(last.inside, key.inside);
    return canonical_key_less(unescaped(last.inside), unescaped(key.inside));
  }
  static std::string unescaped(std::string_view text) {
    const JsonNode node = parse_json("\"" + std::string(text) + "\"", "key");
    return node.string;
  }

  const char *at_, *end_;
  std::string written_;
};

}  // namespace

bool scan_canonical_object(std::string_view text, std::vector<CanonicalMember>& members) {
  members.clear();
  if (!is_ascii(text) && first_invalid_utf8(text) != std::string_view::npos) return false;
  Scanner scanner(text);
  return scanner.object(&members, 1) && scanner.at_end();
}

std::string_view member_text(const std::vector<CanonicalMember>& members, std::string_view key) {
  for (const CanonicalMember& member : members)
    if (member.key == key) return member.value;
  return {};
}

}  // namespace seamtakt
