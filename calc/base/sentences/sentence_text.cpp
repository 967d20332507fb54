#include "base/sentences/sentence_text.hpp"

#include <algorithm>
#include <stdexcept>

namespace seamtakt {

namespace {

using Part = SentenceForm::Part;

/// A number in another unit than it was chosen in needs some digits: a whole number of millimetres is no
/// whole inch.
constexpr int least_converted_digits = 3;

std::string digits_text(double value, int digits) {
  return digits == UnitValue::all_digits ? number_text(value) : rounded_text(value, digits);
}

int converted_digits(int digits) {
  constexpr int of_all = 6;
  return digits == UnitValue::all_digits ? of_all : std::max(digits, least_converted_digits);
}

const ArgumentValue& argument(const Sentence& sentence, std::string_view name) {
  for (const Argument& each : sentence.arguments())
    if (name == each.name) return each.value;
  throw std::logic_error("sentence " + std::string(sentence.key().text()) + ": nothing for {" +
                         std::string(name) + "}");
}

struct ShowValue {
  const TextView& view;
  Part::Kind kind;

  std::string operator()(const UnitValue& quantity) const {
    if (kind == Part::Kind::unit) return view.unit(quantity.unit);
    return kind == Part::Kind::number ? view.number(quantity) : view.quantity(quantity);
  }
  std::string operator()(std::int64_t count) const { return std::to_string(count); }
  std::string operator()(const std::string& text) const { return text; }
  std::string operator()(Word word) const { return view.word(word); }
  std::string operator()(const std::vector<Sentence>& sentences) const {
    const char* between = kind == Part::Kind::list ? ", " : kind == Part::Kind::passage ? " " : "; ";
    std::string text;
    for (const Sentence& each : sentences) text += (text.empty() ? "" : between) + sentence_text(each, view);
    return text;
  }
};

std::string shown(const ArgumentValue& value, const TextView& view, Part::Kind kind = Part::Kind::value) {
  return std::visit(ShowValue{view, kind}, value);
}

void append_part(std::string& text, const Sentence& sentence, const Part& part, const TextView& view) {
  switch (part.kind) {
    case Part::Kind::text:
      text += part.text;
      return;
    case Part::Kind::value:
    case Part::Kind::number:
    case Part::Kind::unit:
    case Part::Kind::list:
    case Part::Kind::passage:
      text += shown(argument(sentence, part.text), view, part.kind);
      return;
    case Part::Kind::plural:
      const auto* count = std::get_if<std::int64_t>(&argument(sentence, part.text));
      text += count && *count == 1 ? part.one : part.many;
  }
}

}  // namespace

const TextView& TextView::plain_english() {
  // Before the view is made: where English is refused, the refusal's text asks for this view.
  const Language& language = seamtakt::english();
  static const TextView view(language, UnitSystem::si, Typography::plain);
  return view;
}

TextView TextView::on_paper() const {
  TextView view = *this;
  view.decimal_comma_ = language_->code() == "de";
  return view;
}

std::string TextView::with_decimal_sign(std::string number) const {
  if (decimal_comma_) std::replace(number.begin(), number.end(), '.', ',');
  return number;
}

std::string TextView::number(const UnitValue& quantity) const {
  const Unit* known = units_ == UnitSystem::si ? nullptr : find_unit(quantity.unit);
  const Unit* other = known ? &shown_unit(*known, units_) : nullptr;
  if (other == known) return with_decimal_sign(digits_text(quantity.value, quantity.digits));
  return with_decimal_sign(
      rounded_text(convert(quantity.value, *known, *other), converted_digits(quantity.digits)));
}

std::string TextView::difference(const UnitValue& quantity) const {
  const Unit* known = find_unit(quantity.unit);
  const Unit* other = known ? &shown_unit(*known, units_) : nullptr;
  if (other == known) return with_decimal_sign(digits_text(quantity.value, quantity.digits));
  return with_decimal_sign(
      rounded_text(convert(quantity.value, difference_unit(*known), difference_unit(*other)),
                   converted_digits(quantity.digits)));
}

std::string TextView::unit(const char* unit) const {
  const Unit* known = units_ == UnitSystem::si ? nullptr : find_unit(unit);
  const char* name = known ? shown_unit(*known, units_).name : unit;
  return typography_ == Typography::plain ? name : readable_unit(name);
}

std::string TextView::quantity(const UnitValue& quantity) const {
  const std::string name = unit(quantity.unit);
  if (name.empty()) return number(quantity);
  const bool joined = typography_ == Typography::readable && name == "°";
  const char* between = joined ? "" : typography_ == Typography::plain ? " " : "\u202f";
  return number(quantity) + between + name;
}

std::string TextView::source(std::string_view english) const {
  constexpr std::string_view between = "; ", recalled = " (recalled)";
  if (language_->known_word(english)) return word(english);
  if (const std::size_t at = english.find(between); at != std::string_view::npos)
    return source(english.substr(0, at)) + std::string(between) + source(english.substr(at + between.size()));
  if (english.ends_with(recalled))
    return word(english.substr(0, english.size() - recalled.size())) + " (" + word("recalled"_word) + ")";
  return std::string(english);
}

std::string sentence_text(const Sentence& sentence, const TextView& view) {
  if (sentence.key().text().empty())
    return sentence.is_empty() ? "" : shown(sentence.arguments().front().value, view);
  const SentenceForm* form = view.language().sentence(sentence.key().text());
  if (!form) form = english().sentence(sentence.key().text());
  if (!form) form = built_in_english().sentence(sentence.key().text());
  if (!form) throw std::logic_error("no sentence " + std::string(sentence.key().text()));
  std::string text;
  for (const Part& part : form->parts) append_part(text, sentence, part, view);
  return text;
}

}  // namespace seamtakt
