#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "exchange/sheets/sheet.hpp"

namespace seamtakt {

namespace {

std::string field(const SheetCell& cell) {
  if (const double* number = std::get_if<double>(&cell)) return number_text(*number);
  if (const auto* text = std::get_if<std::string>(&cell)) return csv_field(*text);
  return {};
}

}  // namespace

SheetOrigin origin_of(const Provenance& provenance) {
  return {{"program", "seamtakt " + provenance.program_version},
          {"plan_file", provenance.plan_file},
          {"plan_sha256", provenance.plan_sha256},
          {"catalogue_sha256", provenance.catalogue_sha256},
          {"made_at_utc", provenance.made_at_utc},
          {"caution", "estimates only: qualification by test decides"}};
}

std::string sheet_csv(const Sheet& sheet, const SheetOrigin& origin) {
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
