#pragma once

#include <vector>

#include "base/finding.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

/// What the times of a unit's passes tell, compared within one log or between logs with calendar times:
/// a pass begun before the one under it had ended (fail), a seam begun before one that the plan puts before
/// it (warn), and a pass begun sooner than the seam can have cooled to the interpass limit (warn; estimated
/// with the conduction formulas of the plan's own interpass wait, from the heat input that was logged, and
/// only where no interpass temperature was logged).
void check_unit_order(const std::vector<PassRecord>& records, const PlannedPasses& plan, Findings& findings);

/// A record that contradicts itself, with what the plan says of its wire: the logged wire feed melts at a
/// current more than 25 % from the logged one, or deposits an area more than 25 % from the schedule's (common
/// practice, no source).
void check_contradictions(const std::vector<PassRecord>& records, const PlannedPasses& plan,
                          Findings& findings);

}  // namespace seamtakt
