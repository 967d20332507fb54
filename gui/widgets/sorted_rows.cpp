#include "widgets/sorted_rows.hpp"

namespace seamtakt::desk {

QVariant SortedRows::headerData(int section, Qt::Orientation orientation, int role) const {
  const QVariant data = QSortFilterProxyModel::headerData(section, orientation, role);
  if (role != Qt::DisplayRole || orientation != Qt::Horizontal || section != sortColumn()) return data;
  const QString arrow = sortOrder() == Qt::AscendingOrder ? QStringLiteral(" ▲") : QStringLiteral(" ▼");
  const QString heading = data.toString();
  const qsizetype end = heading.indexOf(QLatin1Char('\n'));
  return end < 0 ? heading + arrow : QString(heading).insert(end, arrow);
}

}  // namespace seamtakt::desk
