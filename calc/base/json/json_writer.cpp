#include "base/json/json_writer.hpp"

#include <charconv>
#include <cmath>
#include <stdexcept>

#include "base/text/utf8.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t indent = 2;

/// Whole numbers up to 2^53 are written as such, which is what a reader expects of a count.
bool is_whole(double number) {
  return std::abs(number) <= 9007199254740992.0 && number == std::trunc(number);
}

}  // namespace

void append_json_value(std::string& out, double number) {
  if (!std::isfinite(number)) throw std::logic_error("JSON: a number that isn't finite");
  char text[32];
  if (is_whole(number)) {
    const auto end = std::to_chars(text, text + sizeof text, static_cast<std::int64_t>(number));
    out.append(text, end.ptr);
  } else {
    append_number_text(out, number);
  }
}

namespace {

bool is_plain(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x20 && byte < 0x7f && byte != '"' && byte != '\\';
}

void append_escape(std::string& out, unsigned char byte) {
  constexpr std::string_view letters = "btnvfr";  // 8 to 13; \v isn't JSON's
  out += '\\';
  if (byte == '"' || byte == '\\') {
    out += static_cast<char>(byte);
  } else if (byte >= 8 && byte <= 13 && byte != 11) {
    out += letters[byte - 8u];
  } else {
    constexpr char digits[] = "0123456789abcdef";
    out += "u00";
    out += digits[byte >> 4];
    out += digits[byte & 15];
  }
}

}  // namespace

void append_json_string(std::string& out, std::string_view text) {
  out += '"';
  for (std::size_t at = 0; at < text.size();) {
    std::size_t plain = at;
    while (plain < text.size() && is_plain(text[plain])) ++plain;
    out.append(text, at, plain - at);
    at = plain;
    if (at == text.size()) break;
    const auto byte = static_cast<unsigned char>(text[at]);
    if (byte < 0x80) {
      append_escape(out, byte);
      ++at;
      continue;
    }
    const std::size_t size = utf8_character(text, at).bytes;
    if (size == 0) out += "\xef\xbf\xbd";
    out.append(text, at, size);
    at += size == 0 ? 1 : size;
  }
  out += '"';
}

std::string json_string(std::string_view text) {
  std::string out;
  append_json_string(out, text);
  return out;
}

void JsonWriter::separate(Level& level) {
  if (!level.empty) text_ += ',';
  if (!level.compact) {
    text_ += '\n';
    text_.append(indent * levels_.size(), ' ');
  } else if (!level.empty) {
    text_ += ' ';
  }
  level.empty = false;
}

void JsonWriter::before_value() {
  if (after_key_) {
    after_key_ = false;
    return;
  }
  if (levels_.empty()) {
    if (!text_.empty()) throw std::logic_error("JSON: a second document");
    return;
  }
  if (levels_.back().closing == '}') throw std::logic_error("JSON: a value without a key in an object");
  separate(levels_.back());
}

JsonWriter& JsonWriter::key(std::string_view name) {
  if (levels_.empty() || levels_.back().closing != '}' || after_key_) {
    throw std::logic_error("JSON: a key outside of an object");
  }
  separate(levels_.back());
  append_json_string(text_, name);
  text_ += ": ";
  after_key_ = true;
  return *this;
}

JsonWriter& JsonWriter::begin(char opening, Layout layout) {
  before_value();
  text_ += opening;
  const bool compact = layout == Layout::compact || (!levels_.empty() && levels_.back().compact);
  levels_.push_back({opening == '{' ? '}' : ']', compact});
  return *this;
}

JsonWriter& JsonWriter::end(char closing) {
  if (levels_.empty() || levels_.back().closing != closing || after_key_) {
    throw std::logic_error("JSON: a bracket that closes nothing");
  }
  const Level level = levels_.back();
  levels_.pop_back();
  if (!level.compact && !level.empty) {
    text_ += '\n';
    text_.append(indent * levels_.size(), ' ');
  }
  text_ += closing;
  return *this;
}

JsonWriter& JsonWriter::literal(std::string_view text) {
  before_value();
  text_ += text;
  return *this;
}

JsonWriter& JsonWriter::value(double number) {
  before_value();
  append_json_value(text_, number);
  return *this;
}

JsonWriter& JsonWriter::value(std::string_view text) {
  before_value();
  append_json_string(text_, text);
  return *this;
}

JsonWriter& JsonWriter::value(std::span<const double> numbers) {
  begin_array(Layout::compact);
  for (double number : numbers) value(number);
  return end_array();
}

std::string JsonWriter::element_lead() const {
  if (levels_.empty() || levels_.back().closing != ']')
    throw std::logic_error("JSON: elements outside of an array");
  if (levels_.back().compact) return {};
  return std::string("\n").append(indent * levels_.size(), ' ');
}

JsonWriter& JsonWriter::written_elements(std::string_view elements) {
  if (levels_.empty() || levels_.back().closing != ']')
    throw std::logic_error("JSON: elements outside of an array");
  levels_.back().empty = false;
  text_ += elements;
  return *this;
}

std::string JsonWriter::take_part() {
  parted_ = true;
  std::string text;
  std::swap(text, text_);
  return text;
}

std::string JsonWriter::take() {
  if (!levels_.empty() || (text_.empty() && !parted_)) throw std::logic_error("JSON: an unfinished document");
  text_ += '\n';
  std::string text = take_part();
  parted_ = false;
  return text;
}

}  // namespace seamtakt
