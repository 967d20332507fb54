#pragma once

#include <cstdint>
#include <map>
#include <span>
#include <vector>

#include "records/ledger/record_changes.hpp"

namespace seamtakt {

/// Records with all that came after them and is about them. The store is asked for many at once and for each
/// one once: over a network each question takes longer than its answer. A view of one moment: what is written
/// later isn't seen.
class RecordHistory {
 public:
  explicit RecordHistory(const Ledger& ledger) : ledger_(ledger) {}

  /// Asks for these records and for what came after them, in few questions.
  void load(std::span<const std::uint64_t> numbers);

  // Each of these asks for what wasn't loaded. InputError: no record of that number.
  const LedgerRow& record(std::uint64_t seq);
  const RecordChanges& changes_of(std::uint64_t seq);
  bool is_void(std::uint64_t seq) { return changes_of(seq).is_void(); }
  /// The body with all corrections applied in order that aren't void themselves.
  JsonNode corrected_body(std::uint64_t seq);

  const Ledger& ledger() const { return ledger_; }

 private:
  struct Known {
    LedgerRow row;
    RecordChanges changes;
  };
  Known& known(std::uint64_t seq);

  const Ledger& ledger_;
  std::map<std::uint64_t, Known> known_;
};

}  // namespace seamtakt
