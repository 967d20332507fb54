#include "exchange/sheets/cell_text.hpp"

#include "base/units/units.hpp"

namespace seamtakt {

namespace {

std::string rounded(double value, int digits) {
  return digits > 0 ? rounded_text(value, digits) : number_text(value);
}

std::string with_unit(const std::string& number, std::string_view unit) {
  return unit.empty() ? number : number + " " + std::string(unit);
}

std::string range_text(const MeasureRange& range) {
  if (!range.lower && !range.upper) return words_text({"not stated"});
  const auto end = [&](double value) { return SheetCell(Measure{value, range.unit}); };
  if (!range.lower) return cell_text(PatternCell{{"up to {1}"}, {end(*range.upper)}});
  if (!range.upper) return cell_text(PatternCell{{"from {1}"}, {end(*range.lower)}});
  return cell_text(PatternCell{{"{1} to {2}"}, {Measure{*range.lower}, end(*range.upper)}});
}

/// The holes are {1} to {9}.
std::string pattern_text(const PatternCell& phrase) {
  const std::string pattern = words_text(phrase.pattern);
  std::string text;
  for (std::size_t i = 0; i < pattern.size(); ++i) {
    const std::size_t number = i + 2 < pattern.size() && pattern[i] == '{' && pattern[i + 2] == '}'
                                   ? static_cast<std::size_t>(pattern[i + 1] - '1')
                                   : phrase.values.size();
    if (number >= phrase.values.size()) {
      text += pattern[i];
      continue;
    }
    text += cell_text(phrase.values[number]);
    i += 2;
  }
  return text;
}

struct ToText {
  int digits;

  std::string operator()(std::monostate) const { return "-"; }
  std::string operator()(double value) const { return rounded(value, digits); }
  std::string operator()(const std::string& text) const { return text; }
  std::string operator()(const Count& count) const { return std::to_string(count.value); }
  std::string operator()(const SentenceCell& cell) const { return cell.sentence.english(); }
  std::string operator()(const Words& words) const { return words_text(words); }
  std::string operator()(const Heading& heading) const { return heading_text(heading); }
  std::string operator()(const Measure& measure) const {
    return with_unit(rounded(measure.value, measure.digits), measure.unit);
  }
  std::string operator()(const MeasureRange& range) const { return range_text(range); }
  std::string operator()(const Pair& pair) const {
    return cell_text(PatternCell{{"{1} to {2}"}, {rounded(pair.low, digits), rounded(pair.high, digits)}});
  }
  std::string operator()(const PatternCell& phrase) const { return pattern_text(phrase); }
};

}  // namespace

std::string words_text(Words words) {
  return std::string(words.english);
}

std::string heading_text(const Heading& heading) {
  const std::string label = words_text(heading.label);
  return heading.unit.empty() ? label : label + ", " + std::string(heading.unit);
}

std::string cell_text(const SheetCell& cell, int digits) {
  return std::visit(ToText{digits}, cell);
}

std::string file_text(const SheetCell& cell) {
  return std::holds_alternative<std::monostate>(cell) ? std::string() : cell_text(cell, 0);
}

}  // namespace seamtakt
