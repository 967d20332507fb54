#include "models/words/finding_text.hpp"

#include <QCoreApplication>

#include "document/core_sentences.hpp"

namespace seamtakt::desk {

namespace {

constexpr const char* accepted_by = QT_TRANSLATE_NOOP("Finding", "%1 Accepted by %2 on %3: %4");

}  // namespace

QString finding_text(const std::string& text) {
  static const CoreSentences sentences("Finding", finding_templates());
  static const SentenceForm accepted(accepted_by);
  const QString english = QString::fromStdString(text);
  // A person's name and reason go over as they are, whatever they say.
  const auto match =
      english.contains(QLatin1String(" Accepted by ")) ? accepted.match(english) : QRegularExpressionMatch();
  if (!match.hasMatch()) return sentences.translated(english);
  return QCoreApplication::translate("Finding", accepted_by)
      .arg(sentences.translated(match.captured(1)), match.captured(2), match.captured(3), match.captured(4));
}

}  // namespace seamtakt::desk
