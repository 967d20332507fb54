#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// How hard a robot's power source works in its worst ten minutes.
struct RobotDuty {
  std::string robot, power_source;
  double equivalent_current_A = 0;  ///< constant current that heats as much over the ten minutes
  double window_start_s = 0;        ///< in the timeline; the cycle repeats without a pause
};

/// Per robot and power source that it welds with, in the order of the moves: the largest
/// sqrt(sum(I^2*t)/600 s) over any window of 10 min of a cycle that repeats for ever. Counted are arc moves
/// with the pass's current; start, crater and post-flow aren't. Source: power-source-manuals (a period
/// of 10 min, as IEC 60974-1 has it, recalled); the equivalent current is derived from heating by I^2. An
/// estimate: a maker's own ratings depart from the rule by some per cent.
std::vector<RobotDuty> duty_of_robots(const Plan& plan, const Weldment& weldment,
                                      const Evaluation& evaluation, const CycleResult& cycle);

/// `cycle.duty.exceeded` (fail) where the equivalent current is above what the source carries permanently,
/// I_rated*sqrt(D_rated/100). A source without a rated current isn't judged; without a duty, the current is
/// taken to be rated at 100 %. A single arc that is longer than the duty allows at its current is found too:
/// it fills the window alone. `where`: WELDMENT/ROBOT/POWER SOURCE.
Findings duty_of_timeline(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation,
                          const CycleResult& cycle);

/// `cycle.duty.exceeded` of every weldment in the order given, accepted ones as notes; empty without a cell.
Findings duty_findings(const Plan& plan, const Evaluation& evaluation);

}  // namespace seamtakt
