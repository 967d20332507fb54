#pragma once

#include <string>
#include <utility>
#include <vector>

#include "plan/plan.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

/// The data items of a welding procedure specification that ISO 15609-1 lists, as far as the schedule states
/// them: label and value. An item that the schedule leaves open reads "not stated".
std::vector<std::pair<std::string, std::string>> schedule_sheet(const Schedule& schedule,
                                                                const PlanIndex& index);

/// "[4.5, 6]", "from 4.5", "up to 6" with the unit; "not stated" where both ends are open.
std::string interval_text(const std::optional<Interval>& interval, const char* unit);

}  // namespace seamtakt
