#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/sheet.hpp"

namespace seamtakt {

namespace {

std::string field(const SheetCell& cell) {
  if (const double* number = std::get_if<double>(&cell)) return number_text(*number);
  return csv_field(file_text(cell));
}

}  // namespace

std::string sheet_csv(const Sheet& given, const SheetOrigin& origin) {
  const Sheet sheet = with_pairs_apart(given);
  std::string csv, ending;
  for (const Sheet::Column& column : sheet.columns) csv += csv_field(column.key) + ",";
  for (const auto& [key, value] : origin) {
    const bool is_last = &key == &origin.back().first;
    csv += csv_field(key) + (is_last ? "\r\n" : ",");
    ending += csv_field(value) + (is_last ? "\r\n" : ",");
  }
  for (const auto& row : sheet.rows) {
    for (const SheetCell& cell : row) csv += field(cell) + ",";
    csv += ending;
  }
  return csv;
}

}  // namespace seamtakt
