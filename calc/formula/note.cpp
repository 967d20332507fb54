#include "formula/note.hpp"

#include <algorithm>

#include "base/sentences/typeset.hpp"
#include "base/text/ascii.hpp"
#include "base/text/utf8.hpp"
#include "base/units/units.hpp"
#include "formula/uncertainty/budget_text.hpp"
#include "formula/validation.hpp"

namespace seamtakt {
namespace {

bool begins_name(char c) {
  return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '_' ||
         static_cast<unsigned char>(c) >= 0x80;
}

bool continues_name(char c) {
  return begins_name(c) || is_digit(c);
}

std::size_t end_of_name(std::string_view text, std::size_t at) {
  while (at < text.size() && continues_name(text[at])) ++at;
  return at;
}

/// A number of the formula itself: "1e5" holds no symbol e5.
std::size_t end_of_number(std::string_view text, std::size_t at) {
  while (at < text.size() && (is_digit(text[at]) || text[at] == '.')) ++at;
  if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    std::size_t exponent = at + 1;
    if (exponent < text.size() && (text[exponent] == '+' || text[exponent] == '-')) ++exponent;
    if (exponent < text.size() && is_digit(text[exponent])) {
      while (exponent < text.size() && is_digit(text[exponent])) ++exponent;
      return exponent;
    }
  }
  return at;
}

/// A typed number is shown as typed; a computed number is cut to its significant digits.
std::string shown(double value) {
  std::string exact = number_text(value);
  return exact.size() <= 10 ? exact : rounded_text(value, 10);
}

std::string in_formula(double value) {
  std::string text = shown(value);
  return text.starts_with('-') ? "(" + text + ")" : text;
}

std::string replace_symbols(std::string_view text, const std::vector<SymbolValue>& values) {
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    std::size_t end = at + 1;
    if (is_digit(text[at])) {
      end = end_of_number(text, at);
    } else if (begins_name(text[at])) {
      end = end_of_name(text, at);
      auto name = text.substr(at, end - at);
      auto known =
          std::find_if(values.begin(), values.end(), [&](const auto& v) { return v.symbol == name; });
      if (known != values.end()) {
        out += in_formula(known->value);
        at = end;
        continue;
      }
    }
    out += text.substr(at, end - at);
    at = end;
  }
  return out;
}

}  // namespace

const char* to_string(SourceBasis basis) {
  switch (basis) {
    case SourceBasis::read:
      return "read";
    case SourceBasis::part_read:
      return "part read, part recalled";
    case SourceBasis::recalled:
      return "recalled: compare with your copy";
    case SourceBasis::derived:
      return "derived here";
    case SourceBasis::common_practice:
      return "common practice, no source";
  }
  return "";
}

bool uses_symbol(const FormulaNote& note, std::string_view symbol) {
  // A formula with the symbol replaced differs from one without.
  std::string_view text = note.symbols;
  std::size_t equals = text.find('=');
  if (equals != std::string_view::npos) text.remove_prefix(equals + 1);
  return replace_symbols(text, {{std::string(symbol), "", 0, ""}}) != text;
}

std::string with_numbers(const Explanation& explanation) {
  std::string_view symbols = explanation.note->symbols;
  std::size_t equals = symbols.find('=');
  std::size_t right = equals == std::string_view::npos ? 0 : equals + 1;
  return std::string(symbols.substr(0, right)) + replace_symbols(symbols.substr(right), explanation.inputs);
}

namespace {

/// Lines of an explanation: a label of the program and what it says, one below another.
class ExplanationLines {
 public:
  explicit ExplanationLines(const TextView& view) : view_(view) {
    for (const Word label : {formula, numbers, where, source, holds, accuracy, checked})
      width_ = std::max(width_, display_width(view.word(label)));
  }

  static constexpr Word formula = "formula"_word, numbers = "numbers"_word, where = "where"_word,
                        source = "source"_word, holds = "holds"_word, accuracy = "accuracy"_word,
                        checked = "checked"_word;

  void add(Word label, const std::string& text) {
    const std::string name = view_.word(label);
    text_ += "  " + name + std::string(width_ - display_width(name) + 2, ' ') + text + "\n";
  }
  std::string take() { return std::move(text_); }

 private:
  const TextView& view_;
  std::size_t width_ = 0;
  std::string text_;
};

std::string with_unit(double value, const std::string& unit, const TextView& view) {
  const std::string name = view.unit(unit.c_str());
  return name.empty() ? shown(value) : shown(value) + " " + name;
}

/// A text of a note; for people with its formulas typeset.
std::string note_text(const char* text, const TextView& view) {
  const std::string word = view.word(text);
  return view.typography() == TextView::Typography::plain ? word : typeset(word);
}

}  // namespace

std::string explanation_text(const Explanation& explanation, const TextView& any_view) {
  const TextView view = any_view.in_si();
  const FormulaNote& note = *explanation.note;
  using Lines = ExplanationLines;
  Lines lines(view);
  lines.add(Lines::formula, note.symbols);
  lines.add(Lines::numbers, with_numbers(explanation));
  for (const SymbolValue& input : explanation.inputs)
    lines.add(Lines::where, input.symbol + " = " + with_unit(input.value, input.unit, view) + ", " +
                                sentence_text(input.meaning, view));
  const std::string clause = note_text(note.clause, view);
  lines.add(Lines::source, note.source_key + (clause.empty() ? "" : ", " + clause) + " (" +
                               view.word(to_string(note.basis)) + ")");
  lines.add(Lines::holds, note_text(note.range, view));
  lines.add(Lines::accuracy, note_text(note.accuracy, view));
  lines.add(Lines::checked, sentence_text(validation_sentence(note), view));
  const std::string budget =
      explanation.budget ? budget_text(*explanation.budget, explanation.unit.c_str(), view) : std::string();
  return std::string(note.result) + ": " + with_unit(explanation.result, explanation.unit, view) + "\n" +
         lines.take() + budget;
}

}  // namespace seamtakt
