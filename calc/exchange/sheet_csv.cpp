#include "base/csv.hpp"
#include "base/units.hpp"
#include "exchange/sheet.hpp"

namespace seamtakt {

namespace {

std::string field(const SheetCell& cell) {
  if (const double* number = std::get_if<double>(&cell)) return number_text(*number);
  if (const auto* text = std::get_if<std::string>(&cell)) return csv_field(*text);
  return {};
}

}  // namespace

std::string sheet_csv(const Sheet& sheet, const Provenance& provenance) {
  std::string csv;
  for (const Sheet::Column& column : sheet.columns) csv += csv_field(column.key) + ",";
  csv += "program,plan_file,plan_sha256,catalogue_sha256,made_at_utc,caution\r\n";
  const std::string origin = csv_field("seamtakt " + provenance.program_version) + "," + csv_field(provenance.plan_file) + "," +
                             provenance.plan_sha256 + "," + provenance.catalogue_sha256 + "," + provenance.made_at_utc +
                             ",estimates only: qualification by test decides\r\n";
  for (const auto& row : sheet.rows) {
    for (const SheetCell& cell : row) csv += field(cell) + ",";
    csv += origin;
  }
  return csv;
}

}  // namespace seamtakt
