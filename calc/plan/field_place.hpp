#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

struct JsonNode;

/// Where in a plan one stands: the keys and indexes from its root. Costs nothing much until an error asks for
/// the JSON pointer and the place in the file.
class FieldPlace {
 public:
  /// `file` names the source in messages. `root` is what was read from it, for line and column; nullptr for a
  /// plan in memory. Both are borrowed.
  explicit FieldPlace(std::string_view file, const JsonNode* root = nullptr) : file_(file), root_(root) {}

  /// Enters a key or an index for as long as it lives.
  class Step {
   public:
    Step(FieldPlace& place, std::string_view key) : place_(place) {
      place_.trail_.push_back({key, 0, false});
    }
    Step(FieldPlace& place, std::size_t index) : place_(place) { place_.trail_.push_back({{}, index, true}); }
    ~Step() { place_.trail_.pop_back(); }
    Step(const Step&) = delete;
    Step& operator=(const Step&) = delete;

   private:
    FieldPlace& place_;
  };

  /// JSON pointer (RFC 6901).
  std::string pointer() const;

  /// Throws InputError at this place: FILE:LINE:COLUMN where the file is known, else FILE.
  [[noreturn]] void refuse(const std::string& found, const std::string& expected) const;

 private:
  struct Part {
    std::string_view key;
    std::size_t index;
    bool is_index;
  };
  const JsonNode* node() const;

  std::string_view file_;
  const JsonNode* root_;
  std::vector<Part> trail_;
};

/// What reading fields needs: the place, and the file's text for free keys, which are kept as typed.
class ReadContext : public FieldPlace {
 public:
  ReadContext(std::string_view file, const JsonNode& root, std::string_view source)
      : FieldPlace(file, &root), source_(source) {}

  /// The JSON text of a node as it stands in the file, blanks outside strings normalised.
  std::string source_text(const JsonNode& node);

 private:
  std::size_t offset_of(const JsonNode& node);

  std::string_view source_;
  std::vector<std::size_t> line_starts_;  ///< filled when first asked for
  std::uint32_t last_line_ = 0, last_column_ = 1;
  std::size_t last_offset_ = 0;
};

/// A value as messages name it: the text "ab", 135, true, null, an object, an empty list.
std::string found_text(const JsonNode& node);

/// A text in quotes, fit to print.
std::string quoted(std::string_view text);

/// "a, b and c" of names; with `or_`, "a, b or c".
std::string listed(const std::vector<std::string_view>& names, bool or_ = false);

/// "; the nearest is NAME" where a candidate is near to `name`, else nothing.
std::string nearest_hint(std::string_view name, const std::vector<std::string_view>& candidates);

}  // namespace seamtakt
