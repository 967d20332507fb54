#include "widgets/choice_dialog.hpp"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "models/tables/value_model.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

ChoiceDialog::ChoiceDialog(const QString& title, const QString& choose, std::unique_ptr<ValueModel> rows,
                           QWidget* parent)
    : QDialog(parent), rows_(rows.release()) {
  rows_->setParent(this);
  setWindowTitle(title);
  setAccessibleName(title);
  resize(760, 380);
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  table_ = new GridView(*rows_, title, this);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setRoomTaker(static_cast<int>(rows_->columns().size()) - 1);
  table_->fitColumns();
  column->addWidget(table_, 1);
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* take = buttons->addButton(choose, QDialogButtonBox::AcceptRole);
  take->setAccessibleName(choose);
  take->setDefault(true);
  buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(table_, &GridView::opened, this, &QDialog::accept);
  if (rows_->rowCount() > 0) table_->selectRow(0);
  table_->setFocus();
}

void ChoiceDialog::replaceRows(std::vector<ValueModel::Row> rows, int id_column) {
  const QString gone_to = table_->currentRow() > 0 ? chosen(id_column) : QString();
  rows_->setRows(std::move(rows));
  table_->fitColumns();
  int row = 0;
  while (!gone_to.isEmpty() && row < rows_->rowCount() && rows_->index(row, id_column).data() != gone_to)
    ++row;
  table_->selectRow(row < rows_->rowCount() ? row : 0);
}

QString ChoiceDialog::chosen(int column) const {
  const int row = table_->currentRow();
  return row < 0 ? QString() : rows_->index(row, column).data(Qt::EditRole).toString();
}

}  // namespace seamtakt::desk
