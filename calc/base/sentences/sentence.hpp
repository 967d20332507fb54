#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace seamtakt {

/// Names a sentence of reference/languages. Made from a literal, "preheat.below-needed"_key, so that a test
/// can compare the keys of the sources with the tables; or found in the table by find_sentence().
class SentenceKey {
 public:
  constexpr SentenceKey() = default;
  constexpr std::string_view text() const { return text_; }
  constexpr bool operator==(const SentenceKey&) const = default;

 private:
  friend constexpr SentenceKey operator""_key(const char* text, std::size_t size);
  friend class SentenceTable;
  constexpr explicit SentenceKey(std::string_view text) : text_(text) {}

  std::string_view text_;
};

// Not consteval: clang 14 calls a consteval literal in a template or a default argument at run time, where
// there is no such function.
constexpr SentenceKey operator""_key(const char* text, std::size_t size) {
  return SentenceKey(std::string_view(text, size));
}

/// A word or phrase of the program that other languages have under its English text. Made from a literal,
/// "Heat input"_word, for the same test.
class Word {
 public:
  constexpr Word() = default;
  /// A word out of a table of the program that has a test of its own for its translations, such as the labels
  /// of fields and the notes of formulas. `literal` lives as long as the program.
  static constexpr Word of_table(const char* literal) { return Word(std::string_view(literal)); }
  constexpr std::string_view english() const { return english_; }
  constexpr bool operator==(const Word&) const = default;

 private:
  friend constexpr Word operator""_word(const char* text, std::size_t size);
  friend class SentenceTable;
  constexpr explicit Word(std::string_view english) : english_(english) {}

  std::string_view english_;
};

constexpr Word operator""_word(const char* text, std::size_t size) {
  return Word(std::string_view(text, size));
}

/// A number with its unit, as a sentence states it.
struct UnitValue {
  /// As many digits as it takes to read the same number back.
  static constexpr int all_digits = 0;
  static constexpr int typed_digits = 15;  ///< of a number as a person typed it

  double value = 0;       ///< in `unit`
  const char* unit = "";  ///< a unit's name ("kJ/mm"), empty for a dimensionless value
  int digits = 4;         ///< significant digits in a text, 1 to 17, or all_digits
};

class Sentence;

/// What fills a hole of a sentence: a quantity, a count, a name or text from a file or a person (shown as it
/// is), a word of the program, or sentences, joined as the hole says (SentenceForm::Part).
using ArgumentValue = std::variant<UnitValue, std::int64_t, std::string, Word, std::vector<Sentence>>;

struct Argument {
  Argument(const char* argument_name, ArgumentValue argument_value);
  Argument(const char* argument_name, UnitValue quantity);
  Argument(const char* argument_name, std::string text);
  Argument(const char* argument_name, std::string_view text);
  Argument(const char* argument_name, const char* text);
  Argument(const char* argument_name, Word word);
  Argument(const char* argument_name, std::size_t count);
  Argument(const char* argument_name, int count);
  Argument(const char* argument_name, std::int64_t count);
  Argument(const char* argument_name, Sentence sentence);
  Argument(const char* argument_name, std::vector<Sentence> sentences);

  const char* name;  ///< of the hole; a literal, or kept by the table of sentences
  ArgumentValue value;
};

/// A sentence as data: its key and the arguments of its holes. It becomes text only where it is shown, in the
/// reader's language and units (sentence_text.hpp).
class Sentence {
 public:
  Sentence() = default;
  Sentence(SentenceKey key, std::vector<Argument> arguments = {});
  /// A word as a whole sentence.
  Sentence(Word word);
  /// A text that is shown unchanged in every language: a person's words, or the text of an older record.
  static Sentence verbatim(std::string text);

  /// Empty for a verbatim text or a word.
  SentenceKey key() const { return key_; }
  const std::vector<Argument>& arguments() const { return arguments_; }
  bool is_empty() const { return key_.text().empty() && arguments_.empty(); }

  /// The plain English text, as JSON results have it.
  std::string english() const;

 private:
  SentenceKey key_;
  std::vector<Argument> arguments_;
};

}  // namespace seamtakt
