#include "models/finding_text.hpp"

#include <QCoreApplication>
#include <QHash>
#include <QRegularExpression>
#include <algorithm>
#include <vector>

namespace seamtakt::desk {

namespace {

constexpr const char* accepted_by = QT_TRANSLATE_NOOP("Finding", "%1 Accepted by %2 on %3: %4");

struct Template {
  const char* english;
  QRegularExpression form;
  qsizetype fixed;  ///< letters outside the holes: the more, the surer
};

/// "leg of %1 mm" as the pattern "^leg of (.+) mm$".
QRegularExpression form_of(const char* english) {
  static const QRegularExpression hole(QStringLiteral("%\\d"));
  QString pattern;
  qsizetype from = 0;
  const QString text = QString::fromUtf8(english);
  for (auto match = hole.globalMatch(text); match.hasNext();) {
    const auto at = match.next();
    pattern += QRegularExpression::escape(text.mid(from, at.capturedStart() - from)) + "(.+?)";
    from = at.capturedEnd();
  }
  pattern += QRegularExpression::escape(text.mid(from));
  return QRegularExpression("^" + pattern + "$", QRegularExpression::DotMatchesEverythingOption);
}

Template template_of(const char* english) {
  static const QRegularExpression hole(QStringLiteral("%\\d"));
  return {english, form_of(english), QString::fromUtf8(english).remove(hole).size()};
}

const std::vector<Template>& known() {
  static const std::vector<Template> list = [] {
    std::vector<Template> made;
    for (const char* english : finding_templates()) made.push_back(template_of(english));
    std::stable_sort(made.begin(), made.end(),
                     [](const Template& a, const Template& b) { return a.fixed > b.fixed; });
    return made;
  }();
  return list;
}

QString word(const QString& text) {
  return QCoreApplication::translate("Finding", text.toUtf8().constData());
}

/// The holes of `english` put into its translation, in one go: what stands in them may look like a hole.
QString filled(const char* english, const QRegularExpressionMatch& match) {
  static const QRegularExpression hole(QStringLiteral("%(\\d)"));
  const QString wanted = QCoreApplication::translate("Finding", english);
  QString text;
  qsizetype from = 0;
  for (auto holes = hole.globalMatch(wanted); holes.hasNext();) {
    const auto at = holes.next();
    text += wanted.mid(from, at.capturedStart() - from) + word(match.captured(at.captured(1).toInt()));
    from = at.capturedEnd();
  }
  return text + wanted.mid(from);
}

bool is_translated() {
  return QCoreApplication::translate("Finding", accepted_by) != QString::fromUtf8(accepted_by);
}

QString translated(const QString& text) {
  static const Template accepted = template_of(accepted_by);
  if (const auto match = accepted.form.match(text); match.hasMatch()) {
    QString whole = QCoreApplication::translate("Finding", accepted_by);
    return whole.arg(translated(match.captured(1)), match.captured(2), match.captured(3), match.captured(4));
  }
  for (const Template& each : known())
    if (const auto match = each.form.match(text); match.hasMatch()) return filled(each.english, match);
  return word(text);
}

}  // namespace

QString finding_text(const std::string& text) {
  const QString english = QString::fromStdString(text);
  if (!is_translated()) return english;
  static QHash<QString, QString> seen;
  static QString language;
  if (const QString now = QCoreApplication::translate("Finding", accepted_by); now != language) {
    seen.clear();
    language = now;
  }
  if (seen.size() > 20'000) seen.clear();
  const auto at = seen.constFind(english);
  if (at != seen.constEnd()) return *at;
  return *seen.insert(english, translated(english));
}

}  // namespace seamtakt::desk
