#pragma once

#include <QSortFilterProxyModel>

namespace seamtakt::desk {

/// The rows of a table as they are sorted and filtered; an arrow stands beside the heading they are sorted
/// by.
class SortedRows : public QSortFilterProxyModel {
  Q_OBJECT

 public:
  using QSortFilterProxyModel::QSortFilterProxyModel;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
};

}  // namespace seamtakt::desk
