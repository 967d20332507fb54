#pragma once

#include <QDialog>
#include <memory>

#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

class GridView;

/// A table of which one row is chosen, by Enter or a double click.
class ChoiceDialog : public QDialog {
  Q_OBJECT

 public:
  /// The dialog owns the model.
  ChoiceDialog(const QString& title, const QString& choose, std::unique_ptr<ValueModel> rows,
               QWidget* parent);
  /// The same rows in another order or with more to say. The row that was gone to stays the chosen one, by
  /// its text in `id_column`; where none was, the first one is.
  void replaceRows(std::vector<ValueModel::Row> rows, int id_column);
  GridView& table() { return *table_; }
  /// Text of the chosen row in a column; empty where none is chosen.
  QString chosen(int column) const;

 private:
  ValueModel* rows_;
  GridView* table_;
};

}  // namespace seamtakt::desk
