#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "plan/plan.hpp"
#include "records/actual/planned_timeline.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// A pass, or a part of it, by name. 0: not known, or the whole.
struct ArcName {
  std::string seam;
  int pass = 0;
  int run = 0;   ///< one run of an intermittent pass
  int part = 0;  ///< from 2 on: welded again, or gone on with, after the robot had welded something else

  /// "S03/pass 1", "S03/pass 1/run 2", "S03/pass 1 (2)"; "-" where nothing is known.
  std::string text() const;
};

/// What an arc in the log is to the plan.
enum class ArcIs {
  planned,       ///< next in the planned order
  again,         ///< a further part of a pass: repaired, or gone on with later
  out_of_order,  ///< planned for another moment
  other_robot,   ///< planned for another robot
  not_planned    ///< the plan doesn't know it
};
/// As JSON has it: "out-of-order".
const char* to_string(ArcIs is);
Word name_of(ArcIs is);

/// One arc of a robot, or the gap between an arc and the next one of the same robot that is in the planned
/// order. What the plan hasn't in this place is welded within a gap (`extra`).
struct CycleStep {
  enum class Kind { arc, gap };
  Kind kind = Kind::arc;
  std::string robot;
  ArcName from;  ///< of a gap: the arc before; of the first one, where another robot began: that arc
  ArcName to;    ///< of a gap: the arc after; of an arc: itself
  ArcIs is = ArcIs::planned;  ///< of an arc
  /// After the unit's first arc; empty where the robots have no common clock.
  std::optional<double> start_s, planned_start_s;
  /// By the arc: first to last moment with the arc on; of a gap without. Empty: the log has no one clock.
  std::optional<double> time_s;
  double arc_on_s = 0;                                   ///< of an arc
  std::uint64_t arc_starts = 0, planned_arc_starts = 0;  ///< of an arc
  /// For which the torch rested with the arc on, at a start and at an end: part of the planned start and end,
  /// so it is taken from the arc and given to the gap before the two are compared. Empty: not logged.
  std::optional<double> rest_s;
  std::optional<double> planned_s;
  std::optional<double> difference_s;  ///< time_s without rest_s (arc) or with it (gap) - planned_s
  std::vector<PlannedPart> parts;      ///< of a gap: what the plan has in it
  std::vector<ArcName> skipped;        ///< of a gap: planned between the two, and not welded there
  std::vector<ArcName> extra;          ///< of a gap: welded between the two, and not planned there
  double extra_s = 0;                  ///< their time, part of time_s
  /// Ends of the gap, the arc's own record; nullptr: the gap is the robot's first.
  const PassRecord *before = nullptr, *after = nullptr;
  double planned_from_s = 0, planned_to_s = 0;  ///< on the weldment's timeline, where planned_s is
};

struct RobotActual {
  std::string robot;
  std::vector<CycleStep> steps;  ///< in the order of time
  std::vector<ArcName> skipped;  ///< planned for it and not welded by it
  /// Welded by it and not planned in that place.
  struct Extra {
    ArcName arc;
    ArcIs is;
  };
  std::vector<Extra> extra;
  std::optional<double> time_s, planned_s, difference_s;  ///< from its first planned arc to its last one
  std::vector<Sentence> notes;  ///< why something is null, what a comparison rests on
};

/// A unit's time in the cell beside its weldment's planned cycle.
struct UnitActual {
  std::string unit_serial, weldment;
  std::optional<double> planned_cycle_s;  ///< of the whole cycle, loading included
  std::optional<double> logged_s;         ///< from its first row to its last one
  std::optional<double> time_s;           ///< from its first arc to the end of its last one
  std::optional<double> planned_s;        ///< the same of the plan
  std::optional<double> difference_s;
  std::string aligned_at;           ///< the arc at which both begin: "R1: S01/pass 1"
  std::vector<RobotActual> robots;  ///< as the cell has them
  std::vector<Sentence> notes;
  const PassRecord *first = nullptr, *last = nullptr;  ///< with its first and its last arc, where time_s is
  std::string clock;                                   ///< units of one clock can be compared with each other

  /// The steps that differ most from the plan, largest first, at most `most`; differences below a
  /// millisecond are none.
  std::vector<const CycleStep*> largest(std::size_t most = 10) const;
};

struct CycleActual {
  std::vector<UnitActual> units;  ///< in the order in which they begin in the logs
  /// The planned timelines, by weldment.
  std::map<std::string, std::unique_ptr<const PlannedTimeline>, std::less<>> planned;
};

/// The units' arcs and the gaps between them, each beside what the plan has for it. Passes are found in the
/// plan by seam and pass where the log has them, else by their order and times (aligned_by_time). Per robot
/// the longest row of passes in the planned order is compared step by step, so that its differences add up
/// to that of its whole time; a pass that the plan hasn't in its place is time within a gap, one that was
/// skipped is planned time within a gap, and each is listed. Where records have no robot, the planned one is
/// taken. Borrows the records. Empty where the plan has no cell.
CycleActual cycle_actual(const std::vector<PassRecord>& records, const Plan& plan);

}  // namespace seamtakt
