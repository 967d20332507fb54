#pragma once

#include <QHash>
#include <QRegularExpression>
#include <QString>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace seamtakt::desk {

/// An English sentence of the core with holes %1 to %9 for names and numbers.
class SentenceForm {
 public:
  explicit SentenceForm(const char* english);

  const char* english() const { return english_; }
  /// Letters outside the holes: the more, the surer a match.
  qsizetype fixed() const { return fixed_; }
  /// `text` read as this sentence: what stands in hole %1 is captured as 1, and so on.
  QRegularExpressionMatch match(const QString& text) const { return form_.match(text); }

 private:
  const char* english_;
  QRegularExpression form_;
  qsizetype fixed_;
};

/// The texts that the core says in one matter, in the user's language. The core speaks English and knows no
/// translations: its texts are listed here as they are, sentences with names or numbers in them as forms.
class CoreSentences {
 public:
  /// `context`: that of the translations; `english`: all texts, at least one. Both must outlive this.
  CoreSentences(const char* context, std::span<const char* const> english);

  /// `text` in the user's language: a listed text, or a listed form whose holes are filled anew (what stands
  /// in a hole is translated where it is known itself). A text that isn't known stays as it is.
  QString translated(const QString& text) const;

 private:
  QString word(const QString& text) const;
  QString in_hole(const QString& text) const;
  QString filled(const SentenceForm& form, const QRegularExpressionMatch& match) const;
  QString found(const QString& text) const;

  const char* context_;
  const char* probe_;                ///< a text whose translation tells the language
  std::vector<SentenceForm> forms_;  ///< the surest first
  mutable QHash<QString, QString> seen_;
  mutable QString language_;  ///< of what was seen: the probe's translation
};

}  // namespace seamtakt::desk
