#include "document/core_sentences.hpp"

#include <QCoreApplication>
#include <algorithm>

namespace seamtakt::desk {

namespace {

const QRegularExpression& hole() {
  static const QRegularExpression pattern(QStringLiteral("%(\\d)"));
  return pattern;
}

/// "leg of %1 mm" as the pattern "^leg of (.+) mm$".
QRegularExpression form_of(const QString& english) {
  QString pattern;
  qsizetype from = 0;
  for (auto holes = hole().globalMatch(english); holes.hasNext();) {
    const auto at = holes.next();
    pattern += QRegularExpression::escape(english.mid(from, at.capturedStart() - from)) + "(.+?)";
    from = at.capturedEnd();
  }
  pattern += QRegularExpression::escape(english.mid(from));
  return QRegularExpression("^" + pattern + "$", QRegularExpression::DotMatchesEverythingOption);
}

constexpr qsizetype most_seen = 20'000;

}  // namespace

SentenceForm::SentenceForm(const char* english)
    : english_(english),
      form_(form_of(QString::fromUtf8(english))),
      fixed_(QString::fromUtf8(english).remove(hole()).size()) {}

CoreSentences::CoreSentences(const char* context, std::span<const char* const> english)
    : context_(context), probe_(english.front()) {
  for (const char* text : english)
    if (QString::fromUtf8(text).contains(hole())) forms_.emplace_back(text);
  std::stable_sort(forms_.begin(), forms_.end(),
                   [](const SentenceForm& a, const SentenceForm& b) { return a.fixed() > b.fixed(); });
}

QString CoreSentences::word(const QString& text) const {
  return QCoreApplication::translate(context_, text.toUtf8().constData());
}

/// A name or a number goes over as it is; texts of the core may stand in a hole too, several with "; "
/// between.
QString CoreSentences::in_hole(const QString& text) const {
  static const QString between = QStringLiteral("; ");
  QStringList parts = text.split(between);
  for (QString& part : parts) part = found(part);
  return parts.join(between);
}

/// The holes are filled in one go: what stands in them may look like a hole.
QString CoreSentences::filled(const SentenceForm& form, const QRegularExpressionMatch& match) const {
  const QString wanted = QCoreApplication::translate(context_, form.english());
  QString text;
  qsizetype from = 0;
  for (auto holes = hole().globalMatch(wanted); holes.hasNext();) {
    const auto at = holes.next();
    text += wanted.mid(from, at.capturedStart() - from) + in_hole(match.captured(at.captured(1).toInt()));
    from = at.capturedEnd();
  }
  return text + wanted.mid(from);
}

QString CoreSentences::found(const QString& text) const {
  if (text.startsWith('"')) return text;  // a person's own words
  if (const QString whole = word(text); whole != text) return whole;
  for (const SentenceForm& form : forms_)
    if (const auto match = form.match(text); match.hasMatch()) return filled(form, match);
  return text;
}

QString CoreSentences::translated(const QString& text) const {
  const QString language = QCoreApplication::translate(context_, probe_);
  if (language == QString::fromUtf8(probe_)) return text;
  if (language != language_ || seen_.size() > most_seen) seen_.clear();
  language_ = language;
  const auto at = seen_.constFind(text);
  return at != seen_.constEnd() ? *at : *seen_.insert(text, found(text));
}

}  // namespace seamtakt::desk
