#include "exchange/sheets/cell_text.hpp"

#include "base/units/units.hpp"

namespace seamtakt {

namespace {

std::string number_in(double value, std::string_view unit, int digits, const TextView& view) {
  return view.number({value, std::string(unit).c_str(), digits});
}

std::string unit_in(std::string_view unit, const TextView& view) {
  return view.unit(std::string(unit).c_str());
}

double converted(double value, std::string_view unit, const TextView& view) {
  const Unit* given = find_unit(unit);
  return given ? convert(value, *given, shown_unit(*given, view.units())) : value;
}

SheetCell range_cell(const MeasureRange& range) {
  if (!range.lower && !range.upper) return "not stated"_word;
  const auto end = [&](double value) { return SheetCell(Measure{value, range.unit}); };
  if (!range.lower) return PatternCell{"up to {1}"_word, {end(*range.upper)}};
  if (!range.upper) return PatternCell{"from {1}"_word, {end(*range.lower)}};
  return PatternCell{"{1} to {2}"_word, {Figure{*range.lower, std::string(range.unit)}, end(*range.upper)}};
}

/// The holes are {1} to {9}.
std::string pattern_text(const PatternCell& phrase, const TextView& view) {
  const std::string pattern = view.word(phrase.pattern);
  std::string text;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    const std::size_t number = i + 2 < pattern.size() && pattern[i] == '{' && pattern[i + 2] == '}'
                                   ? static_cast<std::size_t>(pattern[i + 1] - '1')
                                   : phrase.values.size();
    if (number >= phrase.values.size()) {
      text += pattern[i];
      continue;
    }
    text += cell_text(phrase.values[number], view);
    i += 2;
  }
  return text;
}

struct ToText {
  const TextView& view;
  const NumberForm& form;

  std::string operator()(std::monostate) const { return "-"; }
  std::string operator()(double value) const { return number_in(value, form.unit, form.digits, view); }
  std::string operator()(const std::string& text) const { return text; }
  std::string operator()(const Count& count) const { return std::to_string(count.value); }
  std::string operator()(const Choice& choice) const { return view.word(choice.english); }
  std::string operator()(const SourceCell& source) const { return view.source(source.english); }
  std::string operator()(const SentenceCell& cell) const { return sentence_text(cell.sentence, view); }
  std::string operator()(Word word) const { return view.word(word); }
  std::string operator()(const SeverityCell& cell) const {
    return view.word(Word::of_table(to_string(cell.severity)));
  }
  std::string operator()(const Heading& heading) const { return heading_text(heading, view); }
  std::string operator()(const KeyCell& cell) const {
    return view.typography() == TextView::Typography::plain ? cell.key : heading_text(cell.heading, view);
  }
  std::string operator()(const Measure& measure) const {
    return view.quantity({measure.value, std::string(measure.unit).c_str(), measure.digits});
  }
  std::string operator()(const MeasureRange& range) const { return cell_text(range_cell(range), view); }
  std::string operator()(const Figure& figure) const {
    return number_in(figure.value, figure.unit, form.digits, view);
  }
  std::string operator()(const UnitCell& cell) const { return unit_in(cell.unit, view); }
  std::string operator()(const Pair& pair) const {
    return cell_text(PatternCell{"{1} to {2}"_word,
                                 {number_in(pair.low, form.unit, form.digits, view),
                                  number_in(pair.high, form.unit, form.digits, view)}},
                     view);
  }
  std::string operator()(const PatternCell& phrase) const { return pattern_text(phrase, view); }
};

}  // namespace

std::string heading_text(const Heading& heading, const TextView& view) {
  const std::string label = view.word(heading.label), unit = unit_in(heading.unit, view);
  return unit.empty() ? label : label + ", " + unit;
}

std::string cell_text(const SheetCell& cell, const TextView& view, const NumberForm& form) {
  return std::visit(ToText{view, form}, cell);
}

std::string file_text(const SheetCell& cell, const TextView& view, std::string_view unit) {
  return std::holds_alternative<std::monostate>(cell) ? std::string() : cell_text(cell, view, {0, unit});
}

std::optional<double> file_number(const SheetCell& cell, const TextView& view, std::string_view unit) {
  if (const double* number = std::get_if<double>(&cell)) return converted(*number, unit, view);
  if (const Figure* figure = std::get_if<Figure>(&cell)) return converted(figure->value, figure->unit, view);
  if (const Count* count = std::get_if<Count>(&cell)) return static_cast<double>(count->value);
  return std::nullopt;
}

}  // namespace seamtakt
