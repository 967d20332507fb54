#pragma once

#include <QString>
#include <string_view>

#include "base/error.hpp"
#include "base/sentences/sentence_text.hpp"

namespace seamtakt::desk {

/// The language and units in which the desk shows the program's own sentences and words; numbers have the
/// language's decimal sign.
const TextView& text_view();
void show_language(const QString& code);
void show_units(UnitSystem units);

/// A sentence of a finding, a refusal or a result.
QString shown_text(const Sentence& sentence);
/// A word or phrase of the core (a label, a help text, a choice, a cause) under its English text. A text that
/// the language lacks stays English.
QString shown_word(std::string_view english);
/// The source of a finding: standard and clause, or "common practice, no source".
QString shown_source(std::string_view source);
/// "found 45 kg, expected ...": why the typed text can't be used.
QString refusal_text(const InputError& error);

}  // namespace seamtakt::desk
