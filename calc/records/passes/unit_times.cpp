#include "records/passes/unit_times.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/time/log_time.hpp"
#include "records/log/table_fields.hpp"

namespace seamtakt {

namespace {

/// A time as the log has it: seconds or ISO 8601; false where it is neither.
bool parse_time(const std::string& text, bool decimal_comma, std::int64_t& ns, bool& counts_seconds) {
  LogTime time;
  counts_seconds = !parse_iso8601(text, time);
  if (counts_seconds) return parse_seconds(text, decimal_comma, ns);
  ns = time.ns;
  return true;
}

void check_units(const std::vector<UnitTime>& units, const std::string& file) {
  for (std::size_t i = 1; i < units.size(); ++i) {
    if (units[i].counts_seconds != units[0].counts_seconds)
      throw InputError(printable(file), "both seconds and ISO 8601 times"_word, "one of them"_word);
    if (units[i].start_ns < units[i - 1].end_ns)
      throw InputError(printable(file),
                       Sentence("units.at-one-time"_key, {{"unit", printable(units[i - 1].unit_serial, 60)},
                                                          {"other", printable(units[i].unit_serial, 60)}}),
                       "each unit's time to end before the next one's begins"_word);
  }
}

}  // namespace

std::vector<UnitTime> parse_unit_times(std::string_view csv, const std::string& file) {
  const CsvTable table = parse_csv(csv, file);
  const std::size_t serial = table.require("unit_serial"), start = table.require("start"),
                    end = table.require("end");
  const int weldment = table.column("weldment");
  const bool decimal_comma = table.delimiter != ',';
  std::vector<UnitTime> units;
  for (const CsvRow& row : table.rows) {
    UnitTime unit;
    unit.unit_serial = row.fields[serial];
    unit.weldment = optional_field(row, weldment);
    if (unit.unit_serial.empty()) refuse_field(csv, table, row, serial, "a serial number"_word);
    bool end_counts_seconds = false;
    if (!parse_time(row.fields[start], decimal_comma, unit.start_ns, unit.counts_seconds))
      refuse_field(csv, table, row, start, "seconds of the log, or an ISO 8601 time"_word);
    if (!parse_time(row.fields[end], decimal_comma, unit.end_ns, end_counts_seconds))
      refuse_field(csv, table, row, end, "seconds of the log, or an ISO 8601 time"_word);
    if (end_counts_seconds != unit.counts_seconds || unit.end_ns <= unit.start_ns)
      refuse_field(csv, table, row, end,
                   Sentence("units.time-after-start"_key, {{"start", printable(row.fields[start], 60)}}));
    units.push_back(std::move(unit));
  }
  std::stable_sort(units.begin(), units.end(),
                   [](const UnitTime& a, const UnitTime& b) { return a.start_ns < b.start_ns; });
  check_units(units, file);
  return units;
}
std::vector<UnitTime> load_unit_times(const std::string& path) {
  return parse_unit_times(read_file(path, largest_small_table), path);
}

std::vector<ManualSeam> parse_manual_seams(std::string_view csv, const std::string& file) {
  const CsvTable table = parse_csv(csv, file);
  const std::size_t serial = table.require("unit_serial"), seam = table.require("seam"),
                    result = table.require("result");
  const int weldment = table.column("weldment"), pass = table.column("pass"), welder = table.column("welder"),
            schedule = table.column("schedule"), date = table.column("date");
  std::vector<ManualSeam> seams;
  for (const CsvRow& row : table.rows) {
    ManualSeam manual{row.fields[serial],
                      optional_field(row, weldment),
                      row.fields[seam],
                      optional_pass(csv, table, row, pass).value_or(1),
                      optional_field(row, welder),
                      optional_field(row, schedule),
                      optional_field(row, date),
                      row.fields[result],
                      row.line};
    if (manual.unit_serial.empty()) refuse_field(csv, table, row, serial, "a serial number"_word);
    if (manual.seam.empty()) refuse_field(csv, table, row, seam, "a seam's id"_word);
    seams.push_back(std::move(manual));
  }
  return seams;
}
std::vector<ManualSeam> load_manual_seams(const std::string& path) {
  return parse_manual_seams(read_file(path, largest_small_table), path);
}

}  // namespace seamtakt
