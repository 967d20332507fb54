#pragma once

#include <concepts>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// Writes JSON text piece by piece, members in the order in which they are given, 2 blanks of indent a level.
/// Numbers are the shortest that read back as the same double, whole ones without ".0"; no value is null. A
/// number that isn't finite is a fault of the program: std::logic_error. So are members outside of an object
/// and unclosed brackets. Text that isn't valid UTF-8 is written with U+FFFD in place of each wrong byte.
class JsonWriter {
 public:
  /// How an array or object is laid out; inner ones of a compact one are compact too.
  enum class Layout { lines, compact };

  JsonWriter& begin_object(Layout layout = Layout::lines) { return begin('{', layout); }
  JsonWriter& end_object() { return end('}'); }
  JsonWriter& begin_array(Layout layout = Layout::lines) { return begin('[', layout); }
  JsonWriter& end_array() { return end(']'); }

  JsonWriter& key(std::string_view name);

  JsonWriter& value(double number);
  JsonWriter& value(std::string_view text);
  JsonWriter& value(const char* text) { return value(std::string_view(text)); }
  JsonWriter& value(const std::string& text) { return value(std::string_view(text)); }
  JsonWriter& value(std::same_as<bool> auto truth) { return literal(truth ? "true" : "false"); }
  JsonWriter& value(std::integral auto number) requires(!std::same_as<decltype(number), bool>) {
    return literal(std::to_string(number));
  }
  JsonWriter& null() { return literal("null"); }
  template <class Value>
  JsonWriter& value(const std::optional<Value>& maybe) {
    return maybe ? value(*maybe) : null();
  }
  /// Numbers on one line: [1, 2.5, 3].
  JsonWriter& value(std::span<const double> numbers);
  JsonWriter& value(const std::vector<double>& numbers) { return value(std::span<const double>(numbers)); }

  template <class Value>
  JsonWriter& member(std::string_view name, const Value& content) {
    return key(name).value(content);
  }
  JsonWriter& null_member(std::string_view name) { return key(name).null(); }

  /// JSON text that is written as it is, e.g. a member kept from a file. It must be one whole value.
  JsonWriter& raw(std::string_view json) { return literal(json); }

  /// Text before each element of the open array, except for the comma, which the first element doesn't have.
  std::string element_lead() const;
  /// Elements of the open array that were written elsewhere, each with its lead, and commas except before the
  /// first.
  JsonWriter& written_elements(std::string_view elements);
  /// What has been written since the last part was taken, for a document that is too long to be kept in one
  /// text.
  std::string take_part();
  /// The document with a newline at its end; the writer is empty then.
  std::string take();

 private:
  struct Level {
    char closing;
    bool compact;
    bool empty = true;
  };

  JsonWriter& begin(char opening, Layout layout);
  JsonWriter& end(char closing);
  JsonWriter& literal(std::string_view text);
  void before_value();
  void separate(Level& level);

  std::string text_;
  std::vector<Level> levels_;
  bool parted_ = false;
  bool after_key_ = false;
};

/// A number as JsonWriter writes it.
void append_json_value(std::string& out, double number);

/// `text` as a JSON string with its quotes.
void append_json_string(std::string& out, std::string_view text);
std::string json_string(std::string_view text);

}  // namespace seamtakt
