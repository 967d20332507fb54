#include <charconv>
#include <cmath>

#include "base/utf8.hpp"
#include "records/ledger/canonical_json.hpp"

namespace seamtakt {

namespace {

constexpr int deepest = 64;

/// Walks over canonical JSON text and stops at the first byte that canonical_json wouldn't have written.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : at_(text.data()), end_(text.data() + text.size()) {}

  bool object(std::vector<CanonicalMember>* members, int depth) {
    if (depth > deepest || !take('{')) return false;
    if (take('}')) return true;
    std::string_view last;
    bool is_first = true;
    do {
      std::string_view key;
      if (!string(key) || !take(':')) return false;
      if (!is_first && !follows(last, key)) return false;
      last = key;
      is_first = false;
      const char* begin = at_;
      if (!value(depth + 1)) return false;
      if (members != nullptr) members->push_back({key, {begin, static_cast<std::size_t>(at_ - begin)}});
    } while (take(','));
    return take('}');
  }
  bool at_end() const { return at_ == end_; }

 private:
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
    std::string_view ignored;
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

  bool string(std::string_view& inside) {
    if (!take('"')) return false;
    const char* begin = at_;
    for (; at_ != end_ && *at_ != '"'; ++at_) {
      if (static_cast<unsigned char>(*at_) < 0x20) return false;
      if (*at_ == '\\' && !escape()) return false;
    }
    inside = {begin, static_cast<std::size_t>(at_ - begin)};
    return take('"');
  }
  /// Leaves `at_` on the escape's last character.
  bool escape() {
    if (++at_ == end_) return false;
    if (std::string_view("\"\\btnfr").find(*at_) != std::string_view::npos) return true;
    if (end_ - at_ < 5 || at_[0] != 'u' || at_[1] != '0' || at_[2] != '0') return false;
    const auto lower_hex = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
    const char high = at_[3], low = at_[4];
    if ((high != '0' && high != '1') || !lower_hex(low)) return false;
    // Those that have a short escape are written with it, and NUL isn't allowed at all.
    if (high == '0' && std::string_view("089acd").find(low) != std::string_view::npos) return false;
    at_ += 4;
    return true;
  }

  bool number() {
    const char* begin = at_;
    take('-');
    const char* digits = at_;
    while (at_ != end_ && *at_ >= '0' && *at_ <= '9') ++at_;
    const auto count = at_ - digits;
    const bool is_whole = at_ == end_ || (*at_ != '.' && *at_ != 'e' && *at_ != 'E');
    // A whole number below 10^15 stands for itself.
    if (is_whole && count > 0 && count <= 15)
      return count == 1 ? *digits != '0' || digits == begin : *digits != '0';
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

  /// Keys with escapes are compared as what they stand for.
  static bool follows(std::string_view last, std::string_view key) {
    if (last.find('\\') == std::string_view::npos && key.find('\\') == std::string_view::npos)
      return canonical_key_less(last, key);
    return canonical_key_less(unescaped(last), unescaped(key));
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
  if (first_invalid_utf8(text) != std::string_view::npos) return false;
  Scanner scanner(text);
  return scanner.object(&members, 1) && scanner.at_end();
}

std::string_view member_text(const std::vector<CanonicalMember>& members, std::string_view key) {
  for (const CanonicalMember& member : members)
    if (member.key == key) return member.value;
  return {};
}

}  // namespace seamtakt
