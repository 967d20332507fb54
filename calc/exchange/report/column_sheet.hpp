#pragma once

#include <span>

#include "base/results/column.hpp"
#include "exchange/sheets/sheet.hpp"

namespace seamtakt {

SheetCell cell_of(const ColumnValue& value);
/// The same cell, its text marked as a word of the program if a column of this key has such words: a
/// verdict, a kind of transfer.
SheetCell word_or_text(std::string_view key, SheetCell cell);

/// A table of results, by the columns that the command line and the desk show too. `first`: the keys that a
/// reader looks for first.
template <class Row>
Sheet column_sheet(const char* name, std::span<const Column<Row>> described, const std::vector<Row>& rows,
                   std::span<const std::string_view> first = {}) {
  const auto columns = ordered_columns(described, first, Shown::all);
  Sheet sheet{name, {}, {}};
  for (const auto* column : columns)
    sheet.columns.push_back({column->key,
                             {Word::of_table(column->label), column->unit},
                             column->digits,
                             column->brief,
                             column->none_up_to});
  for (const Row& row : rows) {
    std::vector<SheetCell> cells;
    for (const auto* column : columns)
      cells.push_back(word_or_text(column->key, cell_of(column->value(row))));
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

/// The same with all its columns on the page.
Sheet with_all_columns(Sheet sheet);

}  // namespace seamtakt
