#pragma once

#include <QSize>
#include <QString>
#include <QStringList>
#include <optional>

namespace seamtakt::desk {

/// What the command line asks for.
struct DeskOptions {
  QString plan, export_to, pictures_to, log, store, unit;
  QString theme, language;
  QString units;
  QStringList schedules;  ///< whose sheets are exported; empty: the whole report
  std::optional<QSize> size;
  bool is_help = false, is_version = false;
};

/// InputError where an option is unknown, its value can't be used, or what belongs together isn't.
DeskOptions read_options(const QStringList& arguments);

QString desk_usage();

}  // namespace seamtakt::desk
