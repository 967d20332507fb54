#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "exchange/sheets/sheet.hpp"
#include "records/keep/nonconformance.hpp"

namespace seamtakt {

/// "open-items": nonconformances and how they were dealt with, and what was left undecided, by cause.
Sheet open_items_sheet(const std::vector<Nonconformance>& list, const std::vector<OpenCause>& causes,
                       const std::vector<DecidedCause>& decided = {});

/// Numbers of records: "61, 70".
std::string joined_numbers(const std::vector<std::uint64_t>& numbers);

}  // namespace seamtakt
