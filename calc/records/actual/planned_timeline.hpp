#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// A pass on a planned timeline, or one run of it.
struct PlannedArc {
  std::string robot, seam;
  int pass = 1;
  int run = 0;                    ///< counts from 1 where it is one run of an intermittent pass; 0: all runs
  double start_s = 0, end_s = 0;  ///< from the first run's arc to the end of the last one's
  double arc_on_s = 0;            ///< of that, the torch welds
  std::uint64_t arc_starts = 0;
};

/// Planned time of one kind: of a wait, also what it ends with.
struct PlannedPart {
  MoveKind kind = MoveKind::air;
  WaitCause cause = WaitCause::none;
  double time_s = 0;
};

/// A weldment's planned cycle, robot by robot. Its robots' moves follow one another without a gap.
class PlannedTimeline {
 public:
  explicit PlannedTimeline(CycleResult cycle);
  PlannedTimeline(const PlannedTimeline&) = delete;  // lanes refer to the cycle's moves
  PlannedTimeline& operator=(const PlannedTimeline&) = delete;

  const CycleResult& cycle() const { return cycle_; }
  /// In the order of time; empty where the robot welds nothing.
  const std::vector<PlannedArc>& passes(std::string_view robot) const;
  const std::vector<PlannedArc>& runs(std::string_view robot) const;
  /// nullptr where no robot welds it.
  const PlannedArc* pass(std::string_view seam, int number) const;
  /// When the first arc begins and when the last one ends, of all robots; 0 where there is none.
  double first_arc_s() const { return first_arc_s_; }
  double last_arc_s() const { return last_arc_s_; }

  /// What a robot does between two moments, summed by kind in the order in which each first comes. They add
  /// up to the time between, except for what is before the robot's first or after its last move.
  std::vector<PlannedPart> parts(std::string_view robot, double from_s, double to_s) const;
  /// The robot's moves that are at least partly between two moments.
  std::vector<const Move*> moves(std::string_view robot, double from_s, double to_s) const;

 private:
  struct Lane {
    std::vector<const Move*> moves;
    std::vector<PlannedArc> passes, runs;
  };
  const Lane& lane(std::string_view robot) const;

  CycleResult cycle_;
  std::map<std::string, Lane, std::less<>> lanes_;
  std::map<std::pair<std::string_view, int>, const PlannedArc*> by_name_;
  double first_arc_s_ = 0, last_arc_s_ = 0;
};

}  // namespace seamtakt
