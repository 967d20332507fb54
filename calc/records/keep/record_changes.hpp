#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// What came after a record and is about it: numbers of the later records.
struct RecordChanges {
  std::vector<std::uint64_t> corrections, voids, signoffs, nonconformances, dispositions, judgements, others;
  bool is_void() const { return !voids.empty(); }
};
/// Of one record; RecordHistory for many.
RecordChanges changes_of(const Ledger& ledger, std::uint64_t seq);

/// A corrected value: "results.unit_serial" and what it should have been, as a person types it.
using CorrectedValue = std::pair<std::string, std::string>;

/// "results.seam=S04". InputError at --set.
CorrectedValue parse_corrected_value(const std::string& text);

/// Gives the digest that replaces a person's name (LedgerBatch::person).
using PersonDigest = std::function<std::string(const std::string&)>;

/// A new record that says what an old one should have said; the old one stays. A value must be of its
/// member's type, unit and range; what follows from others is never set (correctable.hpp). The old value that
/// it notes is the one in force. A record whose unit is corrected is found under both. InputError: such a
/// value, a member that the old record doesn't have, a member twice, no change, a kind that isn't
/// corrected.
LedgerEntry correction_entry(const Ledger& ledger, const LedgerRow& old,
                             const std::vector<CorrectedValue>& values, const PersonDigest& person);

/// "a record of kind note", for a refusal.
Sentence kind_sentence(const LedgerRow& row);

/// A new record that says that an old one doesn't count. InputError: the genesis, a key, one that is void
/// already.
LedgerEntry void_entry(const Ledger& ledger, const LedgerRow& old);

/// The body with all corrections of it applied in order and what follows from them recomputed; RecordHistory
/// for many.
JsonNode corrected_body(const Ledger& ledger, const LedgerRow& row);

}  // namespace seamtakt
