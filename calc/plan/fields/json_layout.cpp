#include "plan/fields/json_layout.hpp"

#include <cmath>
#include <vector>

#include "base/error.hpp"
#include "base/text/utf8.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t indent_step = 2;

/// Byte after the string whose opening quote is at `begin`.
std::size_t string_end(std::string_view json, std::size_t begin) {
  std::size_t at = begin + 1;
  while (at < json.size() && json[at] != '"') at += json[at] == '\\' ? 2 : 1;
  return at < json.size() ? at + 1 : json.size();
}

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}
bool opens(char c) {
  return c == '[' || c == '{';
}
bool closes(char c) {
  return c == ']' || c == '}';
}

/// For each opening bracket, in order of their places, the byte after its closing one.
std::vector<std::size_t> bracket_ends(std::string_view json) {
  std::vector<std::size_t> ends, open;
  for (std::size_t at = 0; at < json.size();) {
    if (json[at] == '"') {
      at = string_end(json, at);
      continue;
    }
    if (opens(json[at])) {
      open.push_back(ends.size());
      ends.push_back(json.size());
    } else if (closes(json[at]) && !open.empty()) {
      ends[open.back()] = at + 1;
      open.pop_back();
    }
    ++at;
  }
  return ends;
}

class Layout {
 public:
  Layout(std::string_view json, std::size_t width) : json_(json), ends_(bracket_ends(json)), width_(width) {}

  std::string run() {
    out_.reserve(json_.size() + json_.size() / 4 + 2);
    for (std::size_t at = 0; at < json_.size();) at = step(at);
    out_ += '\n';
    return std::move(out_);
  }

 private:
  std::size_t step(std::size_t at) {
    const char c = json_[at];
    if (c == '"') return copy(at, string_end(json_, at));
    if (opens(c)) return open(at);
    if (closes(c)) {
      --depth_;
      new_line();
    }
    if (c != ',') return copy(at, at + 1);
    copy(at, at + 1);
    new_line();
    return at + 2;  // the comma and its blank
  }

  std::size_t open(std::size_t at) {
    const std::size_t end = ends_[bracket_];
    const bool is_short =
        end - at <= 4 * width_ && column_ + utf8_character_count(json_.substr(at, end - at)) < width_;
    if (is_short || end - at == 2) {
      while (bracket_ < ends_.size() && ends_[bracket_] <= end) ++bracket_;
      return copy(at, end);
    }
    ++bracket_;
    ++depth_;
    copy(at, at + 1);
    new_line();
    return at + 1;
  }

  std::size_t copy(std::size_t begin, std::size_t end) {
    out_ += json_.substr(begin, end - begin);
    column_ += utf8_character_count(json_.substr(begin, end - begin));
    return end;
  }

  void new_line() {
    out_ += '\n';
    out_.append(depth_ * indent_step, ' ');
    column_ = depth_ * indent_step;
  }

  std::string_view json_;
  std::vector<std::size_t> ends_;
  std::size_t width_;
  std::size_t bracket_ = 0, depth_ = 0, column_ = 0;
  std::string out_;
};

}  // namespace

void append_json_number(std::string& json, double value) {
  if (!std::isfinite(value)) throw InputError("plan", number_text(value), "a finite number"_word);
  // Readers of JSON differ on the sign of -0, and a plan has no use for it.
  json += number_text(value == 0 ? 0.0 : value);
}

std::size_t json_value_end(std::string_view json, std::size_t begin) {
  if (json[begin] == '"') return string_end(json, begin);
  std::size_t depth = 0, at = begin;
  while (at < json.size()) {
    const char c = json[at];
    if (c == '"') {
      at = string_end(json, at);
      continue;
    }
    if (depth == 0 && at > begin && (is_blank(c) || c == ',' || closes(c))) return at;
    if (opens(c)) ++depth;
    if (closes(c) && --depth == 0) return at + 1;
    ++at;
  }
  return json.size();
}

std::string compact_json(std::string_view json) {
  std::string compact;
  compact.reserve(json.size());
  for (std::size_t at = 0; at < json.size();) {
    const char c = json[at];
    const std::size_t end = c == '"' ? string_end(json, at) : at + 1;
    if (!is_blank(c)) compact += json.substr(at, end - at);
    if (c == ',' || c == ':') compact += ' ';
    at = end;
  }
  return compact;
}

std::string layout_json(std::string_view compact, std::size_t width) {
  return Layout(compact, width).run();
}

}  // namespace seamtakt
