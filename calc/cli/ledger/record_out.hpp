#pragma once

#include <cstdint>
#include <vector>

#include "base/json/json_writer.hpp"
#include "ledger/store/ledger.hpp"
#include "records/keep/retention.hpp"

namespace seamtakt::cli {

/// A member that lists numbers of records.
void write_numbers(JsonWriter& json, const char* key, const std::vector<std::uint64_t>& numbers);

/// Members of a record, into the open object: its body, the writer's name in place of its digest, and what
/// came after.
void write_record_members(const Ledger& ledger, const LedgerRow& row, const JsonNode& body, JsonWriter& json);

/// How long it is kept, and what holds it, likewise.
void write_retention(const Retention& retention, JsonWriter& json);

}  // namespace seamtakt::cli
