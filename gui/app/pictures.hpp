#pragma once

#include <QString>
#include <QStringList>

namespace seamtakt::desk {

class MainWindow;

/// One PNG per page of the window in its present state (seams.png, schedules.png, ...), into a folder that is
/// created if missing. Returns the files. std::runtime_error where one can't be written.
QStringList take_pictures(MainWindow& window, const QString& folder);

}  // namespace seamtakt::desk
