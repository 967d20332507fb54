#include "base/csv/csv.hpp"
#include "base/json/json_document.hpp"
#include "base/json/json_writer.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/json_layout.hpp"

namespace seamtakt {

namespace {

using Kind = JsonValue::Kind;

/// A list from a file: its number of elements is checked even where the key needn't be there.
void require_list(const JsonValue& node, const FieldInfo& field, const FieldPath& place) {
  require_kind(node, node.kind() == Kind::array, field, place);
  const std::size_t count = node.count();
  if (count < field.least || count > field.most) place.refuse(count_text(count), field.expectation());
}

template <class List, class Write>
void write_list(const List& list, std::string& json, Write write) {
  json += '[';
  bool first = true;
  for (const auto& element : list) {
    if (!first) json += ", ";
    first = false;
    write(element, json);
  }
  json += ']';
}

double read_number(const JsonValue& node, const FieldInfo& field, const FieldPath& place) {
  if (node.kind() != Kind::number) place.refuse(found_text(node), field.element_expectation());
  return node.number();
}

/// An item that could be read as more than one, or lose its blanks, is quoted.
std::string item_text(const std::string& item) {
  const bool plain = item.find_first_of(",\"") == std::string::npos && trimmed(item).size() == item.size();
  if (plain && !item.empty()) return item;
  std::string text(1, '"');
  for (char c : item) text.append(c == '"' ? 2 : 1, c);
  text += '"';
  return text;
}

/// The items of a list as a person types it, quotes taken off.
std::vector<std::string> split_items(std::string_view text, const FieldPath& place) {
  std::vector<std::string> items;
  for (std::size_t at = 0; at <= text.size();) {
    while (at < text.size() && text[at] == ' ') ++at;
    std::string item;
    if (at < text.size() && text[at] == '"') {
      for (++at; at < text.size(); ++at) {
        if (text[at] == '"' && (at + 1 == text.size() || text[at + 1] != '"')) break;
        if (text[at] == '"') ++at;
        item += text[at];
      }
      if (at == text.size())
        place.refuse(Sentence("field.found.open-quote"_key, {{"text", quoted(text)}}),
                     "a quote at the end of the item"_word);
      const std::string_view rest = text.substr(at + 1, text.find(',', at) - at - 1);
      if (!trimmed(rest).empty())
        place.refuse(Sentence("field.found.after-quote"_key, {{"text", quoted(rest)}}), "a comma"_word);
      at += 1 + rest.size();
    } else {
      const std::string_view plain = text.substr(at, text.find(',', at) - at);
      item = trimmed(plain);
      at += plain.size();
    }
    items.push_back(std::move(item));
    ++at;
  }
  return items;
}

void check_bound(const std::optional<double>& bound, const FieldInfo& field, FieldPath& place,
                 std::size_t index) {
  FieldPath::Step step(place, index);
  if (bound) check_value(*bound, field, place);
}

}  // namespace

void check_count(std::size_t count, const FieldInfo& field, const FieldPath& place) {
  if (count == 0 && !field.required) return;
  if (count < field.least || count > field.most) place.refuse(count_text(count), field.expectation());
}

Sentence count_text(std::size_t count) {
  if (count == 0) return "an empty list"_word;
  return Sentence("field.found.list"_key, {{"count", count}});
}

void append_item(std::string& text, std::string_view item, std::string_view separator) {
  if (!text.empty()) text += separator;
  text += item;
}

std::vector<std::string_view> split_text(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  for (std::size_t at = 0;;) {
    const std::size_t end = text.find(separator, at);
    parts.push_back(trimmed(text.substr(at, end - at)));
    if (end == std::string_view::npos) return parts;
    at = end + 1;
  }
}

void read_value(Interval& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  require_kind(node, node.kind() == Kind::array, field, place);
  if (node.count() != 2) place.refuse(count_text(node.count()), field.expectation());
  value = {};
  node.each_element([&](std::size_t i, const JsonValue& bound) {
    FieldPath::Step step(place, i);
    if (!bound.is(Kind::null)) (i == 0 ? value.lower : value.upper) = read_number(bound, field, place);
  });
  check_value(value, field, place);
}

void check_value(const Interval& value, const FieldInfo& field, FieldPath& place) {
  check_bound(value.lower, field, place, 0);
  check_bound(value.upper, field, place, 1);
  if (!value.lower || !value.upper || *value.lower <= *value.upper) return;
  std::string bounds;
  write_value(value, bounds);
  place.refuse(bounds, "a lower bound that isn't above the upper one"_word);
}

void write_value(const Interval& value, std::string& json) {
  const auto write_bound = [&json](const std::optional<double>& bound) {
    if (bound) {
      append_json_number(json, *bound);
    } else {
      json += "null";
    }
  };
  json += '[';
  write_bound(value.lower);
  json += ", ";
  write_bound(value.upper);
  json += ']';
}

std::string value_text(const Interval& value) {
  std::string text;
  if (value.lower) text = number_text(*value.lower) + ' ';
  text += "..";
  if (value.upper) append_item(text, number_text(*value.upper), " ");
  return text;
}

void parse_value(Interval& value, std::string_view text, const FieldInfo& field, FieldPath& place) {
  const std::size_t dots = text.find("..");
  if (dots == std::string_view::npos)
    place.refuse(quoted(text), "two bounds, such as 2 .. 6, 2 .. or .. 6"_word);
  const std::string_view lower = trimmed(text.substr(0, dots)), upper = trimmed(text.substr(dots + 2));
  value = {};
  if (!lower.empty()) value.lower = parsed_number(lower, field, place);
  if (!upper.empty()) value.upper = parsed_number(upper, field, place);
  check_value(value, field, place);
}

void read_value(std::vector<std::string>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place) {
  require_list(node, field, place);
  value.clear();
  value.reserve(node.count());
  node.each_element([&](std::size_t i, const JsonValue& element) {
    FieldPath::Step step(place, i);
    if (!element.is(Kind::string) || element.is_empty_string())
      place.refuse(found_text(element), field.element_expectation());
    value.push_back(element.string());
  });
}

void check_value(const std::vector<std::string>& value, const FieldInfo& field, FieldPath& place) {
  check_count(value.size(), field, place);
  for (std::size_t i = 0; i < value.size(); ++i) {
    FieldPath::Step step(place, i);
    check_text(value[i], place);
    if (value[i].empty()) place.refuse("an empty text"_word, field.element_expectation());
  }
}

void write_value(const std::vector<std::string>& value, std::string& json) {
  write_list(value, json, [](const std::string& item, std::string& out) { append_json_string(out, item); });
}

std::string value_text(const std::vector<std::string>& value) {
  std::string text;
  for (const auto& item : value) append_item(text, item_text(item));
  return text;
}

void parse_value(std::vector<std::string>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place) {
  value = split_items(text, place);
  check_value(value, field, place);
}

void read_value(std::vector<double>& value, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  require_list(node, field, place);
  value.clear();
  value.reserve(node.count());
  node.each_element([&](std::size_t i, const JsonValue& element) {
    FieldPath::Step step(place, i);
    value.push_back(read_number(element, field, place));
    check_value(value.back(), field, place);
  });
}

void check_value(const std::vector<double>& value, const FieldInfo& field, FieldPath& place) {
  check_count(value.size(), field, place);
  for (std::size_t i = 0; i < value.size(); ++i) {
    FieldPath::Step step(place, i);
    check_value(value[i], field, place);
  }
}

void write_value(const std::vector<double>& value, std::string& json) {
  write_list(value, json, [](double item, std::string& out) { append_json_number(out, item); });
}

std::string value_text(const std::vector<double>& value) {
  std::string text;
  for (double item : value) append_item(text, number_text(item));
  return text;
}

void parse_value(std::vector<double>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place) {
  value.clear();
  for (std::string_view item : split_text(text, ',')) value.push_back(parsed_number(item, field, place));
  check_value(value, field, place);
}

}  // namespace seamtakt
