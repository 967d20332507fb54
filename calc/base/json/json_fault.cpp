#include "base/json/json_fault.hpp"

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view blanks = " \t\r\n", signs = " \t\r\n,:[]{}";

std::optional<unsigned> hex_digit(char c) {
  if (is_digit(c)) return static_cast<unsigned>(c - '0');
  const char lower = static_cast<char>(c | 0x20);
  if (lower < 'a' || lower > 'f') return std::nullopt;
  return static_cast<unsigned>(lower - 'a') + 10;
}

/// Goes through a text token by token, and knows of each place what may be there.
class FaultFinder {
 public:
  explicit FaultFinder(std::string_view text) : text_(text) {
    if (text.starts_with(byte_order_mark)) at_ = byte_order_mark.size();
  }

  JsonFault run() {
    while (!fault_) {
      at_ = std::min(text_.find_first_not_of(blanks, at_), text_.size());
      if (at_ < text_.size())
        token();
      else if (wanted_ == Wanted::end)
        throw std::logic_error("JSON in which a fault is looked for");
      else
        ends_too_soon();
    }
    return std::move(*fault_);
  }

 private:
  enum class Wanted { value, value_or_end, key, key_or_end, colon, comma_or_bracket, comma_or_brace, end };

  void token() {
    switch (text_[at_]) {
      case '{':
        return open('}', Wanted::key_or_end);
      case '[':
        return open(']', Wanted::value_or_end);
      case '}':
        return close('}', wanted_ == Wanted::key_or_end || wanted_ == Wanted::comma_or_brace);
      case ']':
        return close(']', wanted_ == Wanted::value_or_end || wanted_ == Wanted::comma_or_bracket);
      case ',':
        if (wanted_ == Wanted::comma_or_brace) return go_on(Wanted::key);
        return wanted_ == Wanted::comma_or_bracket ? go_on(Wanted::value) : refuse_piece(at_);
      case ':':
        return wanted_ == Wanted::colon ? go_on(Wanted::value) : refuse_piece(at_);
      case '"':
        return string();
      default:
        return word_or_number();
    }
  }

  bool wants_value() const { return wanted_ == Wanted::value || wanted_ == Wanted::value_or_end; }
  bool wants_key() const { return wanted_ == Wanted::key || wanted_ == Wanted::key_or_end; }

  /// `wanted` is allowed after the present character.
  void go_on(Wanted wanted) {
    ++at_;
    wanted_ = wanted;
  }
  void open(char closing, Wanted wanted) {
    if (!wants_value()) return refuse_piece(at_);
    closings_.push_back(closing);
    go_on(wanted);
  }
  void close(char closing, bool may_close) {
    if (!may_close || closings_.back() != closing) return refuse_piece(at_);
    closings_.pop_back();
    ++at_;
    after_value();
  }
  void after_value() {
    wanted_ = closings_.empty()         ? Wanted::end
              : closings_.back() == ']' ? Wanted::comma_or_bracket
                                        : Wanted::comma_or_brace;
  }

  /// A string with a fault in it is refused for that, also where no string may be.
  void string() {
    const std::size_t begin = at_++;
    while (!fault_ && at_ < text_.size() && text_[at_] != '"') character();
    if (fault_) return;
    if (at_ == text_.size()) return ends_too_soon();
    ++at_;
    if (wants_key())
      wanted_ = Wanted::colon;
    else if (wants_value())
      after_value();
    else
      refuse_piece(begin);
  }
  void character() {
    if (text_[at_] == '\\') return escape();
    if (static_cast<unsigned char>(text_[at_]) < 0x20)
      return refuse(at_, "a control character in a string"_word, "an escape such as \\n"_word);
    const std::size_t bytes = utf8_character(text_, at_).bytes;
    if (bytes == 0) return refuse(at_, "a byte that isn't UTF-8"_word, "UTF-8 text"_word);
    at_ += bytes;
  }
  void escape() {
    ++at_;
    if (at_ < text_.size() && text_[at_] == 'u') return unicode_escape();
    if (at_ == text_.size() || std::string_view("\"\\/bfnrt").find(text_[at_]) == std::string_view::npos)
      return refuse_in_string(at_, "an unknown escape in a string"_word, "an escape that JSON has"_word);
    ++at_;
  }
  /// From the u on: one code unit, or the two of a pair.
  void unicode_escape() {
    ++at_;
    const auto first = code_unit();
    if (!first || *first < 0xd800 || *first > 0xdfff) return;
    std::size_t bad = at_ - 1;
    if (*first < 0xdc00) {
      bad = at_ + text_.substr(at_).starts_with('\\');
      if (take("\\u")) {
        const auto second = code_unit();
        if (!second || (*second >= 0xdc00 && *second <= 0xdfff)) return;
        bad = at_ - 1;
      }
    }
    refuse_in_string(bad, "half of a surrogate pair"_word, "both \\u halves of it"_word);
  }
  std::optional<unsigned> code_unit() {
    unsigned unit = 0;
    for (int i = 0; i < 4; ++i, ++at_) {
      const auto digit = at_ < text_.size() ? hex_digit(text_[at_]) : std::nullopt;
      if (!digit) {
        refuse_in_string(at_, "a \\u escape cut short"_word, "four hexadecimal digits"_word);
        return std::nullopt;
      }
      unit = unit * 16 + *digit;
    }
    return unit;
  }

  void word_or_number() {
    const std::size_t begin = at_;
    if (!take("true") && !take("false") && !take("null") && !number()) return refuse_piece(begin);
    if (!wants_value()) return refuse_piece(begin);
    after_value();
  }
  bool take(std::string_view expected) {
    if (!text_.substr(at_).starts_with(expected)) return false;
    at_ += expected.size();
    return true;
  }
  bool digits() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && is_digit(text_[at_])) ++at_;
    return at_ > begin;
  }
  bool number() {
    take("-");
    if (!take("0") && !digits()) return false;
    if (take(".") && !digits()) return false;
    if (!take("e") && !take("E")) return true;
    if (!take("+")) take("-");
    return digits();
  }

  Word expected() const {
    switch (wanted_) {
      case Wanted::value:
      case Wanted::value_or_end:
        break;
      case Wanted::key:
      case Wanted::key_or_end:
        return "a key in double quotes"_word;
      case Wanted::colon:
        return "':' after the key"_word;
      case Wanted::comma_or_bracket:
        return "',' or ']'"_word;
      case Wanted::comma_or_brace:
        return "',' or '}'"_word;
      case Wanted::end:
        return "the end of the text"_word;
    }
    return "a JSON value"_word;
  }

  void refuse_piece(std::size_t byte) { refuse(byte, json_piece(text_, byte), expected()); }
  void ends_too_soon() { refuse(text_.size(), "the end of the text"_word, "the rest of a JSON value"_word); }
  /// At the text's end, the last byte.
  void refuse_in_string(std::size_t byte, Word found, Word expected) {
    refuse(std::min(byte, text_.size() - 1), found, expected);
  }
  void refuse(std::size_t byte, Sentence found, Sentence expected) {
    fault_ = JsonFault{byte, std::move(found), std::move(expected)};
  }

  std::string_view text_;
  std::size_t at_ = 0;
  Wanted wanted_ = Wanted::value;
  std::vector<char> closings_;  ///< of the arrays and objects that are open
  std::optional<JsonFault> fault_;
};

}  // namespace

JsonFault find_json_fault(std::string_view text) {
  return FaultFinder(text).run();
}

Sentence json_piece(std::string_view text, std::size_t byte) {
  constexpr std::size_t longest = 30;
  const std::string_view rest = text.substr(byte, longest);
  if (rest.empty()) return "the end of the text"_word;
  std::size_t size = 1;
  if (rest.front() == '"') {
    size = std::min(rest.find('"', 1), rest.size() - 1) + 1;
  } else if (signs.find(rest.front()) == std::string_view::npos) {
    size = std::min(rest.find_first_of(signs), rest.size());
  }
  const std::string piece = printable(rest.substr(0, size));
  if (rest.front() == '"') return Sentence("json.string"_key, {{"text", piece}});
  return Sentence::verbatim('"' + piece + '"');
}

}  // namespace seamtakt
