#include "plan/fields/field_path.hpp"

#include "base/error.hpp"
#include "base/json/json_document.hpp"
#include "base/text/spelling_suggestion.hpp"
#include "base/units/units.hpp"
#include "plan/fields/json_layout.hpp"

namespace seamtakt {

namespace {

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

}  // namespace

std::string FieldPath::pointer() const {
  std::string text;
  for (const Part& part : trail()) {
    text += '/';
    text += part.is_index ? std::to_string(part.index) : escaped_part(part.key);
  }
  return text;
}

JsonValue FieldPath::value() const {
  JsonValue value = *root_;
  for (const Part& part : trail()) {
    std::optional<JsonValue> child;
    if (part.is_index && value.is(JsonValue::Kind::array))
      value.each_element([&](std::size_t index, const JsonValue& element) {
        if (index == part.index) child = element;
      });
    if (!part.is_index) child = value.member(part.key);
    if (!child) break;  // a missing key is reported at the object that lacks it
    value = *child;
  }
  return value;
}

void FieldPath::refuse(Phrase found, Phrase expected) const {
  std::string where(printable(file_, 1000));
  if (root_) {
    const auto [line, column] = value().place();
    where += ":" + std::to_string(line) + ":" + std::to_string(column);
  }
  throw InputError(where, std::move(found), std::move(expected), pointer());
}

std::string ReadContext::source_text(const JsonValue& value) {
  return compact_json(value.source());
}

Sentence found_text(const JsonValue& value) {
  switch (value.kind()) {
    case JsonValue::Kind::null:
      return "null"_word;
    case JsonValue::Kind::boolean:
      return value.boolean() ? "true"_word : "false"_word;
    case JsonValue::Kind::number:
      return Sentence("field.found.number"_key,
                      {{"number", UnitValue{value.number(), "", UnitValue::all_digits}}});
    case JsonValue::Kind::string:
      if (value.is_empty_string()) return "an empty text"_word;
      return Sentence("field.found.text"_key, {{"text", quoted(value.string())}});
    case JsonValue::Kind::array:
      return value.count() == 0 ? "an empty list"_word : "a list"_word;
    case JsonValue::Kind::object:
      return "an object"_word;
  }
  return "a value"_word;
}

std::string quoted(std::string_view text) {
  std::string quotes("\"");
  quotes += printable(text);
  quotes += '"';
  return quotes;
}

Sentence with_nearest(Sentence expected, std::string_view name,
                      std::span<const std::string_view> candidates) {
  const std::string_view near = spelling_suggestion(name, candidates);
  if (near.empty()) return expected;
  return Sentence("field.nearest"_key, {{"expected", std::move(expected)}, {"nearest", printable(near)}});
}

}  // namespace seamtakt
