#pragma once

#include "base/json/json_writer.hpp"
#include "records/actual/cycle_actual.hpp"

namespace seamtakt {

/// Appends the member "cycle_actual": a list of units with their robots' steps, null where there is nothing
/// to compare with. Times are in seconds; null for what isn't known.
void write_cycle_actual(const CycleActual& actual, JsonWriter& json);

}  // namespace seamtakt
