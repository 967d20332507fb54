#pragma once

#include <string>
#include <vector>

#include "exchange/lists/list_import.hpp"
#include "plan/fields/plan_file.hpp"
#include "zip_writer.hpp"

/// A small plan, and lists for it.
namespace seamtakt {

using State = ImportedRow::State;
using Rows = std::vector<std::vector<std::string>>;

inline Plan small_plan() {
  return parse_plan(R"({"format": "weldplan", "version": 1,
    "base_metals": [{"id": "S355", "composition_pct": {"C": 0.17}}],
    "wires": [{"id": "W12", "diameter_mm": 1.2, "density_g_cm3": 7.85, "alpha_mm_s_A": 0.3,
               "beta_per_s_A2": 5e-5, "deposition_efficiency": 0.96}],
    "schedules": [
      {"id": "F6", "status": "approved", "process": "135", "wire": "W12", "wire_feed_speed_m_min": 9.5,
       "arc_voltage_V": 29, "travel_speed_mm_s": 8, "contact_tip_distance_mm": 18},
      {"id": "F4", "process": "135", "wire": "W12", "wire_feed_speed_m_min": 8.5, "arc_voltage_V": 27,
       "travel_speed_mm_s": 10, "contact_tip_distance_mm": 18}],
    "weldments": [{"id": "BD", "seams": [
      {"id": "S01", "joint": "tee", "thickness_mm": [10, 8], "base_metals": ["S355", "S355"], "leg_mm": 6,
       "position": "PB", "schedules": ["F6"], "path_mm": [[0, 0, 0], [500, 0, 0]]}]}]})",
                    "small.weldplan.json");
}

inline Book csv(const std::string& text) {
  return parse_book(text, "list.csv");
}

inline Book workbook(const Rows& rows, const std::string& more = "") {
  return parse_book(xlsx_of({{"Seams", "<sheetData>" + sheet_data(rows) + "</sheetData>" + more}}),
                    "list.xlsx");
}

inline ListImport import(const Plan& plan, const Book& book, ListImportOptions options = {},
                         const ListColumnsFile& columns = {}) {
  return import_list(plan, book, find_list(book, options.kind, columns), options);
}

inline std::string text_of(const RefusedCell& cell) {
  return cell.place + " " + cell.heading + ": " + cell.found.english() + ", " + cell.expected.english();
}

}  // namespace seamtakt
