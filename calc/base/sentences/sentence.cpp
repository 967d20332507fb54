#include "base/sentences/sentence.hpp"

#include "base/sentences/sentence_text.hpp"

namespace seamtakt {

Argument::Argument(const char* argument_name, ArgumentValue argument_value)
    : name(argument_name), value(std::move(argument_value)) {}
Argument::Argument(const char* argument_name, UnitValue quantity) : name(argument_name), value(quantity) {}
Argument::Argument(const char* argument_name, std::string text)
    : name(argument_name), value(std::move(text)) {}
Argument::Argument(const char* argument_name, std::string_view text)
    : name(argument_name), value(std::string(text)) {}
Argument::Argument(const char* argument_name, const char* text)
    : name(argument_name), value(std::string(text)) {}
Argument::Argument(const char* argument_name, Word word) : name(argument_name), value(word) {}
Argument::Argument(const char* argument_name, std::size_t count)
    : name(argument_name), value(static_cast<std::int64_t>(count)) {}
Argument::Argument(const char* argument_name, int count) : name(argument_name), value(std::int64_t{count}) {}
Argument::Argument(const char* argument_name, std::int64_t count) : name(argument_name), value(count) {}
Argument::Argument(const char* argument_name, Sentence sentence)
    : name(argument_name), value(std::vector<Sentence>{std::move(sentence)}) {}
Argument::Argument(const char* argument_name, std::vector<Sentence> sentences)
    : name(argument_name), value(std::move(sentences)) {}

Sentence::Sentence(SentenceKey key, std::vector<Argument> arguments)
    : key_(key), arguments_(std::move(arguments)) {}

Sentence::Sentence(Word word) {
  arguments_.emplace_back("text", word);
}

Sentence Sentence::verbatim(std::string text) {
  Sentence sentence;
  sentence.arguments_.emplace_back("text", std::move(text));
  return sentence;
}

std::string Sentence::english() const {
  return sentence_text(*this, TextView::plain_english());
}

}  // namespace seamtakt
