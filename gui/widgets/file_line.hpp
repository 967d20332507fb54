#pragma once

#include <QString>
#include <functional>

class QBoxLayout;
class QLineEdit;
class QWidget;

namespace seamtakt::desk {

/// A caption, and below it a line for a file's path with a button that chooses one, at the end of `column`.
/// `chosen` makes the line's text of the file that was chosen.
QLineEdit* add_file_line(QWidget& form, QBoxLayout& column, const QString& name, const QString& hint,
                         const QString& filter, const std::function<QString(const QString&)>& chosen = {});

}  // namespace seamtakt::desk
