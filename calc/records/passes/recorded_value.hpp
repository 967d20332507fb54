#pragma once

#include <optional>
#include <string>

#include "plan/limited_quantities.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// What the record of a pass has of a limited quantity, in its unit; empty where it wasn't logged, or where
/// records have none (Recorded::nothing).
std::optional<double> recorded_value(const PassRecord& record, const LimitedQuantity& quantity);

/// How a sentence about a record names it: "Mean current of the steady part".
std::string recorded_label(const LimitedQuantity& quantity);

}  // namespace seamtakt
