#pragma once

#include <QMessageBox>
#include <QVariant>
#include <string>

namespace seamtakt::desk {

/// From now on every label and tooltip of the program shows its text unchanged, Qt's own dialogs included:
/// ids, serials and file names are untrusted, and a label that guesses from the text whether it is rich would
/// open the file that `<img src=...>` names. Text that is rich on purpose sets Qt::RichText and escapes
/// everything that isn't the program's own. May be called again.
void show_plain_text_only();

/// What a document of rich text gets for a picture that its text names: an empty one. Nothing at all would
/// make Qt open the file itself.
QVariant no_picture();

/// A message box of plain text.
QMessageBox::StandardButton message_box(QWidget* parent, QMessageBox::Icon icon, const QString& title,
                                        const QString& text,
                                        QMessageBox::StandardButtons buttons = QMessageBox::Ok);

/// UTF-8 text of the plan or of a file, as it is.
inline QString text_of(const std::string& text) {
  return QString::fromStdString(text);
}

/// Foreign text for a menu: '&' is shown and makes no shortcut.
QString menu_text(QString text);

/// Foreign text for a window's title: "[*]" is shown and doesn't mean unsaved changes.
QString title_text(QString text);

}  // namespace seamtakt::desk
