#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>

#include "base/json/json_node.hpp"
#include "ledger/store/ledger_backend.hpp"

namespace seamtakt {

/// The topic by which what was welded or calibrated on a day is found, and what corrects it:
/// "day:2026-03-02", UTC. Programs before it wrote none.
inline constexpr const char* day_topic = "day";

/// The topic of records after which days are known and before which they aren't: the first with a day that
/// follows one without. With an empty key.
inline constexpr const char* days_begin_topic = "days";

/// Kinds that are found by their day.
bool has_day(std::string_view kind);

/// Of the times that such a record may have (results.started, results.date, for a correction those that it
/// sets, else when it was recorded) the first one, as a day in UTC. Empty where none is a time.
std::string day_of(const JsonNode& body);

/// Whether a record, as it is stored, says its day.
bool tells_day(std::string_view body);

/// Calls `visit` with the records before number `end`, the last one first, until it returns false.
void each_record_back(LedgerBackend& backend, std::uint64_t end,
                      const std::function<bool(const LedgerRow&)>& visit);

/// Whether the last record before `end` that should have a day has none.
bool lacks_days_before(LedgerBackend& backend, std::uint64_t end);

}  // namespace seamtakt
