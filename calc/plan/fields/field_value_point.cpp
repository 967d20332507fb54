#include <cmath>

#include "base/json/json_document.hpp"
#include "base/limits.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/json_layout.hpp"

namespace seamtakt {

namespace {

using Kind = JsonValue::Kind;

UnitValue coordinate(double at_mm) {
  return {at_mm, "mm", UnitValue::all_digits};
}

Sentence coordinate_expectation() {
  return Sentence("field.number.in-unit"_key, {{"number", "a number"_word}, {"quantity", coordinate(0)}});
}

void check_coordinate(double at_mm, const FieldInfo& field, FieldPath& place) {
  if (std::abs(at_mm) > largest_coordinate_mm)
    place.refuse(Sentence("field.found.number-alone"_key, {{"number", coordinate(at_mm)}}),
                 Sentence("field.number.from-to"_key, {{"number", "a number"_word},
                                                       {"low", coordinate(-largest_coordinate_mm)},
                                                       {"high", coordinate(largest_coordinate_mm)}}));
  check_value(at_mm, field, place);
}

void check_point(const Point_mm& point, const FieldInfo& field, FieldPath& place) {
  for (std::size_t i = 0; i < point.size(); ++i) {
    FieldPath::Step step(place, i);
    check_coordinate(point[i], field, place);
  }
}

Point_mm read_point(const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  Point_mm point{};
  if (node.kind() != Kind::array) place.refuse(found_text(node), point_expectation());
  if (node.count() != point.size()) place.refuse(count_text(node.count()), point_expectation());
  node.each_element([&](std::size_t i, const JsonValue& value) {
    FieldPath::Step step(place, i);
    if (!value.is(Kind::number)) place.refuse(found_text(value), coordinate_expectation());
    point[i] = value.number();
    check_coordinate(point[i], field, place);
  });
  return point;
}

Point_mm parsed_point(std::string_view text, const FieldInfo& field, FieldPath& place) {
  Point_mm point{};
  std::size_t count = 0;
  for (std::string_view item : split_text(text, ' ')) {
    if (item.empty()) continue;
    if (count == point.size()) place.refuse(quoted(text), "three numbers: x y z"_word);
    point[count++] = parsed_number(item, field, place);
  }
  if (count < point.size()) place.refuse(quoted(text), "three numbers: x y z"_word);
  return point;
}

}  // namespace

void read_value(Point_mm& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  value = read_point(node, field, place);
}

void check_value(const Point_mm& value, const FieldInfo& field, FieldPath& place) {
  check_point(value, field, place);
}

bool is_written(const Point_mm& value, const Point_mm& standard, const FieldInfo& field, bool was_in_file) {
  for (std::size_t i = 0; i < value.size(); ++i)
    if (is_written(value[i], standard[i], field, was_in_file)) return true;
  return false;
}

void write_value(const Point_mm& value, std::string& json) {
  json += '[';
  append_json_number(json, value[0]);
  json += ", ";
  append_json_number(json, value[1]);
  json += ", ";
  append_json_number(json, value[2]);
  json += ']';
}

std::string value_text(const Point_mm& value) {
  return number_text(value[0]) + " " + number_text(value[1]) + " " + number_text(value[2]);
}

void parse_value(Point_mm& value, std::string_view text, const FieldInfo& field, FieldPath& place) {
  value = parsed_point(text, field, place);
  check_point(value, field, place);
}

void read_value(std::vector<Point_mm>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place) {
  require_kind(node, node.kind() == Kind::array, field, place);
  if (node.count() < field.least || node.count() > field.most)
    place.refuse(count_text(node.count()), field.expectation());
  value.clear();
  value.reserve(node.count());
  node.each_element([&](std::size_t i, const JsonValue& element) {
    FieldPath::Step step(place, i);
    value.push_back(read_point(element, field, place));
  });
}

void check_value(const std::vector<Point_mm>& value, const FieldInfo& field, FieldPath& place) {
  check_count(value.size(), field, place);
  for (std::size_t i = 0; i < value.size(); ++i) {
    FieldPath::Step step(place, i);
    check_point(value[i], field, place);
  }
}

void write_value(const std::vector<Point_mm>& value, std::string& json) {
  json += '[';
  for (std::size_t i = 0; i < value.size(); ++i) {
    if (i > 0) json += ", ";
    write_value(value[i], json);
  }
  json += ']';
}

std::string value_text(const std::vector<Point_mm>& value) {
  std::string text;
  for (const auto& point : value) append_item(text, value_text(point), "; ");
  return text;
}

void parse_value(std::vector<Point_mm>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place) {
  value.clear();
  for (std::string_view item : split_text(text, ';')) value.push_back(parsed_point(item, field, place));
  check_value(value, field, place);
}

}  // namespace seamtakt
