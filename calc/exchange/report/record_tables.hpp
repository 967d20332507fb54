#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "exchange/sheets/sheet.hpp"
#include "records/keep/nonconformance.hpp"

namespace seamtakt {

/// Tables of what a ledger says of passes and manual seams: "passes" (heat-input record), "manual",
/// "schedules" (the revisions by which they were judged), "instruments" and "changes" (corrections, void
/// records, sign-offs: of a correction each member with its old and new value, what follows from them too;
/// who, when, why). A record that was corrected shows its corrected values and says so; a void one stays in
/// the table, marked.
class RecordTables {
 public:
  enum class Of { one_unit, many_units };  ///< the latter name unit and weldment in each row
  RecordTables(RecordHistory& history, Of of);

  /// Records of other kinds are passed over.
  void add(std::uint64_t seq);
  /// passes, manual, schedules, instruments; changes.
  std::vector<Sheet> take_records();
  Sheet take_changes() { return std::move(changes_); }

 private:
  void add_pass(std::uint64_t seq, const JsonNode& body);
  void add_manual(std::uint64_t seq, const JsonNode& body);
  void add_schedule(std::uint64_t seq);
  void add_instrument(const JsonNode& instrument);
  /// All that changed a record, and what changed that.
  void add_changes(std::uint64_t about);
  void add_change(std::uint64_t seq, std::uint64_t about, const RecordHistory::Change* change);
  SheetCell value_cell(const std::string& json, bool is_person) const;

  RecordHistory& history_;
  bool names_units_;
  Sheet passes_, manual_, schedules_, instruments_, changes_;
  std::set<std::uint64_t> schedules_seen_;
  std::set<std::string> instruments_seen_;
};

/// "open-items": nonconformances and how they were dealt with, and what was left undecided, by cause.
Sheet open_items_sheet(const std::vector<Nonconformance>& list, const std::vector<OpenCause>& causes);
/// "about": cautions and where the report comes from.
Sheet about_sheet(const SheetOrigin& origin);

}  // namespace seamtakt
