#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "records/audit.hpp"

namespace seamtakt {

/// A stored record: its number, what it is, and its body (JSON text).
struct StoredRecord {
  std::uint64_t seq = 0;
  std::string kind;  ///< "ingest", "pass", "manual"
  std::string body;
  std::string sha256;  ///< of the body
};

/// What an ingest record says beside the audit's result. The program's clock stays outside the library.
struct IngestNote {
  std::string recorded_at_utc;  ///< ISO 8601 with Z
  std::string who, why;
  std::string program_version, catalogue_sha256;
  std::string plan_file, plan_sha256;  ///< empty without a plan
};

struct IngestOutcome {
  bool added = false;
  std::uint64_t first_seq = 0, last_seq = 0;  ///< of what was added, or of the ingest that holds it already
  std::vector<std::uint64_t> already_stored;  ///< passes of the same identity that stood in the store before
  std::string text;                           ///< one sentence that says what happened
};

/// Records, kept for good: appended, never changed. Numbers run from 1 without a gap.
class RecordStore {
 public:
  virtual ~RecordStore() = default;

  /// Adds one audit: an ingest record, then its passes and manual seams, all or nothing. Idempotent by the
  /// logs' content: an audit of which every log is already stored adds nothing and says so; of one of which
  /// only some are, the passes that reach into the new logs are added. The result must have been made with
  /// AuditOptions::digest and without too many rejected rows (else std::invalid_argument).
  virtual IngestOutcome append(const AuditResult& result, const IngestNote& note) = 0;

  /// Calls `each` with the records numbered from `first` on, in order, until it returns false.
  virtual void list(std::uint64_t first, const std::function<bool(const StoredRecord&)>& each) const = 0;
  virtual std::uint64_t count() const = 0;
};

/// Opens or creates a store: "sqlite:FILE". InputError: another scheme, a file that is no store of this
/// program or a newer version's. std::system_error: the machine's failures.
std::unique_ptr<RecordStore> open_record_store(const std::string& uri);

}  // namespace seamtakt
