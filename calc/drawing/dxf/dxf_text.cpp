#include "drawing/dxf/dxf_text.hpp"

#include <charconv>
#include <cmath>
#include <string_view>

#include "drawing/refusal.hpp"

namespace seamtakt::drawing {

namespace {

/// Coordinates, in any unit: beyond it a double has no micrometres left.
constexpr double largest = 1e9;
constexpr std::size_t longest_line = 4096;

/// Kinds of values by group code, from the form's public reference (recalled).
bool is_real(int code) {
  return (code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239) ||
         (code >= 460 && code <= 469) || (code >= 1010 && code <= 1059);
}

bool is_whole(int code) {
  return (code >= 60 && code <= 99) || (code >= 170 && code <= 179) || (code >= 270 && code <= 289) ||
         (code >= 370 && code <= 389) || (code >= 400 && code <= 409) || (code >= 420 && code <= 429) ||
         (code >= 440 && code <= 459) || (code >= 1060 && code <= 1071);
}

std::string_view trimmed(std::string_view text) {
  const auto is_space = [](char c) { return c == ' ' || c == '\t' || c == '\r'; };
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

class DxfText {
 public:
  DxfText(std::string_view text, const std::string& path) : rest_(text), path_(path), bytes_(text.size()) {}

  void check() {
    bool has_section = false;
    while (true) {
      const int code = group_code();
      const std::string_view value = next(true);
      if (code == 0) entity_ = value;
      if (code == 0 && value == "SECTION") has_section = true;
      if (code == 0 && !has_section) refuse(value, "a DXF file: \"SECTION\" first");
      if (code == 0 && value == "EOF") return;
      if (is_real(code)) check_real(value);
      if (is_whole(code)) check_whole(value, is_count(code));
    }
  }

 private:
  [[noreturn]] void refuse(std::string_view found, const std::string& expected) const {
    throw Refusal(path_ + ":" + std::to_string(line_), "\"" + std::string(found.substr(0, 60)) + "\"",
                  expected);
  }

  std::string_view next(bool is_value) {
    if (rest_.empty())
      throw Refusal(path_ + ":" + std::to_string(line_), "the file's end",
                    is_value ? "a group's value" : "a whole DXF file that ends with \"EOF\"");
    const std::size_t end = std::min(rest_.find('\n'), rest_.size());
    const std::string_view line = rest_.substr(0, end);
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    ++line_;
    if (line.size() > longest_line) refuse(line, "lines of at most 4096 bytes");
    if (line.find('\0') != std::string_view::npos) refuse("a binary file", "a DXF file of text");
    return trimmed(line);
  }

  int group_code() {
    const std::string_view text = next(false);
    int code = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), code);
    if (error != std::errc() || end != text.data() + text.size() || code < -5 || code > 1071)
      refuse(text, "a group code");
    return code;
  }

  void check_real(std::string_view text) const {
    if (text.starts_with('+')) text.remove_prefix(1);
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || !(std::abs(value) <= largest))
      refuse(text, "a number up to 1e9");
  }

  /// How many of something an entity has. The library makes room for them before it has seen one.
  bool is_count(int code) const {
    const bool has_counts =
        entity_ == "LWPOLYLINE" || entity_ == "SPLINE" || entity_ == "HATCH" || entity_ == "LEADER";
    return has_counts && ((code >= 72 && code <= 79) || (code >= 90 && code <= 98));
  }

  /// The largest count that a file can hold is its own size: each thing takes two lines.
  void check_whole(std::string_view text, bool is_count) const {
    if (text.starts_with('+')) text.remove_prefix(1);
    long long value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || std::abs(value) > 0xffffffffLL)
      refuse(text, "a whole number");
    if (is_count && (value < 0 || static_cast<std::size_t>(value) > bytes_ / 4))
      refuse(text, "a count of what the file holds");
  }

  std::string_view rest_, entity_;
  const std::string& path_;
  std::size_t bytes_, line_ = 0;
};

}  // namespace

void check_dxf_text(const std::string& text, const std::string& path) {
  DxfText(text, path).check();
}

}  // namespace seamtakt::drawing
