#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "records/keep/record_search.hpp"

namespace seamtakt {

/// Records from `first` on, before `end`.
struct RecordStretch {
  std::uint64_t first = 1, end = 1;
};

/// Numbers, rising, of the passes, manual seams and calibrations that may be within the range by the day of
/// their weld or certificate, as stored or as corrected. Found by their lookups (day_lookup.hpp); where
/// programs before those wrote, their records are read. Empty: reading all of the store is as good (the range
/// is open, or has much of the store).
std::optional<std::vector<std::uint64_t>> records_of_days(const Ledger& ledger, const RecordRange& range);

/// Passes and manual seams, and others, that may meet the range; by their days, else by reading all records.
std::vector<std::uint64_t> records_that_may_meet(const Ledger& ledger, const RecordRange& range);

/// Where the records are that were recorded within the range. Numbers follow the writers' clocks but for
/// 5 min from one commit to the next (clock_tolerance_s), and the stretch is a day longer at both ends.
/// Empty: the range is open or has much of the store, or the store's times aren't in order.
std::optional<RecordStretch> stretch_recorded(const Ledger& ledger, const RecordRange& range);

}  // namespace seamtakt
