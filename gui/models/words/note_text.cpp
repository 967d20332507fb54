#include "models/words/note_text.hpp"

#include "document/core_sentences.hpp"

namespace seamtakt::desk {

QString note_text(const std::string& text) {
  static const CoreSentences sentences("Explanation", note_texts());
  return sentences.translated(QString::fromStdString(text));
}

}  // namespace seamtakt::desk
