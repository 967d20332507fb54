#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "records/keep/record_history.hpp"

namespace seamtakt {

/// Records of a unit by the present state, in order: a pass or manual seam whose serial was corrected belongs
/// to its new unit, with its nonconformances, and not to the old one. All other kinds by the serial that they
/// name. Uses few queries, however many passes there are.
std::vector<std::uint64_t> records_of_unit(RecordHistory& history, const std::string& unit_serial);

/// Serial of the unit that a record now belongs to; empty where none is known.
std::string unit_of_record(RecordHistory& history, std::uint64_t seq);

}  // namespace seamtakt
