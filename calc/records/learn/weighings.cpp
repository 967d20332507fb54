#include "records/learn/weighings.hpp"

#include <cmath>
#include <set>
#include <tuple>

#include "base/csv/csv_place.hpp"
#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "records/log/table_fields.hpp"

namespace seamtakt {

std::vector<Weighing> parse_weighings(std::string_view csv, const std::string& file) {
  const CsvTable table = parse_csv(csv, file);
  const std::size_t serial = table.require("unit_serial"), seam = table.require("seam"),
                    gained = table.require("gained_g");
  const int weldment = table.column("weldment"), pass = table.column("pass");
  std::vector<Weighing> weighings;
  std::set<std::tuple<std::string, std::string, std::string, int>> seen;
  for (const CsvRow& row : table.rows) {
    Weighing weighing{row.fields[serial],
                      optional_field(row, weldment),
                      row.fields[seam],
                      optional_pass(csv, table, row, pass),
                      0,
                      row.line};
    if (weighing.unit_serial.empty()) refuse_field(csv, table, row, serial, "a serial number"_word);
    if (weighing.seam.empty()) refuse_field(csv, table, row, seam, "a seam's id"_word);
    if (!parse_number(row.fields[gained], weighing.gained_g, table.delimiter != ',') ||
        weighing.gained_g <= 0)
      refuse_field(csv, table, row, gained, "grams above 0"_word);
    if (!seen.emplace(weighing.unit_serial, weighing.weldment, weighing.seam, weighing.pass.value_or(0))
             .second)
      throw InputError(field_place(csv, table, row, seam), "this weld a second time"_word,
                       "each weld once"_word);
    weighings.push_back(std::move(weighing));
  }
  return weighings;
}

std::vector<Weighing> load_weighings(const std::string& path) {
  return parse_weighings(read_file(path, largest_small_table), path);
}

}  // namespace seamtakt
