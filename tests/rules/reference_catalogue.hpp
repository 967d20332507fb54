#pragma once

#include <set>
#include <string>
#include <vector>

namespace seamtakt::rules {

/// What a table of reference/ must look like.
struct TableShape {
  std::string file;
  std::vector<std::string> header;
  std::vector<std::string> identity;  ///< columns that together name a row; no two rows alike
};

const std::vector<TableShape>& table_shapes();

/// What a number in a column may be, by the column's name (its end carries the unit).
struct ColumnRange {
  std::string ending;
  double least, most;
};

const std::vector<ColumnRange>& column_ranges();

/// Keys of reference/sources.csv.
std::set<std::string> known_sources();

}  // namespace seamtakt::rules
