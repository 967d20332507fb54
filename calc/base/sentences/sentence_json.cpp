#include "base/sentences/sentence_json.hpp"

#include <algorithm>

#include "base/sentences/language.hpp"
#include "base/sentences/sentence_text.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

using Kind = JsonNode::Kind;

void write_value(JsonWriter& json, const ArgumentValue& value);

struct WriteValue {
  JsonWriter& json;

  void operator()(const UnitValue& quantity) const {
    json.begin_object(JsonWriter::Layout::compact)
        .member("value", quantity.value)
        .member("unit", quantity.unit)
        .member("digits", quantity.digits)
        .end_object();
  }
  void operator()(std::int64_t count) const { json.value(count); }
  void operator()(const std::string& text) const { json.value(text); }
  void operator()(Word word) const {
    json.begin_object(JsonWriter::Layout::compact).member("word", word.english()).end_object();
  }
  void operator()(const std::vector<Sentence>& sentences) const {
    json.begin_array(JsonWriter::Layout::compact);
    for (const Sentence& each : sentences) {
      json.begin_object(JsonWriter::Layout::compact);
      write_sentence_members(json, each);
      json.end_object();
    }
    json.end_array();
  }
};

void write_value(JsonWriter& json, const ArgumentValue& value) {
  std::visit(WriteValue{json}, value);
}

/// Sentences in sentences; the program's own go to 2.
constexpr int deepest = 4;

std::optional<Sentence> sentence_in(const JsonValue& object, int depth);

std::optional<ArgumentValue> unit_value_of(const JsonValue& object) {
  const auto value = object.member("value"), unit = object.member("unit"), digits = object.member("digits");
  if (!value || !value->is(Kind::number) || !unit || !unit->is(Kind::string)) return std::nullopt;
  const int shown =
      digits && digits->is_integer() ? static_cast<int>(std::clamp(digits->number(), 0.0, 17.0)) : 4;
  const std::string name = unit->string();
  if (const Unit* known = find_unit(name)) return UnitValue{value->number(), known->name, shown};
  return TextView::plain_english().number({value->number(), "", shown}) + " " + name;
}

std::optional<ArgumentValue> sentences_of(const JsonValue& list, int depth) {
  std::vector<Sentence> sentences;
  bool all_known = true;
  list.each_element([&](std::size_t, const JsonValue& element) {
    auto sentence = element.is(Kind::object) ? sentence_in(element, depth + 1) : std::nullopt;
    if (sentence)
      sentences.push_back(std::move(*sentence));
    else
      all_known = false;
  });
  if (!all_known) return std::nullopt;
  return sentences;
}

std::optional<ArgumentValue> value_of(const JsonValue& value, int depth) {
  switch (value.kind()) {
    case Kind::number:
      if (!value.is_integer()) return std::nullopt;
      return static_cast<std::int64_t>(value.number());
    case Kind::string:
      return value.string();
    case Kind::array:
      return sentences_of(value, depth);
    case Kind::object: {
      const auto word = value.member("word");
      if (!word) return unit_value_of(value);
      if (!word->is(Kind::string)) return std::nullopt;
      const std::string english_text = word->string();
      if (const auto known = SentenceTable::find_word(english_text)) return *known;
      return english_text;
    }
    default:
      return std::nullopt;
  }
}

bool fills_all_holes(SentenceKey key, const std::vector<Argument>& arguments) {
  const SentenceForm* form = english().sentence(key.text());
  return std::all_of(form->parts.begin(), form->parts.end(), [&](const SentenceForm::Part& part) {
    return part.kind == SentenceForm::Part::Kind::text ||
           std::any_of(arguments.begin(), arguments.end(),
                       [&](const Argument& argument) { return part.text == argument.name; });
  });
}

/// A verbatim text or a word: "sentence" is null, and the one argument is "text".
std::optional<Sentence> text_alone(const JsonValue& arguments, int depth) {
  const auto text = arguments.member("text");
  auto value = text ? value_of(*text, depth) : std::nullopt;
  if (!value) return std::nullopt;
  if (const Word* word = std::get_if<Word>(&*value)) return Sentence(*word);
  if (auto* words = std::get_if<std::string>(&*value)) return Sentence::verbatim(std::move(*words));
  return std::nullopt;
}

std::optional<Sentence> sentence_in(const JsonValue& object, int depth) {
  const auto named = object.member("sentence"), given = object.member("arguments");
  if (depth > deepest || !named || !given || !given->is(Kind::object)) return std::nullopt;
  if (named->is(Kind::null)) return text_alone(*given, depth);
  const auto key = named->is(Kind::string) ? SentenceTable::find(named->string()) : std::nullopt;
  if (!key) return std::nullopt;
  std::vector<Argument> arguments;
  given->each_member([&](std::string_view name, const JsonValue& value) {
    const char* hole = SentenceTable::find_hole(*key, name);
    auto filled = hole ? value_of(value, depth) : std::nullopt;
    if (filled) arguments.emplace_back(hole, std::move(*filled));
  });
  if (!fills_all_holes(*key, arguments)) return std::nullopt;
  return Sentence(*key, std::move(arguments));
}

}  // namespace

void write_sentence_members(JsonWriter& json, const Sentence& sentence) {
  if (sentence.key().text().empty())
    json.null_member("sentence");
  else
    json.member("sentence", sentence.key().text());
  json.key("arguments").begin_object(JsonWriter::Layout::compact);
  for (const Argument& argument : sentence.arguments()) {
    json.key(argument.name);
    write_value(json, argument.value);
  }
  json.end_object();
}

Sentence sentence_of_members(const JsonValue& object, std::string text) {
  auto sentence = object.is(Kind::object) ? sentence_in(object, 0) : std::nullopt;
  return sentence ? std::move(*sentence) : Sentence::verbatim(std::move(text));
}

}  // namespace seamtakt
