#include "exchange/workbook/sheet_builder.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

SheetBuilder::SheetBuilder(std::string file, std::string name, const BookLimits& limits,
                           std::size_t& cells_left)
    : file_(std::move(file)), limits_(limits), cells_left_(cells_left), spread_left_(limits.cells) {
  sheet_.name = std::move(name);
}

void SheetBuilder::refuse(Sentence found) const {
  throw InputError(printable(file_) + ":" + printable(sheet_.name), std::move(found), "fewer"_word);
}

BookRow* SheetBuilder::find_row(std::size_t row) {
  auto& rows = sheet_.rows;
  const auto at =
      std::lower_bound(rows.begin(), rows.end(), row + 1,
                       [](const BookRow& each, std::size_t number) { return each.number < number; });
  return at != rows.end() && at->number == row + 1 ? &*at : nullptr;
}

BookRow& SheetBuilder::row_at(std::size_t row) {
  auto& rows = sheet_.rows;
  if (rows.empty() || rows.back().number < row + 1) return rows.emplace_back(BookRow{row + 1, false, {}});
  if (rows.back().number == row + 1) return rows.back();
  if (BookRow* found = find_row(row)) return *found;
  throw InputError(printable(file_) + ":" + printable(sheet_.name),
                   Sentence("workbook.row-order"_key, {{"row", row + 1}}), "rows in order"_word);
}

void SheetBuilder::put(std::size_t row, std::size_t column, BookCell cell) {
  if (cell.is_empty()) return;
  if (column >= limits_.columns) refuse(Sentence("workbook.columns"_key, {{"count", limits_.columns}}));
  if (first_invalid_utf8(cell.text) != std::string_view::npos)
    throw InputError(printable(file_) + ":" + printable(sheet_.name) + "!" + column_letters(column) +
                         std::to_string(row + 1),
                     "a byte that isn't UTF-8"_word, "text in UTF-8"_word);
  BookRow& to = row_at(row);
  if (column >= to.cells.size()) {
    const std::size_t more = column + 1 - to.cells.size();
    if (more > cells_left_) refuse(Sentence("workbook.cells"_key, {{"count", limits_.cells}}));
    cells_left_ -= more;
    to.cells.resize(column + 1);
    columns_ = std::max(columns_, column + 1);
  }
  to.cells[column] = std::move(cell);
}

void SheetBuilder::hide_row(std::size_t row) {
  hidden_rows_.push_back(row);
}

void SheetBuilder::hide_columns(std::size_t first, std::size_t last) {
  last = std::min(last, limits_.columns - 1);
  if (first > last) return;
  if (sheet_.hidden_columns.size() <= last) sheet_.hidden_columns.resize(last + 1);
  for (std::size_t column = first; column <= last; ++column) sheet_.hidden_columns[column] = true;
}

/// The value goes to all cells of the group, as far as there are rows and columns with values.
void SheetBuilder::spread(const MergedCells& cells) {
  const BookRow* first = find_row(cells.first_row);
  if (!first || first->at(cells.first_column).is_empty()) return;
  const BookCell value = first->at(cells.first_column);
  ++sheet_.merged;
  const std::size_t last_column = std::min(cells.last_column, columns_ - 1);
  for (BookRow& row : sheet_.rows) {
    if (row.number - 1 < cells.first_row || row.number - 1 > cells.last_row) continue;
    for (std::size_t column = cells.first_column; column <= last_column; ++column) {
      if (row.number - 1 == cells.first_row && column == cells.first_column) continue;
      if (spread_left_-- == 0) refuse(Sentence("workbook.cells"_key, {{"count", limits_.cells}}));
      BookCell copy = value;
      copy.from_left = column > cells.first_column;
      put(row.number - 1, column, std::move(copy));
    }
  }
}

BookSheet SheetBuilder::take() {
  // Each group looks through the rows: a list of very many would take long.
  if (merged_.size() * std::max<std::size_t>(sheet_.rows.size(), 1) > 100 * limits_.cells)
    refuse(Sentence("workbook.merged"_key, {{"count", merged_.size()}}));
  for (const MergedCells& cells : merged_) spread(cells);
  for (const std::size_t row : hidden_rows_)
    if (BookRow* found = find_row(row)) found->is_hidden = true;
  return std::move(sheet_);
}

}  // namespace seamtakt
