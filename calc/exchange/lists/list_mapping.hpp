#pragma once

#include <string>
#include <vector>

#include "exchange/lists/list_columns_file.hpp"
#include "exchange/workbook/book.hpp"

namespace seamtakt {

/// A column of a table with what it is read as.
struct MappedColumn {
  std::size_t column = 0;      ///< of the sheet, from 0
  std::string heading;         ///< as it is there, of two rows joined
  std::string key;             ///< of ListColumn; empty: it isn't read
  const Unit* unit = nullptr;  ///< in which its numbers are; nullptr: the field's own
};

/// Where in a book the list is, and how it is read. A person may change the columns before it is.
struct ListMapping {
  std::size_t sheet = 0;
  std::size_t head_row = 0;           ///< as a spreadsheet counts, the last row of the head
  std::size_t head_rows = 1;          ///< 1 or 2
  std::vector<std::size_t> rows;      ///< indexes of the sheet's rows with values
  std::size_t rows_below = 0;         ///< rows of the sheet below the list that aren't read
  std::vector<MappedColumn> columns;  ///< each with a head
  DecimalSign decimal = DecimalSign::either;

  /// The column that is read as this key; nullptr where there is none.
  const MappedColumn* column_of(std::string_view key) const;
};

/// Finds the list: of all tables of all sheets the one whose heads fit best; heads may be in two rows, the
/// upper one merged. The list ends at another head, or after an empty row at a row of words alone. Heads that
/// are repeated are left out.
/// Errors: InputError where no table has an id and another column; where a stated unit doesn't fit; where
/// the columns file names what isn't there.
ListMapping find_list(const Book& book, ListKind kind, const ListColumnsFile& columns = {});

/// What a person should know of how the table was read: hidden rows, stored results of formulas, columns and
/// rows that are left out.
std::vector<Sentence> mapping_notes(const Book& book, ListKind kind, const ListMapping& mapping);

}  // namespace seamtakt
