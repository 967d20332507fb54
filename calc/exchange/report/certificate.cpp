#include "exchange/report/certificate.hpp"

#include <algorithm>
#include <initializer_list>

#include "exchange/report/record_sections.hpp"
#include "exchange/report/unit_record.hpp"
#include "records/keep/nonconformance.hpp"

namespace seamtakt {

namespace {

/// Some columns of a table, in its own order.
Sheet columns_of(const Sheet& sheet, std::initializer_list<std::string_view> keys) {
  Sheet part{sheet.name, {}, std::vector<std::vector<SheetCell>>(sheet.rows.size())};
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    if (std::find(keys.begin(), keys.end(), sheet.columns[i].key) == keys.end()) continue;
    part.columns.push_back(sheet.columns[i]);
    for (std::size_t row = 0; row < sheet.rows.size(); ++row) part.rows[row].push_back(sheet.rows[row][i]);
  }
  return part;
}

ParagraphBlock statement_of(const UnitStatus& status, const VerifyReport& verified) {
  using Look = ParagraphBlock::Look;
  if (!verified.trusted)
    return {"No conformity is stated: the records can't be trusted."_word, Look::caution};
  if (status.scrapped) return {"No conformity is stated: the unit was scrapped."_word, Look::caution};
  if (!status.complete)
    return {"No conformity is stated: no plan says what the unit needs."_word, Look::caution};
  if (!*status.complete)
    return {"No conformity is stated: the unit isn't complete, or something about it is open."_word,
            Look::caution};
  return {
      "By its records the unit conforms to the plan: each pass that the plan needs was welded, and passed "
      "or was accepted by a decision that stands below."_word,
      Look::plain};
}

void add_titled(Report& report, Word title, Sheet sheet) {
  for (Block& block : titled_table(title, std::move(sheet))) report.add(std::move(block));
}

}  // namespace

Report unit_certificate(const Ledger& ledger, const std::string& unit_serial, const VerifyReport& verified,
                        const std::string& made_at_utc) {
  const SheetOrigin origin = origin_of(ledger, verified, made_at_utc);
  const std::vector<Sheet> sheets = unit_sheets(ledger, unit_serial, origin);
  Report report =
      record_report(PatternCell{"Certificate of conformity of unit {1}"_word, {unit_serial}}, verified);
  report.add(statement_of(unit_status(ledger, unit_serial), verified));
  report.add(
      ParagraphBlock{"It documents what was logged and recorded. It is no inspection and no test: where the "
                     "governing code or "
                     "the contract asks for more, that holds."_word,
                     ParagraphBlock::Look::quiet});
  report.add(items_of(sheet_named(sheets, "unit")));
  add_titled(report, "Schedules and qualifications"_word,
             columns_of(sheet_named(sheets, "schedules"), {"schedule", "revision", "status", "approved_by",
                                                           "process", "wire", "qualification"}));
  add_titled(report, "Robot passes and their verdicts"_word,
             columns_of(sheet_named(sheets, "passes"), {"record", "seam", "pass", "robot", "schedule",
                                                        "started", "heat_input_kJ_mm", "verdict", "since"}));
  add_table(report, sheets, "manual", "Manual seams"_word);
  add_table(report, sheets, "open-items", "Deviations and dispositions"_word);
  add_table(report, sheets, "changes", "Corrections, void records, sign-offs"_word);
  add_record_ending(report, verified, origin);
  return report;
}

}  // namespace seamtakt
