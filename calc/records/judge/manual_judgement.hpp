#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/planned_pass.hpp"
#include "records/passes/unit_times.hpp"
#include "records/passes/welders.hpp"

namespace seamtakt {

inline constexpr const char *manual_failed_rule = "manual.result.fail",
                            *manual_unclear_rule = "manual.result.unclear",
                            *manual_welder_rule = "manual.welder.missing";

/// What a manual seam's result says, as people write it.
enum class ManualResult { good, bad, unclear };
ManualResult manual_result(std::string text);

/// "U17/BD-2/S03/pass 1"; '-' where the seam names no weldment.
std::string manual_place(const ManualSeam& seam);

/// What manual seams are judged by, beside the plan; each may be empty: then it says nothing.
struct ManualBasis {
  std::span<const Welder> welders;
  std::span<const UnitTime> units;
};

/// Judges the manual seams and fills in their failed_by and undecided_by, and the weldment of those that name
/// none: the one of the unit's passes, else the plan's only one. Result: a bad one fails
/// (manual.result.fail), one that says neither is undecided (manual.result.unclear). Welder: none is
/// undecided (manual.welder.missing), one who isn't in the list or not qualified on the day fails
/// (manual.welder.not-valid; ISO 9606-1, recalled). Schedule: none, or one that the plan doesn't have, is
/// undecided (manual.schedule.unknown), another one than planned a warn. Date: none is undecided
/// (manual.date.missing), and so is one outside the unit's time (manual.date.outside): by the unit times, to
/// a day's difference by time zones, else more than 31 days from all its robots' passes. Without a plan only
/// the result is judged.
void judge_manual(std::vector<ManualSeam>& seams, const std::vector<PassRecord>& passes,
                  const PlannedPasses* plan, const ManualBasis& basis, Findings& findings);

}  // namespace seamtakt
