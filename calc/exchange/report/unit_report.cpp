#include "exchange/report/record_sections.hpp"
#include "exchange/report/unit_record.hpp"

namespace seamtakt {

Report unit_report(const Ledger& ledger, const std::string& unit_serial, const VerifyReport& verified,
                   const std::string& made_at_utc) {
  const SheetOrigin origin = origin_of(ledger, verified, made_at_utc);
  const std::vector<Sheet> sheets = unit_sheets(ledger, unit_serial, origin);
  Report report = record_report(PatternCell{"Weld record of unit {1}"_word, {unit_serial}}, verified);
  report.add(items_of(sheet_named(sheets, "unit")));
  add_record_sections(report, sheets, verified, origin);
  return report;
}

std::string unit_report_html(const Ledger& ledger, const std::string& unit_serial,
                             const VerifyReport& verified, const std::string& made_at_utc,
                             const TextView& view) {
  return report_page(unit_report(ledger, unit_serial, verified, made_at_utc), view);
}

}  // namespace seamtakt
