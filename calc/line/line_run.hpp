#pragma once

#include <cstdint>
#include <limits>
#include <vector>

namespace seamtakt {

/// What the servers of a stage did, in server-seconds. The rest of servers*makespan they were starved.
struct StageTimes {
  double work_s = 0, stop_s = 0, blocked_s = 0;
  double no_person_s = 0;  ///< a unit was there and none of the people it needs
};

/// When a unit went in and out, in working time. Scrap leaves too, where it was found.
struct UnitTimes {
  double start_s = 0;  ///< it comes to the first stage
  double end_s = 0;    ///< it leaves: done, or taken by assembly where that pulls
  bool scrapped = false;
  std::int32_t reworks = 0;
};

/// The run of a line: numbers only, units and stages as in the model.
struct LineRun {
  double makespan_s = 0;  ///< the last unit leaves, in working time
  std::vector<StageTimes> stages;
  std::vector<UnitTimes> units;
};

/// One service of a unit by a server. `trigger` is the activity by whose end this one could begin: following
/// it back gives the chain without a gap that made a unit leave when it did. Where assembly pulls, its takt
/// is an activity of a stage behind the last one.
struct Activity {
  std::uint32_t unit = 0;
  std::int32_t stage = 0;
  bool rework = false;            ///< of a unit that was sent back, here or to a stage before
  double start_s = 0, end_s = 0;  ///< without the time blocked
  double work_s = 0, repair_s = 0, change_s = 0;
  std::int32_t trigger = -1;  ///< -1: it began at time 0, or when its unit was complete
};

/// A run watched: every activity, which one let each unit leave, and the integral over time of the number of
/// units in the line.
struct LineTrace {
  std::vector<Activity> activities;
  std::vector<std::int32_t> leaving;  ///< per unit
  double units_in_line_s = 0;
};

}  // namespace seamtakt
