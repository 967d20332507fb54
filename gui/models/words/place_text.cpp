#include "models/words/place_text.hpp"

#include "document/core_sentences.hpp"

namespace seamtakt::desk {

namespace {

constexpr const char* places[] = {
    QT_TRANSLATE_NOOP("Place", "%1/pass %2"),
    QT_TRANSLATE_NOOP("Place", "schedule %1"),
};

}  // namespace

QString place_text(const std::string& place) {
  static const CoreSentences sentences("Place", places);
  return sentences.translated(QString::fromStdString(place));
}

}  // namespace seamtakt::desk
