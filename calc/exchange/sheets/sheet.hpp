#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence_text.hpp"
#include "exchange/sheets/cell.hpp"

namespace seamtakt {

/// One table of a report: the page, spreadsheets and other programs read the same.
struct Sheet {
  /// Which end of a pair a column of a file holds.
  enum class End { none, low, high };
  struct Column {
    std::string key;  ///< the contract's key with its unit: "heat_input_kJ_mm"
    Heading heading;
    /// Significant digits shown to people, 0 for text and whole numbers; where none is stated, the cells
    /// decide.
    std::optional<int> digits = {};
    bool brief = true;  ///< shown on the page; files have all columns
    /// Numbers up to this are shown to people as "none"; files have the number.
    double none_up_to = -std::numeric_limits<double>::infinity();
    End end = End::none;
    Word group = {};  ///< of which object its value is: "groove"; empty: the row's own
  };
  std::string name;  ///< "passes", "seams", "weldments", "cycle", "order", "findings", "schedules",
                     ///< "judgement", "about"
  std::vector<Column> columns;
  std::vector<std::vector<SheetCell>> rows;  ///< each as long as `columns`
};

/// A table as people see it on a page.
struct ShownTable {
  std::vector<std::string> head;
  std::vector<bool> numeric;  ///< a column of numbers, aligned right
  std::vector<std::vector<std::string>> rows;
};
ShownTable shown_table(const Sheet& sheet, const TextView& view);

/// "Heat input, kJ/mm", "Cooling time span, s (low)".
std::string column_heading_text(const Sheet::Column& column, const TextView& view);

/// An id, a moment or a number, which isn't broken over two lines.
bool stays_on_one_line(std::string_view text);

/// As files hold it: a column of pairs becomes two, their keys ending in `_lo` and `_hi`.
Sheet with_pairs_apart(const Sheet& sheet);

/// std::logic_error where there is none.
const Sheet& sheet_named(const std::vector<Sheet>& sheets, std::string_view name);

/// Something that tables were made with or from.
struct OriginItem {
  std::string key;  ///< in files: "made_at_utc"
  SheetCell value;
  Word label = {};  ///< to people
};
using SheetOrigin = std::vector<OriginItem>;
/// Its label in a table of such items.
SheetCell origin_label(const OriginItem& item);

/// RFC 4180 with the keys as header, CRLF line ends; text that a spreadsheet would take for a formula is
/// guarded. The origin is in the last columns of every row, so that a row copied elsewhere still shows where
/// it is from.
std::string sheet_csv(const Sheet& sheet, const SheetOrigin& origin);

/// A workbook (Office Open XML) with a sheet each; text is stored as text, never as a formula, numbers in the
/// view's units. Errors: std::system_error where its temporary file can't be written or read, or where a
/// sheet has more rows than a workbook can hold.
std::string sheets_xlsx(const std::vector<Sheet>& sheets, const SheetCell& title, const SheetOrigin& origin,
                        const TextView& view);

}  // namespace seamtakt
