#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "ledger/store/ledger.hpp"
#include "plan/plan.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt {

/// What an ingest record says beside the audit's result.
struct IngestNote {
  WriteStamp stamp;
  std::string catalogue_sha256;
  std::string plan_file, plan_sha256;  ///< empty without a plan
  const Plan* plan = nullptr;          ///< what the passes were judged by: its schedules are kept in full
  std::vector<RawChunksRow> chunks;    ///< of the logs that are files
};

struct IngestOutcome {
  bool added = false;
  std::uint64_t first_seq = 0, last_seq = 0;  ///< of what was added, or of the ingest that holds it already
  std::vector<std::uint64_t> already_stored;  ///< passes of the same identity that were already in the store
  std::size_t nonconformances = 0;            ///< opened for failed passes
  Sentence sentence;                          ///< what happened, for a person

  /// The sentence in plain English.
  std::string text() const { return sentence.english(); }
};

/// Adds one audit to a ledger, all or nothing: new schedules, an ingest record, its passes and manual seams,
/// and a nonconformance for each that failed and for each part of a pass in the store whose robot has begun
/// on another unit since. Idempotent by the logs' content: an audit whose logs are all stored adds nothing
/// and says so; if only some are stored, the passes that reach into the new logs are added. Stored logs whose
/// units were closed since get a nonconformance for each pass that stayed too short. The result must have
/// been made with AuditOptions::digest and without too many rejected rows (else std::invalid_argument).
IngestOutcome append_audit(Ledger& ledger, const KeyProvider& key, const AuditResult& result,
                           const IngestNote& note);

/// How a pass is found again: unit, weldment, seam and pass.
std::string pass_lookup_key(const std::string& unit_serial, const std::string& weldment,
                            const std::string& seam, const std::optional<int>& pass);

}  // namespace seamtakt
