#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/sheet.hpp"

namespace seamtakt {

namespace {

const TextView& file_view() {
  return TextView::plain_english();
}

/// A negative number isn't guarded as text is.
std::string field(const SheetCell& cell) {
  if (!std::holds_alternative<Count>(cell))
    if (const auto number = file_number(cell, file_view())) return number_text(*number);
  return csv_field(file_text(cell, file_view()));
}

}  // namespace

std::string sheet_csv(const Sheet& given, const SheetOrigin& origin) {
  const Sheet sheet = with_pairs_apart(given);
  std::string csv, ending;
  for (const Sheet::Column& column : sheet.columns) csv += csv_field(column.key) + ",";
  for (const OriginItem& item : origin) {
    const char* end = &item == &origin.back() ? "\r\n" : ",";
    csv += csv_field(item.key) + end;
    ending += csv_field(file_text(item.value, file_view())) + end;
  }
  for (const auto& row : sheet.rows) {
    for (const SheetCell& cell : row) csv += field(cell) + ",";
    csv += ending;
  }
  return csv;
}

}  // namespace seamtakt
