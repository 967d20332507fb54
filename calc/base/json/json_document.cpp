#include "base/json/json_document.hpp"

#include <cmath>
#include <stdexcept>

#include "base/json/json_scalars.hpp"
#include "base/json/json_scanner.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

JsonValue::Kind JsonValue::kind() const {
  switch (text_->text_[text_->entries_[index_].begin]) {
    case '{':
      return Kind::object;
    case '[':
      return Kind::array;
    case '"':
      return Kind::string;
    case 't':
    case 'f':
      return Kind::boolean;
    case 'n':
      return Kind::null;
    default:
      return Kind::number;
  }
}

bool JsonValue::boolean() const {
  return source() == "true";
}

bool JsonValue::is_integer() const {
  return is(Kind::number) && source().find_first_of(".eE") == std::string_view::npos &&
         std::abs(number()) <= largest_exact_integer;
}

double JsonValue::number() const {
  return json_number(source());
}

std::string JsonValue::string() const {
  return is_bare_string() ? std::string(bare_string()) : unescaped_json(source());
}

bool JsonValue::is_empty_string() const {
  return source().size() == 2;
}

std::size_t JsonValue::count() const {
  std::size_t count = 0;
  const auto visit = [&](const auto&, const JsonValue&) { ++count; };
  if (is(Kind::object))
    each_member(visit);
  else
    each_element(visit);
  return count;
}

/// After its last element, and any blanks, comes the closing bracket.
std::size_t JsonValue::end_of_holder() const {
  std::size_t at = text_->entries_[index_].begin + std::size_t{1};
  std::optional<JsonValue> last;
  const auto visit = [&](const auto&, const JsonValue& held) { last = held; };
  if (is(Kind::object))
    each_member(visit);
  else
    each_element(visit);
  if (last) at = last->end();
  return text_->text_.find_first_of("]}", at) + 1;
}

std::vector<JsonValue> JsonValue::elements() const {
  std::vector<JsonValue> all;
  each_element([&](std::size_t, const JsonValue& element) { all.push_back(element); });
  return all;
}

std::optional<JsonValue> JsonValue::member(std::string_view key) const {
  std::optional<JsonValue> found;
  if (is(Kind::object))
    each_member([&](std::string_view name, const JsonValue& value) {
      if (name == key) found = value;
    });
  return found;
}

JsonValue::Place JsonValue::place() const {
  Place place;
  const std::string_view text = text_->text_;
  const std::size_t end = text_->entries_[index_].begin;
  for (std::size_t at = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0; at < end; ++at) {
    if (text[at] == '\n') {
      ++place.line;
      place.column = 1;
    } else {
      place.column += begins_utf8_character(text[at]);
    }
  }
  return place;
}

JsonDocument::JsonDocument(std::string_view text, std::string file, const JsonLimits& limits,
                           std::size_t two_threads_from)
    : text_(text), file_(std::move(file)) {
  if (look_through(limits, two_threads_from)) return;
  entries_.reset();
  parse_json(text, file_, limits);
  throw std::logic_error(file_ + ": JSON that one reader accepts and the other refuses");
}

}  // namespace seamtakt
