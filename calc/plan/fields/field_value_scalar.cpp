#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>

#include "base/csv/csv.hpp"
#include "base/json/json_document.hpp"
#include "base/json/json_writer.hpp"
#include "base/limits.hpp"
#include "base/text/utf8.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/json_layout.hpp"

namespace seamtakt {

namespace {

/// No quantity of a plan is larger or, except for 0, smaller than this. The bounds keep what follows from a
/// plan finite however the numbers are multiplied and divided.
constexpr double largest = 1e15, smallest = 1e-15;

int two_digits(std::string_view text) {
  return (text[0] - '0') * 10 + (text[1] - '0');
}

bool is_date(std::string_view text) {
  constexpr std::string_view form = "dddd-dd-dd";
  if (text.size() != form.size()) return false;
  for (std::size_t i = 0; i < form.size(); ++i) {
    const bool is_digit = text[i] >= '0' && text[i] <= '9';
    if (form[i] == 'd' ? !is_digit : text[i] != form[i]) return false;
  }
  const int year = two_digits(text) * 100 + two_digits(text.substr(2));
  return std::chrono::year_month_day(std::chrono::year(year),
                                     std::chrono::month(static_cast<unsigned>(two_digits(text.substr(5)))),
                                     std::chrono::day(static_cast<unsigned>(two_digits(text.substr(8)))))
      .ok();
}

/// A number in the unit in which the field's bounds are shown.
Sentence found_number(double value, const FieldInfo& field) {
  return Sentence("field.found.number-alone"_key,
                  {{"number", UnitValue{value, field.unit, UnitValue::all_digits}}});
}

/// A field's requirements for a text that a file can contain.
void check_word(const std::string& value, const FieldInfo& field, const FieldPath& place) {
  if (value.empty()) {
    if (field.required) place.refuse("an empty text"_word, field.expectation());
    return;
  }
  if (field.kind == FieldKind::choice && std::ranges::find(field.choices, value) == field.choices.end())
    place.refuse(quoted(value), with_nearest(field.expectation(), value, field.choices));
  if (field.kind == FieldKind::date && !is_date(value)) place.refuse(quoted(value), field.expectation());
}

}  // namespace

void require_kind(const JsonValue& node, bool is_right, const FieldInfo& field, const FieldPath& place) {
  if (!is_right) place.refuse(found_text(node), field.expectation());
}

void check_text(std::string_view text, const FieldPath& place) {
  const std::size_t limit = JsonLimits{}.string_bytes;
  if (text.size() > limit)
    place.refuse(Sentence("field.found.text-size"_key, {{"bytes", text.size()}}),
                 Sentence("refusal.at-most"_key, {{"count", limit}}));
  if (text.find('\0') != std::string_view::npos)
    place.refuse("the character NUL in a text"_word, "text without NUL"_word);
  if (first_invalid_utf8(text) != std::string_view::npos)
    place.refuse("bytes that aren't UTF-8"_word, "UTF-8 text"_word);
}

double parsed_number(std::string_view text, const FieldInfo& field, FieldPath& place) {
  double value = 0;
  if (!parse_number(trimmed(text), value)) place.refuse(quoted(text), field.element_expectation());
  return value;
}

void read_value(std::string& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  if (node.kind() != JsonValue::Kind::string)
    place.refuse(found_text(node), field.kind == FieldKind::choice
                                       ? Sentence("field.text-of"_key, {{"choice", field.expectation()}})
                                       : field.expectation());
  if (node.is_empty_string() && field.kind != FieldKind::text)
    place.refuse("an empty text"_word, field.expectation());
  value = node.string();
  check_word(value, field, place);  // the JSON reader has seen that the text is one that a file can carry
}

void check_value(const std::string& value, const FieldInfo& field, FieldPath& place) {
  check_text(value, place);
  check_word(value, field, place);
}

bool is_written(const std::string& value, const std::string& standard, const FieldInfo& field,
                bool was_in_file) {
  if (field.required) return true;
  if (value.empty()) return was_in_file && field.kind == FieldKind::text;
  return was_in_file || value != standard;
}

void write_value(const std::string& value, std::string& json) {
  append_json_string(json, value);
}

std::string value_text(const std::string& value) {
  return value;
}

void parse_value(std::string& value, std::string_view text, const FieldInfo& field, FieldPath& place) {
  value = field.kind == FieldKind::text ? text : trimmed(text);
  check_value(value, field, place);
}

void read_value(double& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  if (node.kind() != JsonValue::Kind::number)
    place.refuse(found_text(node),
                 field.kind == FieldKind::number ? field.expectation() : field.element_expectation());
  value = node.number();
  check_value(value, field, place);
}

void check_value(double value, const FieldInfo& field, FieldPath& place) {
  if (!field.range.contains(value)) place.refuse(found_number(value, field), field.element_expectation());
  const double size = std::abs(value);
  if (size > largest || (size < smallest && size != 0))
    place.refuse(number_text(value), "a number of usual size (0, or 1e-15 to 1e15)"_word);
  if (value > longest_plan_time_s && std::string_view(field.unit) == "s")
    place.refuse(number_text(value),
                 Sentence("field.time.at-most"_key,
                          {{"time", UnitValue{longest_plan_time_s, "s", UnitValue::all_digits}}}));
}

bool is_written(double value, double standard, const FieldInfo& field, bool was_in_file) {
  return field.required || was_in_file || value != standard;
}

void write_value(double value, std::string& json) {
  append_json_number(json, value);
}

std::string value_text(double value) {
  return number_text(value);
}

void parse_value(double& value, std::string_view text, const FieldInfo& field, FieldPath& place) {
  value = parsed_number(text, field, place);
  check_value(value, field, place);
}

void read_value(int& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  const bool fits = node.is_integer() && std::abs(node.number()) <= std::numeric_limits<int>::max();
  require_kind(node, node.kind() == JsonValue::Kind::number && fits, field, place);
  value = static_cast<int>(node.number());
  check_value(value, field, place);
}

void check_value(int value, const FieldInfo& field, FieldPath& place) {
  if (!field.range.contains(value)) place.refuse(found_number(value, field), field.element_expectation());
}

bool is_written(int value, int standard, const FieldInfo& field, bool was_in_file) {
  return field.required || was_in_file || value != standard;
}

void write_value(int value, std::string& json) {
  json += std::to_string(value);
}

std::string value_text(int value) {
  return std::to_string(value);
}

void parse_value(int& value, std::string_view text, const FieldInfo& field, FieldPath& place) {
  const double number = parsed_number(text, field, place);
  if (number != std::trunc(number) || std::abs(number) > std::numeric_limits<int>::max())
    place.refuse(quoted(text), field.element_expectation());
  value = static_cast<int>(number);
  check_value(value, field, place);
}

void read_value(bool& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  require_kind(node, node.kind() == JsonValue::Kind::boolean, field, place);
  value = node.boolean();
}

void check_value(bool, const FieldInfo&, FieldPath&) {}

void write_value(bool value, std::string& json) {
  json += value ? "true" : "false";
}

std::string value_text(bool value) {
  return value ? "yes" : "no";
}

void parse_value(bool& value, std::string_view text, const FieldInfo&, FieldPath& place) {
  const std::string_view word = trimmed(text);
  if (word != "yes" && word != "no" && word != "true" && word != "false")
    place.refuse(quoted(text), "yes or no"_word);
  value = word == "yes" || word == "true";
}

}  // namespace seamtakt
