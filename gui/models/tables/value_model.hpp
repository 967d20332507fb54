#pragma once

#include <memory>

#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt::desk {

/// A read-only table of derived values; the owner of the values fills in the cells.
class ValueModel : public GridModel {
  Q_OBJECT

 public:
  struct Cell {
    QString text;                  ///< shown where there is no number
    std::optional<double> number;  ///< in the column's unit
    int digits = 4;
    QString place;  ///< for `explain`
    QString tip;
    QString word = {};  ///< shown in the place of the number
  };
  struct Row {
    std::vector<Cell> cells;
    QString address;
    std::optional<Severity> severity = {};
    std::optional<Severity> beyond = {};  ///< worse, of another page
    bool is_partly_judged = false;
  };

  explicit ValueModel(std::vector<GridColumn> columns, QObject* parent = nullptr);
  void setRows(std::vector<Row> rows);
  /// The plan that explains the values.
  void setPlan(std::shared_ptr<const Plan> plan) { plan_ = std::move(plan); }
  const Row& row(int row) const { return rows_[static_cast<std::size_t>(row)]; }
  int rowCount(const QModelIndex& parent = {}) const override;

 protected:
  QString cellText(int row, int column) const override;
  std::optional<double> cellNumber(int row, int column) const override;
  QString cellTip(int row, int column) const override;
  QString rowAddress(int row) const override;
  QString cellPlace(int row, int column) const override;
  std::optional<Severity> rowSeverity(int row) const override;
  std::optional<Severity> rowBeyond(int row) const override;
  bool rowPartlyJudged(int row) const override;
  const Plan* plan() const override { return plan_.get(); }

 private:
  const Cell& cell(int row, int column) const;
  std::vector<Row> rows_;
  std::shared_ptr<const Plan> plan_;
};

inline ValueModel::Cell text_cell(const QString& text) {
  return {text, std::nullopt, 0, {}, {}};
}
/// A dash where there is no number.
inline ValueModel::Cell number_cell(const std::optional<double>& number, int digits) {
  return {QStringLiteral("–"), number, digits, {}, {}};
}

/// A number whose unit differs from row to row, so that the column has none; empty where there is no number.
inline ValueModel::Cell quantity_cell(const std::optional<double>& number, const std::string& unit) {
  return text_cell(number ? UnitView::shared().quantityText(*number, unit.c_str(), 4) : QString());
}
/// A read-only column of texts, which may have a number's unit: "8.6 → 9.2".
inline GridColumn text_column(const char* key, const QString& label, const QString& help = {},
                              const char* unit = "") {
  return {key, label, unit, help, false, true, nullptr};
}
inline GridColumn number_column(const char* key, const QString& label, const QString& help = {},
                                const char* unit = "") {
  return {key, label, unit, help, true, true, nullptr};
}

/// The columns of one of the core's tables.
template <class Row>
std::vector<GridColumn> value_columns(std::span<const Column<Row>> columns, bool brief_only) {
  std::vector<GridColumn> grid;
  for (const auto& column : columns)
    if (column.brief || !brief_only)
      grid.push_back({column.key, core_label(column.label), column.unit, core_text(column.help),
                      column.digits > 0, true, nullptr});
  return grid;
}

/// The word shown instead of a number ("none"), in the user's language; empty where the number is shown.
template <class Row>
QString word_shown(const Column<Row>& column, const Row& row) {
  const ColumnValue shown = column.shown(row);
  const auto* word = std::get_if<std::string_view>(&shown);
  return word && std::holds_alternative<double>(column.value(row)) ? core_text(*word) : QString();
}

/// One row of such a table; `place` is where `explain` finds its values.
template <class Row>
ValueModel::Row value_row(std::span<const Column<Row>> columns, bool brief_only, const Row& row,
                          const QString& place) {
  ValueModel::Row cells;
  for (const auto& column : columns) {
    if (!column.brief && brief_only) continue;
    const ColumnValue value = column.value(row);
    ValueModel::Cell cell;
    if (const double* number = std::get_if<double>(&value)) {
      cell.number = *number;
      cell.place = place;
    }
    if (!cell.number) cell.text = UnitView::shared().columnText(value, column.unit, column.digits);
    cell.word = word_shown(column, row);
    cell.digits = column.digits;
    cells.cells.push_back(std::move(cell));
  }
  return cells;
}

}  // namespace seamtakt::desk
