#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "records/audit.hpp"
#include "records/record_store.hpp"

namespace seamtakt {

/// Bodies of stored records: JSON text on one line. `v` numbers the form of the body, so that old ones stay
/// readable.
inline constexpr int record_body_version = 1;

std::string ingest_body(const AuditResult& result, const IngestNote& note, std::size_t passes,
                        std::size_t manual);
std::string pass_body(const PassRecord& record, const std::vector<const Finding*>& findings,
                      std::uint64_t ingest_seq);
std::string manual_body(const ManualSeam& seam, std::uint64_t ingest_seq);

}  // namespace seamtakt
