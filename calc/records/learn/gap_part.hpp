#pragma once

#include <functional>
#include <string>
#include <vector>

#include "records/actual/cycle_actual.hpp"
#include "records/learn/learn.hpp"

namespace seamtakt {

/// A time of the plan that falls into a gap once.
struct GapPart {
  std::string name;                     ///< "cell/torch_service/time_s"
  std::function<double*(Plan&)> value;  ///< in a plan that has it
};

struct GapParts {
  std::vector<GapPart> parts;            ///< each as often as it is in the gap
  std::vector<Undetermined> unknowable;  ///< what no number of gaps would tell
  bool waits = false;  ///< the plan has the robot wait in it: its length is another robot's, or the steel's
};

/// What a planned gap holds beside air moves, starts and ends. A wait for a turn of the positioner
/// that begins with the wait is the turn itself: this robot was the last one home.
/// `with_sensing`: each sensed point, too.
GapParts gap_parts(const Plan& plan, const PlannedTimeline& planned, const CycleStep& gap, bool with_sensing);

}  // namespace seamtakt
