#pragma once

#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// The cycle that a sequence gives: times, sums, moves, bound, takt, and the findings of `compiled` with the
/// cycle's own. `compiled` must be of this plan and weldment. A sequence that can't be done gives an
/// InputError. Where balance is ignored, a group that the timeline doesn't hold is a finding.
///
/// Time 0 is when the robots begin; with one station unloading and the next loading follow the last return
/// home, with two they run beside the welding at the other station and the cycle ends with the index. These
/// moves have no robot. Sums are those of the moves by kind, so orientation_s counts a turn once. gap_pct =
/// 100*(cycle - lower bound)/cycle. takt_margin_s = takt_s*planning_pct/100 - cycle;
/// where seams are unwelded there is none, and cycle.weldment.unwelded (fail) says how many they are.
CycleResult cycle_of(const Plan& plan, const Weldment& weldment, const CompiledCell& compiled,
                     const Sequence& sequence, Balance balance = Balance::ignored);

/// The same without the slow parts that the timeline itself doesn't need: no lower bound, no takt,
/// and only the findings of `compiled`.
CycleResult timeline_of(const Plan& plan, const Weldment& weldment, const CompiledCell& compiled,
                        const Sequence& sequence, Balance balance = Balance::ignored);

/// Completes the findings of a finished cycle: power sources' duty over the timeline, then the plan's
/// acceptances of findings on this weldment's cycle (those of `cycle.` rules at WELDMENT or WELDMENT/...).
void judge_cycle(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                 CycleResult& cycle);

/// The part of a seam's path between two distances along it (mm), from first to last; on a closed path it
/// wraps at the end. Where from_mm > to_mm the points run backwards.
std::vector<Point_mm> path_between(const Seam& seam, double from_mm, double to_mm);

}  // namespace seamtakt
