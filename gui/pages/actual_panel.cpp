#include "pages/actual_panel.hpp"

#include <QSplitter>
#include <QVBoxLayout>

#include "models/tables/actual_table.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {

ActualPanel::ActualPanel(QWidget* parent) : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* split = new QSplitter(Qt::Vertical, this);
  units_ = new ValueModel(actual_unit_grid(), this);
  steps_ = new ValueModel(actual_step_grid(), this);
  unit_table_ = new GridView(*units_, tr("Units beside their planned cycles"), split);
  unit_table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  unit_table_->keepColumns(QStringLiteral("actual-units"));
  step_table_ = new GridView(*steps_, tr("Arcs and gaps of the unit"), split);
  step_table_->keepColumns(QStringLiteral("actual-steps"));
  split->addWidget(unit_table_);
  split->addWidget(step_table_);
  split->setSizes({180, 360});
  column->addWidget(split);
  connect(unit_table_, &GridView::rowChosen, this, &ActualPanel::showSteps);
}

void ActualPanel::setLogs(const ImportedLogsPtr& logs) {
  logs_ = logs;
  units_->setRows(logs_ ? actual_unit_grid_rows(logs_->cycles) : std::vector<ValueModel::Row>());
  unit_table_->fitColumns();
  unit_table_->clearSelection();
  unit_table_->setCurrentIndex({});
  showSteps(-1);
  if (logs_ && !logs_->cycles.units.empty()) unit_table_->selectRow(0);
}

void ActualPanel::showSteps(int unit) {
  const bool is_known = logs_ && unit >= 0 && static_cast<std::size_t>(unit) < logs_->cycles.units.size();
  steps_->setRows(is_known ? actual_step_grid_rows(logs_->cycles.units[static_cast<std::size_t>(unit)])
                           : std::vector<ValueModel::Row>());
  step_table_->fitColumns();
}

}  // namespace seamtakt::desk
