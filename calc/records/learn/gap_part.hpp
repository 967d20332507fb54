#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "records/actual/cycle_actual.hpp"
#include "records/learn/learn.hpp"

namespace seamtakt {

/// A time of the plan that falls into a gap once, or the speed of an axis that turns in it.
struct GapPart {
  std::string name;                     ///< "cell/torch_service/time_s", "cell/positioner/axis_deg_s/0"
  std::function<double*(Plan&)> value;  ///< in a plan that has it
  /// Of a speed: how many quarters of a turn are in the gap. What is fitted is then the time of a quarter.
  std::optional<double> quarters{};

  double share() const { return quarters.value_or(1); }  ///< of the gap's time for a change by one
};

struct GapParts {
  std::vector<GapPart> parts;            ///< each as often as it is in the gap
  std::vector<Undetermined> unknowable;  ///< what no number of gaps would tell
  bool waits = false;  ///< the plan has the robot wait in it: its length is another robot's, or the steel's
};

/// What a planned gap holds beside air moves, starts and ends. A turn by axes is the quarters of its slowest
/// axis and the settling; where another axis takes more than half as long, it may be the slower one in truth,
/// and the gap tells neither. A wait for a turn of the positioner
/// that begins with the wait is the turn itself: this robot was the last one home.
/// `with_sensing`: each sensed point, too.
GapParts gap_parts(const Plan& plan, const PlannedTimeline& planned, const CycleStep& gap, bool with_sensing);

}  // namespace seamtakt
