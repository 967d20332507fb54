#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

#include "base/json_text.hpp"

namespace seamtakt {

/// Looks through JSON text and notes where each value stands. Says only whether the text is in order; the
/// careful reader (parse_json) says what is wrong.
class JsonScanner {
 public:
  JsonScanner(JsonText& text, const JsonLimits& limits) : text_(text), source_(text.text_), limits_(limits) {}

  bool run();

 private:
  /// Keys of the object at hand: `seen` has a bit for each, by a small hash; `all` is filled once there are
  /// many.
  struct Keys {
    std::uint64_t seen = 0;
    std::optional<std::unordered_set<std::string>> all;
  };

  bool value();
  bool array();
  bool object();
  bool string();
  bool escape();
  bool code_unit(unsigned& unit);
  bool number();
  bool digits();
  bool word(std::string_view expected);
  bool key_is_new(std::size_t object_index, std::size_t key_index, Keys& keys) const;
  void skip_blanks();
  bool take(char c);
  std::size_t open();
  void close(std::size_t index, std::uint32_t count);

  JsonText& text_;
  std::string_view source_;
  const JsonLimits& limits_;
  std::size_t at_ = 0;
  std::size_t values_ = 0, depth_ = 0;
};

/// The text of a JSON string with its quotes, which must be in order.
std::string unescaped_json(std::string_view quoted);

/// The number that a JSON number's text is, which must be in order.
double json_number(std::string_view text);

}  // namespace seamtakt
