#pragma once

#include <QTableView>

namespace seamtakt::desk {

class GridView;

/// The first columns of a table, state and names, over it while it is scrolled sideways.
class FrozenColumns : public QTableView {
  Q_OBJECT

 public:
  /// `count`: how many columns stay.
  FrozenColumns(GridView& table, int count);
  int count() const { return count_; }
  /// Width of the columns that stay; 0 while the table isn't scrolled.
  int covered() const { return isVisible() ? wide() : 0; }
  /// Takes widths, rows and place from the table again.
  void follow();

 protected:
  void contextMenuEvent(QContextMenuEvent* event) override;

 private:
  int wide() const;
  GridView& table_;
  int count_;
};

}  // namespace seamtakt::desk
