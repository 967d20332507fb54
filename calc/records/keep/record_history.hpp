#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <vector>

#include "records/keep/record_changes.hpp"

namespace seamtakt {

/// Records with all later records about them. The store is asked for many at a time and for each one once:
/// over a network the round trip dominates. A snapshot: records written later aren't seen.
class RecordHistory {
 public:
  explicit RecordHistory(const Ledger& ledger) : ledger_(ledger) {}

  /// Queries these records and the later ones about them, in few queries.
  void load(std::span<const std::uint64_t> numbers);

  // Each of these loads missing records. InputError: no record of that number.
  const LedgerRow& record(std::uint64_t seq);
  const RecordChanges& changes_of(std::uint64_t seq);
  bool is_void(std::uint64_t seq) { return changes_of(seq).is_void(); }
  /// The body with all corrections applied in order that aren't void themselves, and what follows from them
  /// recomputed (derived_members.hpp), then with what later calibrations decided (later_calibration.hpp).
  JsonNode corrected_body(std::uint64_t seq);
  /// The same by the corrections whose number is below `before`.
  JsonNode corrected_body_before(std::uint64_t seq, std::uint64_t before);

  /// What a correction changed: values as JSON text.
  struct Change {
    std::string member, was, is;
    bool is_derived = false;  ///< recomputed, not set
  };
  /// Of the record that it is about.
  std::vector<Change> changes_by(std::uint64_t correction, std::uint64_t about);

  const Ledger& ledger() const { return ledger_; }

 private:
  struct Known {
    LedgerRow row;
    RecordChanges changes;
  };
  Known& known(std::uint64_t seq);
  void apply_corrections(std::uint64_t seq, std::uint64_t before,
                         const std::vector<std::uint64_t>& corrections, JsonNode& body);
  /// By the process of the schedule that a correction names; empty: not named, or not known to the store.
  std::optional<double> efficiency_of(const JsonNode& body, const JsonNode& original);

  const Ledger& ledger_;
  std::map<std::uint64_t, Known> known_;
};

}  // namespace seamtakt
