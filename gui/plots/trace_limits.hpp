#pragma once

#include <optional>
#include <utility>

#include "plots/trace_view.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt::desk {

/// The bands of a pass's schedule, and the stretches in which the pass lay outside of them.
TraceLimits trace_limits(const Plan& plan, const PassRecord& record);

/// Where a pass that failed or was left open has the place of it (s after its first sample): its longest
/// excursion, else its longest interruption. Empty: it passed, or what failed has no place.
std::optional<std::pair<double, double>> failed_stretch(const PassRecord& record);

}  // namespace seamtakt::desk
