#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// A sentence's text with its holes found: "Preheat is {given}." is "Preheat is ", hole `given`, ".".
struct SentenceForm {
  struct Part {
    enum class Kind {
      text,
      value,    ///< {given}: a quantity with its unit, a name, a count, a word, sentences joined by "; "
      number,   ///< {given:number}: a quantity's number alone
      unit,     ///< {given:unit}: its unit alone
      list,     ///< {limits:list}: sentences joined by ", "
      passage,  ///< {needs:passage}: whole sentences, joined by a space
      plural    ///< {seams|seam|seams}: the first text where the count is 1, else the second
    };
    Kind kind = Kind::text;
    std::string text;  ///< the text itself, or the hole's name
    std::string one, many;
  };
  std::vector<Part> parts;

  /// InputError at `where` where a hole isn't closed or empty.
  static SentenceForm parsed(std::string_view text, const std::string& where);
};

/// A language of reference/languages: CODE.json. `sentences` holds each sentence under its key, `words` each
/// word and phrase under its English text. English is the language the keys are checked against.
class Language {
 public:
  /// Reads the table. InputError where it is damaged.
  Language(std::string code, std::string_view json, const std::string& file);

  const std::string& code() const { return code_; }  ///< ISO 639-1: "en", "de"
  const std::string& name() const { return name_; }  ///< in itself: "English", "Deutsch"

  /// nullptr where the language lacks the sentence.
  const SentenceForm* sentence(std::string_view key) const;
  /// The word under its English text; the English text where the language lacks it.
  std::string_view word(std::string_view english) const;
  /// The English text as this table keeps it; empty where the language lacks the word.
  std::optional<std::string_view> known_word(std::string_view english) const;

  std::vector<std::string_view> sentence_keys() const;  ///< in alphabetic order
  std::vector<std::string_view> english_words() const;  ///< the English texts of its words, in no order

 private:
  struct Hash : std::hash<std::string_view> {
    using is_transparent = void;
  };
  template <class Value>
  using Table = std::unordered_map<std::string, Value, Hash, std::equal_to<>>;

  std::string code_, name_;
  Table<SentenceForm> sentences_;
  Table<std::string> words_;
};

/// The language of a code; nullptr where reference/languages has none. Each is read once.
const Language* find_language(std::string_view code);
const Language& english();
/// The English that is compiled in, whatever folder SEAMTAKT_REFERENCE names: has every sentence of the
/// program.
const Language& built_in_english();

/// Codes of all languages, in alphabetic order: "de", "en".
std::vector<std::string> language_codes();

/// The table of sentences: gives keys and words that live as long as the program to texts read from a file.
class SentenceTable {
 public:
  /// The key of a sentence that English has.
  static std::optional<SentenceKey> find(std::string_view key);
  /// The name of a hole of that sentence, as a text that lives as long as the program; nullptr where the
  /// sentence has no such hole.
  static const char* find_hole(SentenceKey key, std::string_view name);
  /// A word of the program by its English text: one that a language translates.
  static std::optional<Word> find_word(std::string_view english);
};

}  // namespace seamtakt
