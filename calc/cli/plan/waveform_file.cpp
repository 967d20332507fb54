#include "cli/plan/waveform_file.hpp"

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/units/units.hpp"

namespace seamtakt::cli {

namespace {

std::size_t column_of(const CsvTable& table, const char* with_unit, const char* bare) {
  const int named = table.column(bare);
  return named >= 0 ? static_cast<std::size_t>(named) : table.require(with_unit);
}

std::vector<double> numbers_of(const CsvTable& table, std::size_t column) {
  std::vector<double> numbers;
  numbers.reserve(table.rows.size());
  for (const CsvRow& row : table.rows) {
    double value;
    if (!parse_number(row.fields[column], value, table.delimiter != ','))
      throw InputError(table.file + ":" + std::to_string(row.line),
                       "\"" + printable(row.fields[column]) + "\"",
                       Sentence("waveform.number"_key, {{"column", table.header[column]}}));
    numbers.push_back(value);
  }
  return numbers;
}

}  // namespace

std::map<std::string, std::vector<double>, std::less<>> read_waveform(const std::string& path) {
  const CsvTable table = read_csv(path);
  return {{"time", numbers_of(table, column_of(table, "time_s", "time"))},
          {"voltage", numbers_of(table, column_of(table, "voltage_V", "voltage"))},
          {"current", numbers_of(table, column_of(table, "current_A", "current"))}};
}

double parse_difference(const std::string& text, const Unit& bare, const std::string& where) {
  return parse_quantity(text, difference_unit(bare), where);
}

}  // namespace seamtakt::cli
