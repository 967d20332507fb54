#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "records/keep/nonconformance.hpp"

namespace seamtakt {

/// What persons write into a store by hand: command line and desk write through the same functions. Each
/// writes all that it has to say in one commit, or nothing.

/// Where it goes, who writes and why.
struct HandWriting {
  Ledger& ledger;
  KeyProvider key;
  WriteStamp stamp;
};

struct WrittenRecord {
  std::uint64_t seq = 0;
  std::string kind;
  SignedHead head;
  std::size_t judged_again = 0;  ///< passes that a calibration decided
};

/// An entry that was made before (disposition_entry, void_entry, raised_nonconformance_entry, ...).
WrittenRecord write_record(const HandWriting& to, const LedgerEntry& entry);

/// InputError as correction_entry, before a key is asked for.
WrittenRecord write_correction(const HandWriting& to, std::uint64_t seq,
                               const std::vector<CorrectedValue>& values);

/// Signs record `seq` with a person's own key. InputError: no such record, a key of another name.
WrittenRecord write_signoff(const HandWriting& to, std::uint64_t seq, const SigningKey& person);

struct CalibrationRequest {
  std::string instrument;
  std::string certificate;  ///< its number, or its file, whose SHA-256 is kept then
  std::string date, due;    ///< "2026-11-25"; due not before date
  std::string as_found;     ///< as_found_in_tolerance, as_found_out_of_tolerance, or empty: not stated
};
/// InputError at --instrument, --certificate, --date or --due.
void check_calibration(const CalibrationRequest& request);
/// With the new judgements of the passes that it decides (passes_judged_again).
WrittenRecord write_calibration(const HandWriting& to, const CalibrationRequest& request);

/// What becomes of record `about`, a pass or manual seam that failed: the disposition of its open
/// nonconformance. `request.nonconformance` isn't looked at, `request.who` is who writes. InputError: none is
/// open; as disposition_entry.
WrittenRecord write_disposition_of(const HandWriting& to, std::uint64_t about, DispositionRequest request);

/// A note about record `about`, or about the store (0). What it says is its `why`. InputError: no such
/// record.
WrittenRecord write_note(const HandWriting& to, std::uint64_t about);

}  // namespace seamtakt
