#include "cli/manual/schema_shape.hpp"

#include <stdexcept>
#include <vector>

#include "base/json/json_writer.hpp"

namespace seamtakt::cli {

namespace {

bool is_name(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-';
}

/// Reads a shape from its beginning, and returns JSON on one line.
class ShapeReader {
 public:
  explicit ShapeReader(std::string_view shape) : shape_(shape) {}

  std::string all() {
    std::string schema = choice();
    if (skip() != '\0') fail();
    return schema;
  }

 private:
  [[noreturn]] void fail() const {
    throw std::logic_error("a shape that can't be read at \"" + std::string(shape_.substr(at_)) + "\"");
  }

  /// The next character that isn't a blank; 0 at the end.
  char skip() {
    while (at_ < shape_.size() && shape_[at_] == ' ') ++at_;
    return at_ < shape_.size() ? shape_[at_] : '\0';
  }
  bool take(char c) {
    if (skip() != c) return false;
    ++at_;
    return true;
  }
  void need(char c) {
    if (!take(c)) fail();
  }
  std::string name() {
    skip();
    const std::size_t begin = at_;
    while (at_ < shape_.size() && is_name(shape_[at_])) ++at_;
    if (at_ == begin) fail();
    return std::string(shape_.substr(begin, at_ - begin));
  }

  std::string choice() {
    std::string first = maybe();
    if (skip() != '|') return first;
    std::string all = first;
    while (take('|')) all += ", " + maybe();
    return "{\"anyOf\": [" + all + "]}";
  }

  std::string maybe() {
    std::string schema = value();
    if (!take('?')) return schema;
    // A kind alone: {"type": ["number", "null"]}.
    constexpr std::string_view type = R"({"type": ")";
    if (schema.starts_with(type)) {
      const std::size_t end = schema.find('"', type.size());
      return R"({"type": [")" + schema.substr(type.size(), end - type.size()) + R"(", "null"])" +
             schema.substr(end + 1);
    }
    return "{\"anyOf\": [" + schema + ", {\"type\": \"null\"}]}";
  }

  std::string value() {
    switch (skip()) {
      case '[':
        return list();
      case '<':
        return map();
      case '{':
        return object();
      case '@':
        ++at_;
        return "{\"$ref\": \"#/$defs/" + name() + "\"}";
      case '"':
        return word();
      default:
        return kind();
    }
  }

  std::string list() {
    need('[');
    const std::string inner = choice();
    need(']');
    return "{\"type\": \"array\", \"items\": " + inner + "}";
  }

  std::string map() {
    need('<');
    const std::string inner = choice();
    need('>');
    return "{\"type\": \"object\", \"additionalProperties\": " + inner + "}";
  }

  std::string object() {
    need('{');
    std::string properties, required;
    while (!take('}')) {
      const std::string key = json_string(name());
      if (!take('?')) required += (required.empty() ? "" : ", ") + key;
      need(':');
      properties += (properties.empty() ? "" : ", ") + key + ": " + choice();
      take(',');
    }
    return "{\"type\": \"object\", \"properties\": {" + properties + "}, \"required\": [" + required +
           "], \"additionalProperties\": false}";
  }

  std::string word() {
    need('"');
    const std::size_t end = shape_.find('"', at_);
    if (end == std::string_view::npos) fail();
    const std::string text(shape_.substr(at_, end - at_));
    at_ = end + 1;
    return "{\"const\": " + json_string(text) + "}";
  }

  std::string kind() {
    const std::string is = name();
    if (is == "number") return R"({"type": "number"})";
    if (is == "whole") return R"({"type": "integer"})";
    if (is == "text") return R"({"type": "string"})";
    if (is == "truth") return R"({"type": "boolean"})";
    if (is == "any") return "true";
    if (is == "measure")
      return R"({"type": ["number", "array", "null"], "items": {"type": ["number", "null"]}})";
    if (is == "scalar") return R"({"type": ["number", "string", "boolean", "array", "null"]})";
    fail();
  }

  std::string_view shape_;
  std::size_t at_ = 0;
};

}  // namespace

std::string schema_of_shape(std::string_view shape) {
  return ShapeReader(shape).all();
}

}  // namespace seamtakt::cli
