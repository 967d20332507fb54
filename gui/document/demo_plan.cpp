#include "document/demo_plan.hpp"

#include <QFileInfo>

namespace seamtakt::desk {

QString demo_file(const QString& name) {
  for (const QString& folder :
       {QStringLiteral(SEAMTAKT_DEMO_INSTALLED), QStringLiteral(SEAMTAKT_DEMO_SOURCE)}) {
    const QString path = folder + QStringLiteral("/") + name;
    if (QFileInfo::exists(path)) return path;
  }
  return {};
}

QString demo_plan_path() {
  return demo_file(QStringLiteral("ground-equipment.weldplan.json"));
}

}  // namespace seamtakt::desk
