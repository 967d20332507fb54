#pragma once

#include <QLineEdit>

namespace seamtakt::desk {

class GridView;

/// The filter box at a table's foot: shows the rows that have the words anywhere. Escape shows all again.
class TableFilter : public QLineEdit {
  Q_OBJECT

 public:
  explicit TableFilter(GridView& table);
  void ask();
  /// Takes its place at the foot of the table.
  void place();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  GridView& table_;
};

}  // namespace seamtakt::desk
