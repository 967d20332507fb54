#pragma once

#include "base/finding.hpp"
#include "cell/timeline/heat_history.hpp"
#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// Lays a sequence out with passes that wait until their plates have cooled. Where several robots work, the
/// steps are put in the order of their arcs, a few times over, so that heat which another robot brings first
/// counts; `sequence` is then that order. The makespan (s), or Scheduler::impossible; `heat` has the arcs of
/// the timeline.
double makespan_on_plates_s(const CellModel& model, Balance balance, HeatHistory& heat, Sequence& sequence,
                            std::vector<BareMove>& moves);

/// The model without the interpass waits of passes that `heat` covers: what a bound may rely on, since their
/// waits follow from the timeline.
CellModel without_covered_waits(const CellModel& model, const HeatHistory& heat);

/// cycle.bound.heat (note): the bound is without the waits on plates of finite size. cycle.interpass.never
/// (fail): a wait of the timeline is above an hour, where the evaluation has none as long.
/// cycle.interpass.above (warn): a pass begins above its limit, by another robot's heat or at a later run.
void judge_heat(const Weldment& weldment, const CellModel& model, const HeatHistory& heat,
                const std::vector<BareMove>& moves, Findings& findings);

}  // namespace seamtakt
