#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "exchange/report/open_items_sheet.hpp"
#include "exchange/sheets/sheet.hpp"
#include "records/keep/nonconformance.hpp"

namespace seamtakt {

/// Tables of what a ledger says of passes and manual seams: "passes" (heat-input record), "methods"
/// (k, by which method and from which uncertainties), "manual",
/// "schedules" (the revisions by which they were judged), "instruments", "findings" (those reported when they
/// were stored), "logs" (the raw logs that they come from, each with its SHA-256) and "changes" (corrections,
/// void records, sign-offs: of a correction each member with its old and new value, what follows from them
/// too; who, when, why). A record that was corrected shows its corrected values and says so; a void one stays
/// in the table, marked.
class RecordTables {
 public:
  enum class Of { one_unit, many_units };  ///< the latter name unit and weldment in each row
  RecordTables(RecordHistory& history, Of of);

  /// Records of other kinds are skipped.
  void add(std::uint64_t seq);
  /// passes, methods, manual, schedules, instruments, findings, logs; changes.
  std::vector<Sheet> take_records();
  Sheet take_changes() { return std::move(changes_); }

 private:
  void add_pass(std::uint64_t seq, const JsonNode& body);
  void add_manual(std::uint64_t seq, const JsonNode& body);
  void add_schedule(std::uint64_t seq);
  void add_instrument(const JsonNode& instrument);
  void add_findings(std::uint64_t seq, const JsonNode& body);
  /// All logs of the record's ingest: a pass may begin in one and end in the next.
  void add_logs(const JsonNode& body);
  /// All that changed a record, and what changed that.
  void add_changes(std::uint64_t about);
  void add_change(std::uint64_t seq, std::uint64_t about, const RecordHistory::Change* change);
  SheetCell value_cell(const std::string& member, const std::string& json) const;

  RecordHistory& history_;
  bool names_units_;
  Sheet passes_, methods_, manual_, schedules_, instruments_, findings_, logs_, changes_;
  std::set<std::uint64_t> schedules_seen_;
  std::set<std::string> instruments_seen_;
  std::set<std::uint64_t> ingests_seen_;
};

/// "about": cautions and where the report comes from.
Sheet about_sheet(const SheetOrigin& origin);

}  // namespace seamtakt
