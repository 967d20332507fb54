#pragma once

#include <QDialog>
#include <memory>

namespace seamtakt::desk {

class GridView;
class ValueModel;

/// A table of which one row is chosen, by Enter or a double click.
class ChoiceDialog : public QDialog {
  Q_OBJECT

 public:
  /// The dialog owns the model.
  ChoiceDialog(const QString& title, const QString& choose, std::unique_ptr<ValueModel> rows,
               QWidget* parent);
  GridView& table() { return *table_; }
  /// Text of the chosen row in a column; empty where none is chosen.
  QString chosen(int column) const;

 private:
  ValueModel* rows_;
  GridView* table_;
};

}  // namespace seamtakt::desk
