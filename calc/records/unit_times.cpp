#include "records/unit_times.hpp"

#include <algorithm>
#include <charconv>

#include "base/csv.hpp"
#include "base/error.hpp"
#include "records/log_time.hpp"

namespace seamtakt {

namespace {

/// A time as the log has it: seconds or ISO 8601.
std::int64_t parse_time(const std::string& text, const std::string& where, bool decimal_comma,
                        bool& counts_seconds) {
  std::int64_t ns = 0;
  LogTime time;
  if (parse_iso8601(text, time)) {
    counts_seconds = false;
    return time.ns;
  }
  counts_seconds = true;
  if (parse_seconds(text, decimal_comma, ns)) return ns;
  throw InputError(where, '"' + printable(text, 60) + '"', "seconds of the log, or an ISO 8601 time");
}

std::string field_of(const CsvRow& row, int column) {
  return column < 0 ? std::string() : row.fields[static_cast<std::size_t>(column)];
}

std::string cell(const CsvTable& table, const CsvRow& row, std::size_t column) {
  return printable(table.file) + ":" + std::to_string(row.line) + ":" + std::to_string(column + 1);
}

void check_units(const std::vector<UnitTime>& units, const std::string& file) {
  for (std::size_t i = 1; i < units.size(); ++i) {
    if (units[i].counts_seconds != units[0].counts_seconds)
      throw InputError(printable(file), "both seconds and ISO 8601 times", "one of them");
    if (units[i].start_ns < units[i - 1].end_ns)
      throw InputError(printable(file),
                       "units " + printable(units[i - 1].unit_serial, 60) + " and " +
                           printable(units[i].unit_serial, 60) + " at one time",
                       "each unit's time to end before the next one's begins");
  }
}

std::vector<UnitTime> unit_times_of(const CsvTable& table) {
  const std::size_t serial = table.require("unit_serial"), start = table.require("start"),
                    end = table.require("end");
  const int weldment = table.column("weldment");
  const bool decimal_comma = table.delimiter != ',';
  std::vector<UnitTime> units;
  for (const auto& row : table.rows) {
    UnitTime unit;
    unit.unit_serial = row.fields[serial];
    unit.weldment = field_of(row, weldment);
    if (unit.unit_serial.empty())
      throw InputError(cell(table, row, serial), "no unit_serial", "a serial number");
    bool end_counts_seconds = false;
    unit.start_ns =
        parse_time(row.fields[start], cell(table, row, start), decimal_comma, unit.counts_seconds);
    unit.end_ns = parse_time(row.fields[end], cell(table, row, end), decimal_comma, end_counts_seconds);
    if (end_counts_seconds != unit.counts_seconds || unit.end_ns <= unit.start_ns)
      throw InputError(cell(table, row, end), '"' + printable(row.fields[end], 60) + '"',
                       "a time after start, \"" + printable(row.fields[start], 60) + '"');
    units.push_back(std::move(unit));
  }
  std::stable_sort(units.begin(), units.end(),
                   [](const UnitTime& a, const UnitTime& b) { return a.start_ns < b.start_ns; });
  check_units(units, table.file);
  return units;
}

std::vector<ManualSeam> manual_seams_of(const CsvTable& table) {
  const std::size_t serial = table.require("unit_serial"), seam = table.require("seam"),
                    result = table.require("result");
  const int weldment = table.column("weldment"), pass = table.column("pass"), welder = table.column("welder"),
            schedule = table.column("schedule"), date = table.column("date");
  std::vector<ManualSeam> seams;
  for (const auto& row : table.rows) {
    ManualSeam manual{
        row.fields[serial],      field_of(row, weldment), row.fields[seam],   1,       field_of(row, welder),
        field_of(row, schedule), field_of(row, date),     row.fields[result], row.line};
    if (manual.unit_serial.empty())
      throw InputError(cell(table, row, serial), "no unit_serial", "a serial number");
    if (manual.seam.empty()) throw InputError(cell(table, row, seam), "no seam", "a seam's id");
    const std::string number = field_of(row, pass);
    if (!number.empty()) {
      int parsed = 0;
      const auto end = std::from_chars(number.data(), number.data() + number.size(), parsed);
      if (end.ec != std::errc() || end.ptr != number.data() + number.size() || parsed < 1)
        throw InputError(cell(table, row, static_cast<std::size_t>(pass)), '"' + printable(number, 60) + '"',
                         "a whole number from 1");
      manual.pass = parsed;
    }
    seams.push_back(std::move(manual));
  }
  return seams;
}

}  // namespace

std::vector<UnitTime> parse_unit_times(std::string_view csv, const std::string& file) {
  return unit_times_of(parse_csv(csv, file));
}
std::vector<UnitTime> load_unit_times(const std::string& path) {
  return unit_times_of(read_csv(path));
}

std::vector<ManualSeam> parse_manual_seams(std::string_view csv, const std::string& file) {
  return manual_seams_of(parse_csv(csv, file));
}
std::vector<ManualSeam> load_manual_seams(const std::string& path) {
  return manual_seams_of(read_csv(path));
}

}  // namespace seamtakt
