#include "models/tables/actual_table.hpp"

#include "document/shown_text.hpp"
#include "records/actual/actual_rows.hpp"

namespace seamtakt::desk {

namespace {

/// The same as value_row, with sentences in the user's language; a sentence that doesn't fit is the tip, too.
template <class Row>
ValueModel::Row sentence_row(std::span<const Column<Row>> columns, const Row& row) {
  ValueModel::Row cells = value_row(columns, true, row, QString());
  std::size_t shown = 0;
  for (const auto& column : columns) {
    if (!column.brief) continue;
    ValueModel::Cell& cell = cells.cells[shown++];
    const ColumnValue value = column.value(row);
    if (const auto* sentence = std::get_if<const Sentence*>(&value))
      cell.text = cell.tip = shown_text(**sentence);
    if (std::holds_alternative<std::monostate>(value) && column.digits == 0) cell.text.clear();
  }
  return cells;
}

}  // namespace

std::vector<GridColumn> actual_unit_grid() {
  return value_columns(actual_unit_columns(), true);
}

std::vector<ValueModel::Row> actual_unit_grid_rows(const CycleActual& actual) {
  std::vector<ValueModel::Row> rows;
  for (const ActualUnitRow& unit : actual_unit_rows(actual))
    rows.push_back(sentence_row(actual_unit_columns(), unit));
  return rows;
}

std::vector<GridColumn> actual_step_grid() {
  return value_columns(actual_step_columns(), true);
}

std::vector<ValueModel::Row> actual_step_grid_rows(const UnitActual& unit) {
  std::vector<ValueModel::Row> rows;
  for (const ActualStepRow& step : actual_step_rows(unit))
    rows.push_back(sentence_row(actual_step_columns(), step));
  return rows;
}

}  // namespace seamtakt::desk
