#pragma once

#include "base/json/json_document.hpp"
#include "base/json/json_writer.hpp"
#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// Writes the members "sentence" (the key, or null) and "arguments" (by name: a quantity is {"value", "unit",
/// "digits"}, a count a number, a name a string, a word {"word"}, sentences a list of objects with these two
/// members) into the open object.
void write_sentence_members(JsonWriter& json, const Sentence& sentence);

/// The sentence that an object with these members holds; `text` as it is where it has none that this program
/// knows (an older record, or one of a later program). Never throws, whatever the content.
Sentence sentence_of_members(const JsonValue& object, std::string text);

}  // namespace seamtakt
