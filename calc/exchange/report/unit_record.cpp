#include "exchange/report/unit_record.hpp"

#include <algorithm>
#include <set>

#include "base/error.hpp"
#include "base/sentences/place_sentence.hpp"
#include "base/version.hpp"
#include "exchange/report/record_tables.hpp"
#include "records/keep/retention.hpp"
#include "records/keep/unit_records.hpp"

namespace seamtakt {

namespace {

/// A pass that is open for two causes counts once.
std::size_t open_passes(const UnitStatus& status) {
  std::set<std::uint64_t> records;
  for (const OpenCause& cause : status.open_causes)
    records.insert(cause.records.begin(), cause.records.end());
  return records.size();
}

SheetCell yes_or_no(bool yes) {
  return yes ? "yes"_word : "no"_word;
}

Sheet status_sheet(const UnitStatus& status) {
  Sheet sheet{"unit", {{"item", {"Item"_word}}, {"value", {"Value"_word}}}, {}};
  sheet.rows = {
      {"Unit"_word, status.unit_serial},
      {"Weldment"_word, status.weldment},
      {"Complete"_word, status.complete ? yes_or_no(*status.complete)
                                        : SheetCell("not known: no plan said what it needs"_word)},
      {"Missing"_word, status.missing.empty() ? SheetCell("nothing known"_word)
                                              : SheetCell(SentenceCell{place_list(status.missing)})},
      {"Open items"_word, static_cast<double>(status.open_items())},
      {"Undecided passes that are open"_word, static_cast<double>(open_passes(status))},
      {"Scrapped"_word, yes_or_no(status.scrapped)},
      {"Robot passes that count"_word, static_cast<double>(status.passes.size())},
      {"Manual seams that count"_word, static_cast<double>(status.manual.size())}};
  return sheet;
}

/// What holds of any of the unit's records.
void add_retention(RecordHistory& history, const std::vector<std::uint64_t>& numbers, Sheet& sheet) {
  Retentions retentions(history);
  std::string until;
  std::set<std::uint64_t> holds;
  for (const std::uint64_t seq : numbers) {
    const Retention retention = retentions.of(seq);
    until = std::max(until, retention.until);
    holds.insert(retention.holds.begin(), retention.holds.end());
  }
  std::string records;
  for (const std::uint64_t seq : holds) records += (records.empty() ? "" : ", ") + std::to_string(seq);
  sheet.rows.push_back({"Kept until"_word, until.empty() ? SheetCell("no date is set"_word) : until});
  sheet.rows.push_back({"Legal holds (records)"_word, records.empty() ? SheetCell("none"_word) : records});
}

}  // namespace

std::vector<Sheet> unit_sheets(const Ledger& ledger, const std::string& unit_serial,
                               const SheetOrigin& origin) {
  RecordHistory history(ledger);
  const auto numbers = records_of_unit(history, unit_serial);
  if (numbers.empty())
    throw InputError("--unit", "\"" + printable(unit_serial) + "\"",
                     "a serial number that a record of the store has"_word);
  RecordTables tables(history, RecordTables::Of::one_unit);
  for (const std::uint64_t seq : numbers) tables.add(seq);
  const UnitStatus status = unit_status(history, unit_serial);
  std::vector<Sheet> result = {status_sheet(status)};
  add_retention(history, numbers, result.back());
  for (Sheet& sheet : tables.take_records()) result.push_back(std::move(sheet));
  result.push_back(open_items_sheet(status.nonconformances, status.open_causes, status.decided_causes));
  result.push_back(tables.take_changes());
  result.push_back(about_sheet(origin));
  return result;
}

SheetOrigin origin_of(const Ledger& ledger, const VerifyReport& verified, const std::string& made_at_utc) {
  return {{"program", std::string("seamtakt ") + program_version, "Program"_word},
          {"store", ledger.backend().name(), "Store"_word},
          {"store_id", ledger.store_id(), "Store id"_word},
          {"verified", SentenceCell{verified.summary_sentence()}, "Verified"_word},
          {"head", verified.newest_head ? verified.newest_head->anchor_line() : "", "Head"_word},
          {"made_at_utc", made_at_utc, "Made at"_word}};
}

}  // namespace seamtakt
