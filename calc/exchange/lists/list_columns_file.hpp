#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/lists/cell_value.hpp"

namespace seamtakt {

/// How the columns of a list with heads of its own are read: a --columns file, or what the desk remembers.
/// Columns that it doesn't mention are still known by their heads.
struct ListColumnsFile {
  struct Entry {
    std::string key;             ///< of ListColumn
    std::string heading;         ///< of the column, without regard to case; empty: by number, or no column
    std::size_t number = 0;      ///< of the column, from 1
    const Unit* unit = nullptr;  ///< in which its numbers are; nullptr: the head's, else the field's own
    std::string standard;        ///< what new rows have where the cell is empty; empty: nothing
  };
  std::string file;   ///< for messages
  std::string sheet;  ///< empty: the one whose heads fit best
  std::size_t head_row =
      0;  ///< as the spreadsheet counts, the last row of the head; 0: the one that fits best
  DecimalSign decimal = DecimalSign::either;
  bool states_decimal = false;
  std::string weldment;  ///< of rows that name none
  std::vector<Entry> entries;
  std::vector<std::string> ignored;  ///< heads of columns that aren't read
  /// Entries whose head isn't there are left out; else that is an error.
  bool is_memory = false;
};

/// Parses a columns file of a list, a JSON object: each key of a column with a heading, a number, or
/// {"column", "unit", "default"}; "sheet", "head_row", "decimal" ("comma" or "point"), "weldment", "ignore"
/// (headings). InputError at FILE:LINE:COLUMN for unknown keys (keys that begin with x_ are free), wrong
/// types, a unit that doesn't fit.
ListColumnsFile parse_list_columns(std::string_view json, const std::string& file, ListKind kind);
ListColumnsFile load_list_columns(const std::string& path, ListKind kind);

}  // namespace seamtakt
