#include "app/theme_choice.hpp"

#include <QApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QPalette>
#include <QTranslator>

#include "document/shown_text.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

bool platform_is_dark = false;

/// Names of keys that menus and tips show. Qt's own translations aren't on every machine.
[[maybe_unused]] constexpr const char* key_names[] = {
    QT_TRANSLATE_NOOP("QShortcut", "Ctrl"),      QT_TRANSLATE_NOOP("QShortcut", "Shift"),
    QT_TRANSLATE_NOOP("QShortcut", "Alt"),       QT_TRANSLATE_NOOP("QShortcut", "Ins"),
    QT_TRANSLATE_NOOP("QShortcut", "Del"),       QT_TRANSLATE_NOOP("QShortcut", "Left"),
    QT_TRANSLATE_NOOP("QShortcut", "Right"),     QT_TRANSLATE_NOOP("QShortcut", "Home"),
    QT_TRANSLATE_NOOP("QShortcut", "End"),       QT_TRANSLATE_NOOP("QShortcut", "Return"),
    QT_TRANSLATE_NOOP("QShortcut", "Backspace"), QT_TRANSLATE_NOOP("QShortcut", "Esc")};

}  // namespace

void look_at_platform() {
  platform_is_dark = QApplication::palette().color(QPalette::Window).lightness() < 128;
}

bool follow_platform() {
  // Without a palette of its own the application has the platform's again.
  QApplication::setPalette(QPalette());
  look_at_platform();
  const bool changes = platform_is_dark != Palette::current().dark;
  choose_theme(QStringLiteral("system"));
  return changes;
}

void choose_theme(const QString& theme) {
  Palette::setDark(theme == QStringLiteral("dark") || (theme != QStringLiteral("light") && platform_is_dark));
  apply_style();
}

void choose_language(const QString& language) {
  static QTranslator own, qt;
  QCoreApplication::removeTranslator(&own);
  QCoreApplication::removeTranslator(&qt);
  const QString wanted = language.isEmpty() ? QLocale::system().name().section('_', 0, 0) : language;
  UnitView::shared().setDecimalComma(QLocale(wanted).decimalPoint() == QStringLiteral(","));
  show_language(wanted);
  if (wanted == QStringLiteral("en")) return;
  if (own.load(QStringLiteral(":/translations/desk_%1.qm").arg(wanted)))
    QCoreApplication::installTranslator(&own);
  if (qt.load(QStringLiteral("qtbase_%1").arg(wanted), QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
    QCoreApplication::installTranslator(&qt);
}

}  // namespace seamtakt::desk
