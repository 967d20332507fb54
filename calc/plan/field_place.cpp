#include "plan/field_place.hpp"

#include "base/error.hpp"
#include "base/json_node.hpp"
#include "base/nearest.hpp"
#include "base/units.hpp"
#include "plan/json_layout.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";

std::string escaped_part(std::string_view key) {
  std::string part;
  for (char c : key) {
    if (c == '~') {
      part += "~0";
    } else if (c == '/') {
      part += "~1";
    } else {
      part += c;
    }
  }
  return part;
}

/// Byte after `count` characters of UTF-8 text from `at` on.
std::size_t skip_characters(std::string_view text, std::size_t at, std::size_t count) {
  for (; count > 0 && at < text.size(); --count) {
    do ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xc0) == 0x80);
  }
  return at;
}

}  // namespace

std::string FieldPlace::pointer() const {
  std::string text;
  for (const Part& part : trail_) {
    text += '/';
    text += part.is_index ? std::to_string(part.index) : escaped_part(part.key);
  }
  return text;
}

const JsonNode* FieldPlace::node() const {
  const JsonNode* node = root_;
  for (const Part& part : trail_) {
    if (node == nullptr) break;
    const JsonNode* child = nullptr;
    if (!part.is_index) {
      child = node->find(part.key);
    } else if (part.index < node->elements.size()) {
      child = &node->elements[part.index];
    }
    if (child == nullptr) break;  // what is missing is reported at the object that lacks it
    node = child;
  }
  return node;
}

void FieldPlace::refuse(const std::string& found, const std::string& expected) const {
  std::string where(printable(file_, 1000));
  if (const JsonNode* at = node()) where += ":" + std::to_string(at->line) + ":" + std::to_string(at->column);
  throw InputError(where, found, expected, pointer());
}

std::size_t ReadContext::offset_of(const JsonNode& node) {
  if (line_starts_.empty()) {
    line_starts_.push_back(source_.starts_with(byte_order_mark) ? byte_order_mark.size() : 0);
    for (std::size_t at = source_.find('\n'); at != std::string_view::npos; at = source_.find('\n', at + 1))
      line_starts_.push_back(at + 1);
  }
  // A file may be one long line, so the search goes on where the last one ended.
  if (last_line_ != node.line || last_column_ > node.column) {
    last_line_ = node.line;
    last_column_ = 1;
    last_offset_ = line_starts_[node.line - 1];
  }
  last_offset_ = skip_characters(source_, last_offset_, node.column - last_column_);
  last_column_ = node.column;
  return last_offset_;
}

std::string ReadContext::source_text(const JsonNode& node) {
  const std::size_t begin = offset_of(node);
  return compact_json(source_.substr(begin, json_value_end(source_, begin) - begin));
}

std::string found_text(const JsonNode& node) {
  switch (node.kind) {
    case JsonNode::Kind::null:
      return "null";
    case JsonNode::Kind::boolean:
      return node.boolean ? "true" : "false";
    case JsonNode::Kind::number:
      return "the number " + number_text(node.number);
    case JsonNode::Kind::string:
      return node.string.empty() ? "an empty text" : "the text " + quoted(node.string);
    case JsonNode::Kind::array:
      return node.elements.empty() ? "an empty list" : "a list";
    case JsonNode::Kind::object:
      return "an object";
  }
  return "a value";
}

std::string quoted(std::string_view text) {
  std::string quotes("\"");
  quotes += printable(text);
  quotes += '"';
  return quotes;
}

std::string listed(const std::vector<std::string_view>& names, bool or_) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += i + 1 < names.size() ? ", " : (or_ ? " or " : " and ");
    text += names[i];
  }
  return text;
}

std::string nearest_hint(std::string_view name, const std::vector<std::string_view>& candidates) {
  const std::string_view near = nearest(name, candidates);
  return near.empty() ? std::string() : "; the nearest is " + printable(near);
}

}  // namespace seamtakt
