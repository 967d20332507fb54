#pragma once

#include <QString>
#include <QStringList>

namespace seamtakt::desk {

class MainWindow;

/// One PNG a page of the window as it stands (seams.png, schedules.png, ...), into a folder that is made
/// where it isn't there. Returns the files. std::runtime_error where one can't be written.
QStringList take_pictures(MainWindow& window, const QString& folder);

}  // namespace seamtakt::desk
