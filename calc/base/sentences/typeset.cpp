#include "base/sentences/typeset.hpp"

#include "base/text/ascii.hpp"
#include "base/units/unit_system.hpp"

namespace seamtakt {

namespace {

constexpr const char* superscripts[] = {"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

/// Reads a text from its beginning; each step takes what one rule covers, or one character.
class Typesetter {
 public:
  explicit Typesetter(std::string_view text) : text_(text) {}

  std::string run() {
    while (at_ < text_.size())
      if (!(take_sign() || take_power() || take_unit())) out_ += text_[at_++];
    return std::move(out_);
  }

 private:
  char next(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  char previous() const { return at_ > 0 ? text_[at_ - 1] : '\0'; }

  bool take_sign() {
    constexpr struct {
      std::string_view plain;
      const char* readable;
    } signs[] = {{"+-", "±"}, {"<=", "≤"}, {">=", "≥"}, {"*", "·"}};
    for (const auto& sign : signs) {
      if (!text_.substr(at_).starts_with(sign.plain) || (sign.plain == "*" && !is_between_symbols()))
        continue;
      out_ += sign.readable;
      at_ += sign.plain.size();
      return true;
    }
    return false;
  }

  /// A star that multiplies, and not one that marks a footnote: a space on both sides or on neither.
  bool is_between_symbols() const {
    const bool is_spaced = previous() == ' ' && next(1) == ' ';
    const char before = is_spaced && at_ > 1 ? text_[at_ - 2] : previous();
    const char after = is_spaced ? next(2) : next(1);
    const auto is_symbol = [](char c, char bracket) { return is_letter(c) || is_digit(c) || c == bracket; };
    return is_symbol(before, ')') && is_symbol(after, '(');
  }

  /// "^2", "^-1": whole powers alone, as there is no raised point.
  bool take_power() {
    if (next() != '^') return false;
    const bool is_negative = next(1) == '-';
    std::size_t end = at_ + (is_negative ? 2 : 1);
    const std::size_t first = end;
    while (end < text_.size() && is_digit(text_[end])) ++end;
    const bool has_fraction = end + 1 < text_.size() && text_[end] == '.' && is_digit(text_[end + 1]);
    if (end == first || has_fraction) return false;
    if (is_negative) out_ += "⁻";
    for (std::size_t i = first; i < end; ++i) out_ += superscripts[text_[i] - '0'];
    at_ = end;
    return true;
  }

  /// The word after a number and a space, where it is a unit.
  bool take_unit() {
    if (next() != ' ' || !is_digit(previous())) return false;
    std::size_t end = at_ + 1;
    while (end < text_.size() && (is_letter(text_[end]) || is_digit(text_[end]) || text_[end] == '/')) ++end;
    const std::string_view word = text_.substr(at_ + 1, end - at_ - 1);
    const std::string_view name = word == "degC" ? "C" : word;
    if (name.empty() || !find_unit(name)) return false;
    const std::string unit = readable_unit(name);
    out_ += (unit == "°" ? "" : " ") + unit;
    at_ = end;
    return true;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::string out_;
};

}  // namespace

std::string typeset(std::string_view text) {
  return Typesetter(text).run();
}

}  // namespace seamtakt
