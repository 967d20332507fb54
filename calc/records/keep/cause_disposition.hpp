#pragma once

#include <optional>
#include <string>

#include "records/keep/nonconformance.hpp"

namespace seamtakt {

/// One decision about all passes of a unit that a cause left undecided.
struct CauseRequest {
  std::string unit_serial;
  std::string cause;  ///< the rule, as OpenCause names it
  Decision decision = Decision::use_as_is;
  std::string who;
};

/// The record that covers them: its body names each (`results.records`), it points at the first and is found
/// by each of the others as what came after it. InputError: a unit without that open cause, a repair (which
/// is one pass's and needs its re-test), no four eyes where the plan asks for them.
LedgerEntry cause_disposition_entry(const Ledger& ledger, const CauseRequest& request);

/// A disposition by cause that isn't void and covers a record.
struct CauseDisposition {
  std::uint64_t seq = 0;
  Decision decision = Decision::use_as_is;
};
/// The newest one of a record for a cause; empty: none.
std::optional<CauseDisposition> cause_disposition_of(RecordHistory& history, std::uint64_t record,
                                                     const std::string& cause);

}  // namespace seamtakt
