#include "exchange/report/record_page.hpp"

#include <stdexcept>

#include "base/units/units.hpp"
#include "exchange/sheets/qr_code.hpp"

namespace seamtakt {

namespace {

constexpr int digits = 5;

std::string text_of(const SheetCell& cell) {
  if (const double* number = std::get_if<double>(&cell)) return rounded_text(*number, digits);
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  return "-";
}

bool is_numeric(const Sheet& sheet, std::size_t column) {
  for (const auto& row : sheet.rows)
    if (std::holds_alternative<std::string>(row[column])) return false;
  return true;
}

}  // namespace

void put_distrust(HtmlPage& page, const VerifyReport& verified) {
  if (verified.trusted) return;
  page.paragraph(verified.summary() + ". What follows can't be relied on; the reasons stand at its end.",
                 "caution");
}

void put_pairs(HtmlPage& page, const Sheet& sheet) {
  std::vector<std::pair<std::string, std::string>> items;
  for (const auto& row : sheet.rows) items.emplace_back(text_of(row[0]), text_of(row[1]));
  page.data_list(items);
}

void put_table(HtmlPage& page, const std::string& heading, const Sheet& sheet) {
  page.heading(2, heading);
  if (sheet.rows.empty()) return page.paragraph("None.");
  std::vector<std::string> head;
  std::vector<bool> numeric;
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    head.push_back(sheet.columns[i].heading);
    numeric.push_back(is_numeric(sheet, i));
  }
  std::vector<std::vector<std::string>> rows;
  for (const auto& row : sheet.rows) {
    std::vector<std::string> cells;
    for (const SheetCell& cell : row) cells.push_back(text_of(cell));
    rows.push_back(std::move(cells));
  }
  page.table(head, numeric, rows);
}

const Sheet& sheet_named(const std::vector<Sheet>& sheets, std::string_view name) {
  for (const Sheet& sheet : sheets)
    if (sheet.name == name) return sheet;
  throw std::logic_error("no such table of a record");
}

namespace {

void put_verification(HtmlPage& page, const VerifyReport& verified) {
  page.heading(2, "Whether the records can be trusted");
  page.paragraph(verified.summary() + ".", verified.trusted ? "" : "caution");
  for (const LedgerProblem& problem : verified.problems)
    page.paragraph((problem.seq > 0 ? "Record " + std::to_string(problem.seq) + ": " : "") + problem.text);
  page.paragraph(
      "Keep the line below outside of the store (paper will do). As long as the store agrees with it, no "
      "record up "
      "to its number was changed, taken away or slipped in since: seamtakt ledger verify --store STORE "
      "--anchor FILE; FILE takes the anchor as it stands here, in groups and on several lines, too.",
      "quiet");
  if (!verified.newest_head) return;
  const std::string line = verified.newest_head->anchor_line();
  page.begin_section();
  page.code_item("Anchor", anchor_groups(line));
  page.raw(qr_svg(line, "The anchor line as a QR code"));
  page.end_section();
}

void put_origin(HtmlPage& page, const SheetOrigin& origin) {
  const auto value = [&](std::string_view key) {
    for (const auto& [name, text] : origin)
      if (name == key) return text;
    return std::string();
  };
  page.heading(2, "Made with and from");
  page.data_list({{"Program", value("program")},
                  {"Store", value("store")},
                  {"Store id", value("store_id")},
                  {"Made at", value("made_at_utc")}});
  page.raw("<div class=\"sign\"><div>Inspected</div><div>Released</div></div>\n");
}

}  // namespace

void put_records(HtmlPage& page, const std::vector<Sheet>& sheets, const VerifyReport& verified,
                 const SheetOrigin& origin) {
  put_table(page, "Open items and dispositions", sheet_named(sheets, "open-items"));
  put_table(page, "Heat input by robot pass", sheet_named(sheets, "passes"));
  put_table(page, "Manual seams", sheet_named(sheets, "manual"));
  put_table(page, "Schedule revisions", sheet_named(sheets, "schedules"));
  put_table(page, "Instruments on the day", sheet_named(sheets, "instruments"));
  put_table(page, "Corrections, void records, sign-offs", sheet_named(sheets, "changes"));
  put_verification(page, verified);
  put_origin(page, origin);
}

}  // namespace seamtakt
