#pragma once

#include <vector>

#include "base/finding.hpp"
#include "records/passes/audit.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

inline constexpr const char *length_short_rule = "record.length.short",
                            *length_part_rule = "record.length.part";

/// Judges whether the passes are as long as their seams, where positions or the travel speed were logged, and
/// changes verdicts by it. Judged is the union of all records of a pass, those of the store included
/// (AuditOptions::stored). Too short by more than is allowed: a fail (record.length.short) where the unit is
/// closed (AuditOptions::close_units, or the robot has begun on another unit since), else undecided
/// (record.length.part), as another log may continue with it. A repair is exempt. Allowed are
/// AuditOptions::length_short_mm and the expanded uncertainty of the positions, with the travel speed 2 % and
/// its uncertainty (common practice, no source). Where a logger was frozen, or the border of two units' times
/// cut the pass, nothing is judged: the pass is already undecided for that reason. A gap between the runs of
/// an intermittent seam that is longer than drawn by more than that is a warn (record.length.gap), and so are
/// a longer run (record.length.run) and more runs than drawn (record.length.runs); too few are too short.
void judge_lengths(std::vector<PassRecord>& records, const PlannedPasses& plan, const AuditOptions& options,
                   Findings& findings);

}  // namespace seamtakt
