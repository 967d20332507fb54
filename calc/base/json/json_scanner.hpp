#pragma once

#include <array>
#include <future>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

#include "base/json/json_document.hpp"

namespace seamtakt {

/// Consecutive elements of an array, up to its end, scanned without the text before them.
struct JsonRun {
  std::size_t begin = 0, end = 0;      ///< bytes of the text: the first element, and the closing bracket
  std::uint32_t first = 0, after = 0;  ///< entries
  std::size_t elements = 0, values = 0, depth = 0;
};

/// Scans JSON text and notes the position of each value. Tells only whether the text is valid; the careful
/// reader (parse_json) says what is wrong.
class JsonScanner {
 public:
  JsonScanner(JsonDocument& text, const JsonLimits& limits)
      : text_(text), source_(text.text_), limits_(limits) {}

  /// The whole text. `ahead`: the run that another thread scans from `ahead_begin` on; nullptr: none.
  bool run(std::future<JsonRun>* ahead, std::size_t ahead_begin);

  /// The longest run that begins at `begin`, where an element of an array is assumed to begin, or later, at
  /// an element of an enclosing array. The result is valid only if `begin` is inside an array; the caller
  /// checks.
  JsonRun run_from(std::size_t begin);

  /// Number of entries sufficient for a text, for two threads as well: at most one of two bytes begins a
  /// value or key, except for brackets that aren't closed yet.
  static std::size_t most_entries(std::size_t bytes, const JsonLimits& limits);

 private:
  /// Keys of the present object: `seen` has a bit for each, by a small hash; `all` is filled once there are
  /// many.
  struct Keys {
    std::array<std::uint64_t, 4> seen{};
    bool any_escaped = false;
    std::size_t count = 0;
    std::optional<std::unordered_set<std::string>> all;
  };

  bool value();
  bool array();
  bool elements(std::size_t& count);
  bool take_run(std::size_t& count);
  bool object();
  bool key();
  bool leave_array();
  bool go_down();
  bool string();
  bool escape();
  bool code_unit(unsigned& unit);
  bool number();
  bool digits();
  bool word(std::string_view expected);
  bool key_is_new(std::uint32_t object_index, std::uint32_t key_index, Keys& keys) const;
  std::string_view raw_key(std::uint32_t index) const;
  template <class Visit>
  void each_earlier_key(std::uint32_t object_index, std::uint32_t key_index, const Visit& visit) const;
  void skip_plain();
  void skip_blanks();
  bool take(char c);
  std::uint32_t open();
  void close(std::uint32_t index, std::uint32_t flag = 0);

  JsonDocument& text_;
  std::string_view source_;
  const JsonLimits& limits_;
  std::size_t at_ = 0;
  std::uint32_t next_entry_ = 0;
  std::size_t values_ = 0, depth_ = 0, deepest_ = 0;
  std::future<JsonRun>* ahead_ = nullptr;
  JsonRun run_;
  std::size_t watched_ = std::string_view::npos;  ///< from here on the run ahead is asked for
};

}  // namespace seamtakt
