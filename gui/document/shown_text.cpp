#include "document/shown_text.hpp"

namespace seamtakt::desk {

namespace {

TextView& own_view() {
  static TextView view = TextView(english()).on_paper();
  return view;
}

}  // namespace

const TextView& text_view() {
  return own_view();
}

void show_language(const QString& code) {
  const Language* language = find_language(code.toStdString());
  own_view() = TextView(language ? *language : english(), own_view().units()).on_paper();
}

void show_units(UnitSystem units) {
  own_view() = TextView(own_view().language(), units).on_paper();
}

QString shown_text(const Sentence& sentence) {
  return QString::fromStdString(sentence_text(sentence, text_view()));
}

QString shown_word(std::string_view english) {
  return QString::fromStdString(text_view().word(english));
}

QString shown_source(std::string_view source) {
  return QString::fromStdString(text_view().source(source));
}

QString refusal_text(const InputError& error) {
  return shown_text(Sentence("refusal"_key, {{"found", error.found()}, {"expected", error.expected()}}));
}

}  // namespace seamtakt::desk
