#include <algorithm>

#include "base/sentences/language.hpp"

namespace seamtakt {

std::optional<SentenceKey> SentenceTable::find(std::string_view key) {
  static const std::vector<std::string_view> keys = english().sentence_keys();
  const auto found = std::lower_bound(keys.begin(), keys.end(), key);
  if (found == keys.end() || *found != key) return std::nullopt;
  return SentenceKey(*found);
}

const char* SentenceTable::find_hole(SentenceKey key, std::string_view name) {
  if (const SentenceForm* form = english().sentence(key.text()))
    for (const SentenceForm::Part& part : form->parts)
      if (part.kind != SentenceForm::Part::Kind::text && part.text == name) return part.text.c_str();
  return nullptr;
}

std::optional<Word> SentenceTable::find_word(std::string_view english_text) {
  for (const std::string& code : language_codes())
    if (const auto known = find_language(code)->known_word(english_text)) return Word(*known);
  return std::nullopt;
}

}  // namespace seamtakt
