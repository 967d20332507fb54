#include "exchange/caution.hpp"
#include "exchange/record_page.hpp"
#include "exchange/unit_record.hpp"

namespace seamtakt {

std::string unit_report_html(const Ledger& ledger, const std::string& unit_serial,
                             const VerifyReport& verified, const std::string& made_at_utc) {
  const SheetOrigin origin = origin_of(ledger, verified, made_at_utc);
  const std::vector<Sheet> sheets = unit_sheets(ledger, unit_serial, origin);
  HtmlPage page("Weld record of unit " + unit_serial);
  page.paragraph(caution_text(), "caution");
  put_pairs(page, sheet_named(sheets, "unit"));
  put_table(page, "Open items and dispositions", sheet_named(sheets, "open-items"));
  put_table(page, "Heat input by robot pass", sheet_named(sheets, "passes"));
  put_table(page, "Manual seams", sheet_named(sheets, "manual"));
  put_table(page, "Schedule revisions", sheet_named(sheets, "schedules"));
  put_table(page, "Instruments on the day", sheet_named(sheets, "instruments"));
  put_table(page, "Corrections, void records, sign-offs", sheet_named(sheets, "changes"));
  put_verification(page, verified);
  put_origin(page, origin);
  return page.finish();
}

}  // namespace seamtakt
