#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "records/keep/record_history.hpp"

namespace seamtakt {

/// How long a record is to be kept, and by what it may not be given up whatever that date says. The store
/// itself never deletes anything: these are fields for whoever moves stores to an archive or gives them up.
struct Retention {
  std::string until;                 ///< "2036-03-31", the last day; empty: nothing was said
  std::vector<std::uint64_t> holds;  ///< legal holds that were not lifted, by number
};

/// What a statement is about: a record with all that was written about it, or all records of a unit. One of
/// the two.
struct RetentionScope {
  std::uint64_t seq = 0;
  std::string unit_serial;
};

/// Until when records are kept; of one scope the newest statement counts. InputError: no date, no such
/// record, a unit without a record.
LedgerEntry retain_entry(const Ledger& ledger, const RetentionScope& scope, const std::string& until);
/// Each hold lasts until it is lifted itself: two cases may hold the same records. InputError likewise.
LedgerEntry hold_entry(const Ledger& ledger, const RetentionScope& scope);
/// `hold`: number of the record that hold_entry made. InputError: no hold, one that was lifted or is void.
LedgerEntry unhold_entry(const Ledger& ledger, std::uint64_t hold);

/// What holds of records now. A record is kept as long as itself, the record that it is about and its unit
/// (as corrected) ask for: the latest of these dates, and all their holds. Void statements don't count.
class Retentions {
 public:
  explicit Retentions(RecordHistory& history) : history_(history) {}
  Retention of(std::uint64_t seq);

 private:
  const Retention& of_unit(const std::string& unit_serial);
  void add_statement(std::uint64_t seq, Retention& retention);

  RecordHistory& history_;
  std::optional<bool> has_any_;  ///< most stores hold no statement at all
  std::map<std::string, Retention> units_;
};

}  // namespace seamtakt
