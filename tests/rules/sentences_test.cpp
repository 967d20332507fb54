// The sentences and words of the sources are those of reference/languages, in every language with the same
// holes.
#include <gtest/gtest.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "base/sentences/language.hpp"
#include "rules/source_tree.hpp"
#include "support/file_bytes.hpp"
#include "support/source_path.hpp"

namespace seamtakt::rules {
namespace {

/// A string literal of a source: pieces side by side are one. `suffix` is what follows: "_key", "_word" or
/// nothing.
struct Literal {
  std::string text, suffix;
};

/// Finds the string literals of C++ text that isn't in comments.
class LiteralReader {
 public:
  explicit LiteralReader(std::string text) : text_(std::move(text)) {}

  std::vector<Literal> run() {
    while (at_ < text_.size()) step();
    finish({});
    return std::move(found_);
  }

 private:
  bool begins(std::string_view part) const { return text_.compare(at_, part.size(), part) == 0; }
  void skip_to(std::string_view end) {
    const std::size_t found = text_.find(end, at_);
    at_ = found == std::string::npos ? text_.size() : found + end.size();
  }

  void step() {
    if (begins("//")) return skip_to("\n");
    if (begins("/*")) return skip_to("*/");
    if (begins("R\"")) {
      const std::size_t paren = text_.find('(', at_);
      const std::string end = ")" + text_.substr(at_ + 2, paren - at_ - 2) + "\"";
      finish({});
      return skip_to(end);
    }
    const char c = text_[at_];
    if (c == '"') return literal();
    if (std::isspace(static_cast<unsigned char>(c)) != 0) {
      ++at_;
      return;
    }
    finish({});
    // 10'000 is a number, 'a' a character.
    const bool is_number =
        c == '\'' && at_ > 0 && std::isalnum(static_cast<unsigned char>(text_[at_ - 1])) != 0;
    if (c == '\'' && !is_number) return character();
    ++at_;
  }

  void character() {
    for (++at_; at_ < text_.size() && text_[at_] != '\''; ++at_)
      if (text_[at_] == '\\') ++at_;
    ++at_;
  }

  void literal() {
    is_open_ = true;
    for (++at_; at_ < text_.size() && text_[at_] != '"'; ++at_) {
      if (text_[at_] != '\\') {
        open_ += text_[at_];
        continue;
      }
      const char escaped = text_[++at_];
      open_ += escaped == 'n' ? '\n' : escaped;
    }
    ++at_;
    for (const std::string suffix : {"_key", "_word"})
      if (begins(suffix)) {
        at_ += suffix.size();
        return finish(suffix);
      }
  }

  void finish(const std::string& suffix) {
    if (is_open_) found_.push_back({std::move(open_), suffix});
    open_.clear();
    is_open_ = false;
  }

  std::string text_, open_;
  std::size_t at_ = 0;
  bool is_open_ = false;
  std::vector<Literal> found_;
};

/// What the sources of the program say, each text with a file that says it.
struct Said {
  std::map<std::string, std::string> keys, words;
  std::set<std::string> literals;

  Said() {
    for (const char* room : {"calc", "gui"})
      for (const auto& entry : fs::recursive_directory_iterator(fs::path(source_path()) / room))
        if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp") read(entry.path());
  }

  static const Said& all() {
    static const Said said;
    return said;
  }

 private:
  void read(const fs::path& path) {
    const std::string name = fs::relative(path, source_path()).string();
    for (const Literal& literal : LiteralReader(bytes_of(path)).run()) {
      literals.insert(literal.text);
      literals.insert(
          literal.text.substr(literal.text.rfind('.') + 1));  // a rule's last part names its quantity
      if (literal.text.empty()) continue;                     // the operators themselves
      if (literal.suffix == "_key") keys.emplace(literal.text, name);
      if (literal.suffix == "_word") words.emplace(literal.text, name);
    }
  }
};

std::set<std::string> keys_of(const Language& language) {
  const auto keys = language.sentence_keys();
  return {keys.begin(), keys.end()};
}

std::set<std::string> holes_of(const SentenceForm& form) {
  std::set<std::string> holes;
  for (const SentenceForm::Part& part : form.parts)
    if (part.kind != SentenceForm::Part::Kind::text) holes.insert(part.text);
  return holes;
}

/// "[x, y, z]" and "{from} > {to}" are the same in every language.
bool has_words(const std::string& text) {
  std::size_t letters = 0;
  for (const char c : text) {
    letters = std::islower(static_cast<unsigned char>(c)) != 0 ? letters + 1 : 0;
    if (letters == 3) return true;
  }
  return false;
}

std::vector<const Language*> other_languages() {
  std::vector<const Language*> languages;
  for (const std::string& code : language_codes())
    if (code != "en") languages.push_back(find_language(code));
  return languages;
}

}  // namespace

TEST(Sentences, literals_are_read_as_the_compiler_reads_them) {
  const auto found =
      LiteralReader("f(\"a\" // \"b\"\n  \"c\"_word, '\"', R\"(\"d\")\", 1'000, \"e\\\"\\\\\"_key)").run();
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].text, "ac");
  EXPECT_EQ(found[0].suffix, "_word");
  EXPECT_EQ(found[1].text, "e\"\\");
  EXPECT_EQ(found[1].suffix, "_key");
}

TEST(Sentences, every_sentence_of_the_sources_is_in_every_language) {
  ASSERT_GT(Said::all().keys.size(), 300u);
  for (const auto& [key, file] : Said::all().keys) {
    EXPECT_NE(english().sentence(key), nullptr) << file << ": en.json lacks \"" << key << "\"";
    for (const Language* language : other_languages())
      EXPECT_NE(language->sentence(key), nullptr)
          << file << ": " << language->code() << ".json lacks \"" << key << "\"";
  }
}

TEST(Sentences, every_word_of_the_sources_is_in_every_other_language) {
  ASSERT_GT(Said::all().words.size(), 300u);
  for (const auto& [word, file] : Said::all().words)
    for (const Language* language : other_languages())
      EXPECT_TRUE(language->known_word(word))
          << file << ": " << language->code() << ".json lacks \"" << word << "\"";
}

TEST(Sentences, every_sentence_of_the_tables_is_one_of_the_sources) {
  for (const std::string& key : keys_of(english()))
    EXPECT_TRUE(Said::all().keys.contains(key)) << "no source has the sentence \"" << key << "\"";
}

TEST(Sentences, every_word_of_the_tables_is_one_of_the_sources) {
  for (const Language* language : other_languages())
    for (const std::string_view word : language->english_words())
      EXPECT_TRUE(Said::all().literals.contains(std::string(word)))
          << language->code() << ".json: no source has the word \"" << word << "\"";
}

TEST(Sentences, all_languages_have_the_same_sentences_with_the_same_holes) {
  for (const Language* language : other_languages()) {
    EXPECT_EQ(keys_of(*language), keys_of(english())) << language->code();
    EXPECT_FALSE(language->name().empty());
    for (const std::string& key : keys_of(english()))
      if (const SentenceForm* form = language->sentence(key)) {
        EXPECT_EQ(holes_of(*form), holes_of(*english().sentence(key))) << language->code() << ": " << key;
      }
  }
}

/// The same words as in English would mean that nobody has translated it.
TEST(Sentences, no_sentence_is_left_in_english) {
  const auto words_of = [](const SentenceForm& form) {
    std::string words;
    for (const SentenceForm::Part& part : form.parts)
      if (part.kind == SentenceForm::Part::Kind::text) words += part.text;
    return words;
  };
  for (const Language* language : other_languages())
    for (const std::string& key : keys_of(english())) {
      const SentenceForm* form = language->sentence(key);
      const std::string words = words_of(*english().sentence(key));
      if (form != nullptr && has_words(words)) {
        EXPECT_NE(words_of(*form), words) << language->code() << ": " << key;
      }
    }
}

}  // namespace seamtakt::rules
