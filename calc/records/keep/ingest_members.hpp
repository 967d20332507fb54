#pragma once

#include "records/keep/record_store.hpp"

namespace seamtakt {

/// A schedule's revision as a record keeps it.
struct KeptSchedule {
  std::string id, sha256;  ///< of its canonical JSON
  LedgerEntry entry;
};
KeptSchedule schedule_entry(const Plan& plan, const Schedule& schedule);

LedgerEntry ingest_entry(const AuditResult& result, const IngestNote& note, std::size_t passes);
LedgerEntry pass_entry(const PassRecord& record, const std::vector<const Finding*>& findings,
                       const Plan* plan, std::uint64_t ingest_seq);
/// `welder`: the digest that replaces the name.
LedgerEntry manual_entry(const ManualSeam& seam, const std::string& welder,
                         const std::vector<const Finding*>& findings, std::uint64_t ingest_seq);
/// `findings`: those of the record that failed.
LedgerEntry nonconformance_entry(std::uint64_t ref, const std::string& unit_serial, const std::string& place,
                                 const std::vector<const Finding*>& findings);

}  // namespace seamtakt
