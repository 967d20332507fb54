#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/json_node.hpp"

namespace seamtakt {

class JsonText;

/// A value in a JsonText. Small, borrows the text; what it holds is worked out when it is asked for.
class JsonValue {
 public:
  using Kind = JsonNode::Kind;

  JsonValue(const JsonText& text, std::uint32_t index) : text_(&text), index_(index) {}

  Kind kind() const;
  bool is(Kind kind_asked) const { return kind() == kind_asked; }
  bool boolean() const;
  bool is_integer() const;     ///< a number without fraction or exponent, and within +-2^53
  double number() const;       ///< finite
  std::string string() const;  ///< escapes resolved
  bool is_empty_string() const;
  std::size_t count() const;  ///< elements of an array, members of an object

  /// The bytes of the value as they stand in the file.
  std::string_view source() const;

  /// visit(index, element) for each element of an array, in order.
  template <class Visit>
  void each_element(const Visit& visit) const;
  /// visit(key, value) for each member of an object, in order. The key is lent for the call.
  template <class Visit>
  void each_member(const Visit& visit) const;
  std::vector<JsonValue> elements() const;
  /// The member of an object with this key; empty where there is none, and of what is no object.
  std::optional<JsonValue> member(std::string_view key) const;

  struct Place {
    std::size_t line = 1, column = 1;  ///< from 1; the column counts characters
  };
  /// Where it begins. Looks through the text up to there: for messages.
  Place place() const;

 private:
  std::uint32_t after() const;
  /// Whether the string has no escape, so that it stands in the text as it is.
  bool is_bare_string() const;
  std::string_view bare_string() const { return source().substr(1, source().size() - 2); }

  const JsonText* text_;
  std::uint32_t index_;
};

/// JSON text that has been looked through once: what parse_json accepts, it accepts, and what that refuses,
/// it refuses with the same InputError. No tree is made: 16 bytes a value, so that a long file is read
/// quickly and in little memory. Borrows the text.
class JsonText {
 public:
  JsonText(std::string_view text, std::string file, const JsonLimits& limits = {});

  JsonValue root() const { return {*this, 0}; }
  const std::string& file() const { return file_; }

 private:
  friend class JsonValue;
  friend class JsonScanner;
  /// A value or a key. An object's members follow it: key, value, key, value ...
  struct Entry {
    std::uint32_t begin = 0, end = 0;  ///< bytes of the text
    std::uint32_t count = 0;           ///< elements or members
    std::uint32_t after = 0;           ///< the entry behind all that it holds
  };

  std::string_view text_;
  std::string file_;
  std::vector<Entry> entries_;
};

inline std::uint32_t JsonValue::after() const {
  return text_->entries_[index_].after;
}
inline std::size_t JsonValue::count() const {
  return text_->entries_[index_].count;
}
inline std::string_view JsonValue::source() const {
  const JsonText::Entry& entry = text_->entries_[index_];
  return text_->text_.substr(entry.begin, entry.end - entry.begin);
}

template <class Visit>
void JsonValue::each_element(const Visit& visit) const {
  JsonValue element(*text_, index_ + 1);
  for (std::size_t i = 0, all = count(); i < all; ++i) {
    visit(i, element);
    element.index_ = element.after();
  }
}

template <class Visit>
void JsonValue::each_member(const Visit& visit) const {
  JsonValue key(*text_, index_ + 1);
  for (std::size_t i = 0, all = count(); i < all; ++i) {
    const JsonValue value(*text_, key.index_ + 1);
    if (key.is_bare_string())
      visit(key.bare_string(), value);
    else
      visit(std::string_view(key.string()), value);
    key.index_ = value.after();
  }
}

}  // namespace seamtakt
