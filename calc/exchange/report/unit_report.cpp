#include "exchange/report/caution.hpp"
#include "exchange/report/record_page.hpp"
#include "exchange/report/unit_record.hpp"

namespace seamtakt {

std::string unit_report_html(const Ledger& ledger, const std::string& unit_serial,
                             const VerifyReport& verified, const std::string& made_at_utc) {
  const SheetOrigin origin = origin_of(ledger, verified, made_at_utc);
  const std::vector<Sheet> sheets = unit_sheets(ledger, unit_serial, origin);
  HtmlPage page("Weld record of unit " + unit_serial);
  page.paragraph(caution_text(), "caution");
  put_distrust(page, verified);
  put_pairs(page, sheet_named(sheets, "unit"));
  put_records(page, sheets, verified, origin);
  return page.finish();
}

}  // namespace seamtakt
