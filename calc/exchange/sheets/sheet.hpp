#pragma once

#include <string>
#include <variant>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/provenance.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A cell of a table that leaves the program; monostate is an empty cell.
using SheetCell = std::variant<std::monostate, double, std::string>;

/// One table of a report in the form that spreadsheets and other programs read.
struct Sheet {
  struct Column {
    std::string key;      ///< the contract's key with its unit: "heat_input_kJ_mm"
    std::string heading;  ///< "Heat input, kJ/mm"
  };
  std::string name;  ///< "passes", "seams", "weldments", "cycle", "findings", "schedules", "about"
  std::vector<Column> columns;
  std::vector<std::vector<SheetCell>> rows;  ///< each as long as `columns`
};

/// The report's tables: heat-input record by pass, seams, weldments, cycle sheet, findings, schedule sheets
/// and what it was made with and from (cautions included). A pair (a span, each plate's value) stands in two
/// cells, its keys ending in `_lo` and `_hi` where any row has one.
std::vector<Sheet> report_sheets(const Plan& plan, const Evaluation& evaluation,
                                 const std::vector<CycleResult>& cycles, const Provenance& provenance);

/// What tables were made with and from: keys and values, among them `made_at_utc`.
using SheetOrigin = std::vector<std::pair<std::string, std::string>>;
SheetOrigin origin_of(const Provenance& provenance);

/// RFC 4180 with the keys as header, CRLF line ends; text that a spreadsheet would take for a formula is
/// guarded. The origin stands in the last columns of every row, so that a row that is cut out still tells
/// where it is from.
std::string sheet_csv(const Sheet& sheet, const SheetOrigin& origin);

/// A workbook (Office Open XML) with a sheet each; text is stored as text, never as a formula. Errors:
/// std::system_error where its temporary file can't be written or read, or where a sheet has more rows than a
/// workbook can hold.
std::string sheets_xlsx(const std::vector<Sheet>& sheets, const std::string& title,
                        const SheetOrigin& origin);

}  // namespace seamtakt
