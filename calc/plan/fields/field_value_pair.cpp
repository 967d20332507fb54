#include <type_traits>

#include "base/json/json_document.hpp"
#include "base/json/json_writer.hpp"
#include "base/units/units.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/json_layout.hpp"

/// Lists of pairs. A pair is typed as "a b", two texts as "a - b"; pairs are separated by ";".
namespace seamtakt {

namespace {

using Kind = JsonValue::Kind;

template <class T>
using Pairs = std::vector<std::array<T, 2>>;

void check_item(double item, const FieldInfo& field, FieldPath& place) {
  check_value(item, field, place);
}

void check_item(const std::string& item, const FieldInfo&, FieldPath& place) {
  check_text(item, place);
  if (item.empty()) place.refuse("an empty text"_word, "a text that isn't empty"_word);
}

template <class T>
T read_item(const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  constexpr Kind kind = std::is_same_v<T, double> ? Kind::number : Kind::string;
  if (node.kind() != kind) place.refuse(found_text(node), field.element_expectation());
  if constexpr (std::is_same_v<T, double>) {
    return node.number();
  } else {
    return node.string();
  }
}

template <class T>
void check_pairs(const Pairs<T>& pairs, const FieldInfo& field, FieldPath& place) {
  check_count(pairs.size(), field, place);
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    FieldPath::Step step(place, i);
    for (std::size_t k = 0; k < 2; ++k) {
      FieldPath::Step half(place, k);
      check_item(pairs[i][k], field, place);
    }
  }
}

template <class T>
void read_pairs(Pairs<T>& pairs, const JsonValue& node, const FieldInfo& field, FieldPath& place) {
  require_kind(node, node.kind() == Kind::array, field, place);
  if (node.count() < field.least || node.count() > field.most)
    place.refuse(count_text(node.count()), field.expectation());
  pairs.clear();
  pairs.reserve(node.count());
  node.each_element([&](std::size_t i, const JsonValue& element) {
    FieldPath::Step step(place, i);
    if (element.kind() != Kind::array) place.refuse(found_text(element), field.element_expectation());
    if (element.count() != 2) place.refuse(count_text(element.count()), field.element_expectation());
    auto& pair = pairs.emplace_back();
    element.each_element([&](std::size_t k, const JsonValue& item) {
      FieldPath::Step half(place, k);
      pair[k] = read_item<T>(item, field, place);
    });
  });
  check_pairs(pairs, field, place);
}

void write_item(double item, std::string& json) {
  append_json_number(json, item);
}

void write_item(const std::string& item, std::string& json) {
  append_json_string(json, item);
}

template <class T>
void write_pairs(const Pairs<T>& pairs, std::string& json) {
  json += '[';
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    if (i > 0) json += ", ";
    json += '[';
    write_item(pairs[i][0], json);
    json += ", ";
    write_item(pairs[i][1], json);
    json += ']';
  }
  json += ']';
}

/// The two halves of a typed pair; refuses where there aren't two.
std::array<std::string_view, 2> halves(std::string_view text, std::string_view separator, Word expected,
                                       const FieldPath& place) {
  const std::size_t at = text.find(separator);
  if (at == std::string_view::npos) place.refuse(quoted(text), expected);
  return {trimmed(text.substr(0, at)), trimmed(text.substr(at + separator.size()))};
}

}  // namespace

void read_value(std::vector<NumberPair>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place) {
  read_pairs(value, node, field, place);
}

void check_value(const std::vector<NumberPair>& value, const FieldInfo& field, FieldPath& place) {
  check_pairs(value, field, place);
}

void write_value(const std::vector<NumberPair>& value, std::string& json) {
  write_pairs(value, json);
}

std::string value_text(const std::vector<NumberPair>& value) {
  std::string text;
  for (const NumberPair& pair : value)
    append_item(text, number_text(pair[0]) + " " + number_text(pair[1]), "; ");
  return text;
}

void parse_value(std::vector<NumberPair>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place) {
  value.clear();
  for (std::string_view item : split_text(text, ';')) {
    const auto [first, second] = halves(item, " ", "two numbers: a b"_word, place);
    value.push_back({parsed_number(first, field, place), parsed_number(second, field, place)});
  }
  check_pairs(value, field, place);
}

void read_value(std::vector<TextPair>& value, const JsonValue& node, const FieldInfo& field,
                FieldPath& place) {
  read_pairs(value, node, field, place);
}

void check_value(const std::vector<TextPair>& value, const FieldInfo& field, FieldPath& place) {
  check_pairs(value, field, place);
}

void write_value(const std::vector<TextPair>& value, std::string& json) {
  write_pairs(value, json);
}

std::string value_text(const std::vector<TextPair>& value) {
  std::string text;
  for (const TextPair& pair : value) append_item(text, pair[0] + " - " + pair[1], "; ");
  return text;
}

void parse_value(std::vector<TextPair>& value, std::string_view text, const FieldInfo& field,
                 FieldPath& place) {
  value.clear();
  for (std::string_view item : split_text(text, ';')) {
    const auto [first, second] = halves(item, " - ", "two texts: from - to"_word, place);
    value.push_back({std::string(first), std::string(second)});
  }
  check_pairs(value, field, place);
}

}  // namespace seamtakt
