#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/json/json_node.hpp"

namespace seamtakt {

class JsonDocument;

/// A value in a JsonDocument. Small, refers to the text; its content is decoded on request.
class JsonValue {
 public:
  using Kind = JsonNode::Kind;

  JsonValue(const JsonDocument& text, std::uint32_t index) : text_(&text), index_(index) {}

  Kind kind() const;
  bool is(Kind kind_asked) const { return kind() == kind_asked; }
  bool boolean() const;
  bool is_integer() const;     ///< a number without fraction or exponent, and within +-2^53
  double number() const;       ///< finite
  std::string string() const;  ///< escapes resolved
  bool is_empty_string() const;
  std::size_t count() const;  ///< elements of an array, members of an object; linear in their number

  /// The bytes of the value, unchanged from the file.
  std::string_view source() const;

  /// visit(index, element) for each element of an array, in order.
  template <class Visit>
  void each_element(const Visit& visit) const;
  /// visit(key, value) for each member of an object, in order. The key is valid during the call.
  template <class Visit>
  void each_member(const Visit& visit) const;
  std::vector<JsonValue> elements() const;
  /// The member of an object with this key; empty if there is none, or if the value isn't an object.
  std::optional<JsonValue> member(std::string_view key) const;

  struct Place {
    std::size_t line = 1, column = 1;  ///< from 1; the column counts characters
  };
  /// Where it begins. Scans the text up to there: for messages.
  Place place() const;

 private:
  bool holds_others() const;
  std::size_t end() const;
  std::size_t end_of_holder() const;
  /// The entry after the value and its content.
  std::uint32_t after() const;
  /// Whether the string has no escape, so that its bytes can be used unchanged.
  bool is_bare_string() const;
  /// Calls step(entry of the element or key) for each, and continues after the entry that it returns.
  template <class Step>
  void each_held(const Step& step) const;
  std::string_view bare_string() const { return source().substr(1, source().size() - 2); }

  const JsonDocument* text_;
  std::uint32_t index_;
};

/// JSON text that has been scanned once: it accepts the same texts as parse_json and refuses others with the
/// same InputError. It builds no tree: 8 bytes per value, so that a long file is read quickly and in little
/// memory. Two threads scan a long text. Refers to the text.
class JsonDocument {
 public:
  /// `two_threads_from`: the number of bytes from which a text counts as long.
  JsonDocument(std::string_view text, std::string file, const JsonLimits& limits = {},
               std::size_t two_threads_from = std::size_t{1} << 20);

  JsonValue root() const { return {*this, 0}; }
  const std::string& file() const { return file_; }

 private:
  friend class JsonValue;
  friend class JsonScanner;
  /// A value or a key. The content of an array or object follows it: element, element ... or key, value, key
  /// ...
  struct Entry {
    std::uint32_t begin;  ///< byte of the text; `elsewhere`: the entry meant is that at `link`
    /// Of an array or object the entry after its content; of others the byte after them, and the highest bit
    /// is set if a string has escapes.
    std::uint32_t link;
  };
  static constexpr std::uint32_t elsewhere = 0xffffffff, escapes = 0x80000000;

  bool look_through(const JsonLimits& limits, std::size_t two_threads_from);

  std::string_view text_;
  std::string file_;
  std::unique_ptr<Entry[]> entries_;
};

inline bool JsonValue::holds_others() const {
  const char first = text_->text_[text_->entries_[index_].begin];
  return first == '{' || first == '[';
}
inline std::uint32_t JsonValue::after() const {
  return holds_others() ? text_->entries_[index_].link : index_ + 1;
}
inline bool JsonValue::is_bare_string() const {
  return (text_->entries_[index_].link & JsonDocument::escapes) == 0;
}
inline std::string_view JsonValue::source() const {
  const std::size_t begin = text_->entries_[index_].begin;
  return text_->text_.substr(begin, end() - begin);
}
inline std::size_t JsonValue::end() const {
  return holds_others() ? end_of_holder() : text_->entries_[index_].link & ~JsonDocument::escapes;
}

template <class Step>
void JsonValue::each_held(const Step& step) const {
  if (!holds_others()) return;
  const std::uint32_t end = after();
  for (std::uint32_t at = index_ + 1; at != end;) {
    if (text_->entries_[at].begin == JsonDocument::elsewhere) at = text_->entries_[at].link;
    at = step(JsonValue(*text_, at));
  }
}

template <class Visit>
void JsonValue::each_element(const Visit& visit) const {
  std::size_t i = 0;
  each_held([&](const JsonValue& element) {
    visit(i++, element);
    return element.after();
  });
}

template <class Visit>
void JsonValue::each_member(const Visit& visit) const {
  each_held([&](const JsonValue& key) {
    const JsonValue value(*text_, key.index_ + 1);
    if (key.is_bare_string())
      visit(key.bare_string(), value);
    else
      visit(std::string_view(key.string()), value);
    return value.after();
  });
}

}  // namespace seamtakt
