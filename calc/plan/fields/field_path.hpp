#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.hpp"
#include "base/json/json_document.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

class FieldTable;

/// A position in a plan: the keys and indexes from its root. Cheap until an error asks for the JSON pointer
/// and the place in the file.
class FieldPath {
 public:
  /// `file` names the source in messages. `root` is what was read from it, for line and column; empty for a
  /// plan in memory. Both borrow.
  explicit FieldPath(std::string_view file, std::optional<JsonValue> root = {}) : file_(file), root_(root) {}

  /// Enters a key or an index for as long as it lives.
  class Step {
   public:
    Step(FieldPath& place, std::string_view key) : place_(place) { place_.go_to({key, 0, false}); }
    Step(FieldPath& place, std::size_t index) : place_(place) { place_.go_to({{}, index, true}); }
    ~Step() { --place_.depth_; }
    Step(const Step&) = delete;
    Step& operator=(const Step&) = delete;

   private:
    FieldPath& place_;
  };

  /// JSON pointer (RFC 6901).
  std::string pointer() const;

  /// Throws InputError at this place: FILE:LINE:COLUMN where the file is known, else FILE.
  [[noreturn]] void refuse(Phrase found, Phrase expected) const;

 private:
  struct Part {
    std::string_view key;
    std::size_t index;
    bool is_index;
  };
  /// More than the tables nest: no field is deeper, whatever the file says.
  static constexpr std::size_t deepest = 16;

  void go_to(const Part& part) {
    if (depth_ == deepest) throw std::logic_error("a field table that nests too deep");
    trail_[depth_++] = part;
  }
  std::span<const Part> trail() const { return std::span(trail_).first(depth_); }
  JsonValue value() const;

  std::string_view file_;
  std::optional<JsonValue> root_;
  std::array<Part, deepest> trail_{};
  std::size_t depth_ = 0;
};

/// The keys of an object that was read, and the index of each one's field.
struct LastKeys {
  KeyOrder order;
  std::vector<std::size_t> fields;
};

/// What reading fields needs: the place, and the text for free keys, which are kept as typed.
class ReadContext : public FieldPath {
 public:
  ReadContext(std::string_view file, const JsonValue& root) : FieldPath(file, root) {}

  /// The JSON text of a value from the file, with blanks outside strings normalised.
  static std::string source_text(const JsonValue& value);

  /// The keys of the last object of this table.
  LastKeys& last_keys(const FieldTable& table) { return last_keys_[&table]; }

 private:
  std::map<const FieldTable*, LastKeys> last_keys_;
};

/// A value as messages name it: the text "ab", 135, true, null, an object, an empty list.
Sentence found_text(const JsonValue& value);

/// A text in quotes, fit to print.
std::string quoted(std::string_view text);

/// The expectation instead of `name`: with "; the nearest is NAME" where a candidate is similar.
Sentence with_nearest(Sentence expected, std::string_view name, std::span<const std::string_view> candidates);

}  // namespace seamtakt
