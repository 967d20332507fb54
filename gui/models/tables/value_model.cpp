#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

ValueModel::ValueModel(std::vector<GridColumn> columns, QObject* parent) : GridModel(parent) {
  setColumns(std::move(columns));
  connect(&UnitView::shared(), &UnitView::changed, this, [this] { unitsChanged(); });
}

void ValueModel::setRows(std::vector<Row> rows) {
  if (rows.size() == rows_.size()) {
    rows_ = std::move(rows);
    if (!rows_.empty()) emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
    return;
  }
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

int ValueModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

const ValueModel::Cell& ValueModel::cell(int row, int column) const {
  return rows_[static_cast<std::size_t>(row)].cells[static_cast<std::size_t>(column)];
}

QString ValueModel::cellText(int row, int column) const {
  const Cell& at = cell(row, column);
  if (!at.word.isEmpty()) return at.word;
  if (!at.number) return at.text;
  return UnitView::shared().numberText(*at.number, columns()[static_cast<std::size_t>(column)].unit,
                                       at.digits);
}

std::optional<double> ValueModel::cellNumber(int row, int column) const {
  const std::string& key = columns()[static_cast<std::size_t>(column)].key;
  // States are sorted by severity, not by their words.
  if (key == "mark" || key == "severity") {
    const std::optional<Severity> severity = rowSeverity(row);
    return severity ? static_cast<double>(*severity) + 1 : rowPartlyJudged(row) ? 0.5 : 0;
  }
  return cell(row, column).number;
}

QString ValueModel::cellTip(int row, int column) const {
  const QString& tip = cell(row, column).tip;
  return tip.isEmpty() ? GridModel::cellTip(row, column) : tip;
}

QString ValueModel::rowAddress(int row) const {
  return rows_[static_cast<std::size_t>(row)].address;
}
QString ValueModel::cellPlace(int row, int column) const {
  return cell(row, column).place;
}
std::optional<Severity> ValueModel::rowSeverity(int row) const {
  return rows_[static_cast<std::size_t>(row)].severity;
}
std::optional<Severity> ValueModel::rowBeyond(int row) const {
  return rows_[static_cast<std::size_t>(row)].beyond;
}
bool ValueModel::rowPartlyJudged(int row) const {
  return rows_[static_cast<std::size_t>(row)].is_partly_judged;
}

}  // namespace seamtakt::desk
