#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "records/ledger/ledger.hpp"

namespace seamtakt {

/// What came after a record and is about it: numbers of the later records.
struct RecordChanges {
  std::vector<std::uint64_t> corrections, voids, signoffs, nonconformances, dispositions, others;
  bool is_void() const { return !voids.empty(); }
};
/// Of one record; RecordHistory for many.
RecordChanges changes_of(const Ledger& ledger, std::uint64_t seq);

/// A corrected value: "results.unit_serial" and the JSON text that it should have been.
using CorrectedValue = std::pair<std::string, std::string>;

/// "results.seam=S04": what is given as JSON is taken so, else it is text. InputError at --set.
CorrectedValue parse_corrected_value(const std::string& text);

/// A new record that says what an old one should have said; the old one stays. InputError: a member that the
/// old record doesn't have, no change at all.
LedgerEntry correction_entry(const LedgerRow& old, const std::vector<CorrectedValue>& values);

/// A new record that says that an old one doesn't count. InputError: the genesis, a key, one that is void
/// already.
LedgerEntry void_entry(const Ledger& ledger, const LedgerRow& old);

/// The body with all corrections of it applied in order; RecordHistory for many.
JsonNode corrected_body(const Ledger& ledger, const LedgerRow& row);

}  // namespace seamtakt
