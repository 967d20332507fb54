#pragma once

#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "exchange/workbook/book.hpp"

namespace seamtakt {

/// Cells that show one value: rows and columns from 0, both ends included.
struct MergedCells {
  std::size_t first_row = 0, last_row = 0, first_column = 0, last_column = 0;
};

/// Puts a sheet together from cells that come row by row, within the limits.
class SheetBuilder {
 public:
  /// `cells_left`: how many the whole book may still have.
  SheetBuilder(std::string file, std::string name, const BookLimits& limits, std::size_t& cells_left);

  /// Rows and columns count from 0, rows come in order. A cell without a value may be left out. InputError
  /// beyond a limit.
  void put(std::size_t row, std::size_t column, BookCell cell);
  void hide_row(std::size_t row);
  void hide_columns(std::size_t first, std::size_t last);
  void merge(const MergedCells& cells) { merged_.push_back(cells); }
  void count_formula() { ++sheet_.formulas; }

  BookSheet take();

 private:
  BookRow& row_at(std::size_t row);
  /// The row of this index if it is there.
  BookRow* find_row(std::size_t row);
  void spread(const MergedCells& cells);
  [[noreturn]] void refuse(Sentence found) const;

  std::string file_;
  const BookLimits& limits_;
  std::size_t& cells_left_;
  std::size_t spread_left_;  ///< cells that merged groups may still fill
  std::size_t columns_ = 0;  ///< the widest row's
  BookSheet sheet_;
  std::vector<std::size_t> hidden_rows_;
  std::vector<MergedCells> merged_;
};

}  // namespace seamtakt
