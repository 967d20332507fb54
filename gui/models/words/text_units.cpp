#include "models/words/text_units.hpp"

#include <QRegularExpression>
#include <algorithm>

#include "base/units/units.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

/// One number or several that share the unit behind the last: "5.11 of 6 mm", "0.4 to 0.57 kJ/mm".
const QRegularExpression& quantities() {
  static const QRegularExpression form(
      QStringLiteral(R"((?<![\w.])(-?\d+(?:\.\d+)?(?: (?:of|to|and|from|von|bis|und) -?\d+(?:\.\d+)?)*))"
                     R"( (mm/s|mm2|mm|kJ/mm|m/min|l/min|kg/h|kg|kN|MPa|C)(?![\w/]))"));
  return form;
}

const QRegularExpression& number() {
  static const QRegularExpression form(QStringLiteral(R"(-?\d+(?:\.\d+)?)"));
  return form;
}

/// As many digits as the sentence has, three at least: a whole number of millimetres is no whole inch.
int digits_of(const QString& text) {
  const auto digits = std::count_if(text.begin(), text.end(), [](QChar c) { return c.isDigit(); });
  return std::clamp(static_cast<int>(digits), 3, 5);
}

QString numbers_shown(const QString& numbers, const char* unit) {
  QString shown;
  qsizetype from = 0;
  for (auto each = number().globalMatch(numbers); each.hasNext();) {
    const auto match = each.next();
    shown += numbers.mid(from, match.capturedStart() - from) +
             UnitView::shared().numberText(match.captured().toDouble(), unit, digits_of(match.captured()));
    from = match.capturedEnd();
  }
  return shown + numbers.mid(from);
}

}  // namespace

QString in_shown_units(const QString& sentence) {
  QString shown;
  qsizetype from = 0;
  for (auto each = quantities().globalMatch(sentence); each.hasNext();) {
    const auto match = each.next();
    const std::string unit = match.captured(2).toStdString();
    const Unit* known = find_unit(unit);
    if (known == nullptr || &UnitView::shared().shown(*known) == known) continue;
    shown += sentence.mid(from, match.capturedStart() - from) +
             numbers_shown(match.captured(1), unit.c_str()) + QStringLiteral("\u202f") +
             UnitView::shared().unitText(unit.c_str());
    from = match.capturedEnd();
  }
  return shown + sentence.mid(from);
}

}  // namespace seamtakt::desk
