#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/keep/record_history.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt {

/// Topic by which records are found that are a part of a pass, with the robot as key.
inline constexpr const char* part_topic = "part";

/// The coverage that a pass record keeps; empty where it keeps none.
std::optional<PassCoverage> coverage_of(const JsonNode& body);

/// Texts of an array of texts in a body; empty where there is none.
std::vector<std::string> body_texts(const JsonNode& body, std::string_view path);

/// How the record of a pass or manual seam is found: pass_lookup_key of its unit, weldment, seam and pass.
std::string lookup_key_of(const JsonNode& body);

/// Records of passes and manual seams that now have this identity, void ones included, in order: one whose
/// identity was corrected is found by the new one and no more by the old one.
std::vector<std::uint64_t> records_of_pass(RecordHistory& history, const std::string& lookup_key);

/// What the store has of the same pass as `record`: void records and records that are in `record`'s own log
/// at the same lines (a log that is audited again) aren't among them.
StoredWelds stored_welds(const Ledger& ledger, const PassRecord& record);

/// A pass of the store that is too short and waits for another log to continue with it.
struct OpenPart {
  std::uint64_t seq = 0;
  std::string unit_serial, place, started;
  PassCoverage coverage;  ///< with all records of that pass covered in `covered_mm`
};

/// Whether a nonconformance that isn't void is about the record.
bool has_nonconformance(RecordHistory& history, std::uint64_t seq);

/// The part that record `seq` is, where it still is one: not void, not dealt with as a nonconformance, and
/// its pass still too short with all that the store has of it.
std::optional<OpenPart> open_part(RecordHistory& history, std::uint64_t seq);

/// Finding for such a part once its unit is closed.
Finding short_finding(const OpenPart& part);

}  // namespace seamtakt
