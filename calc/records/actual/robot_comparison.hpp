#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "records/actual/cycle_actual.hpp"
#include "records/actual/welded_arc.hpp"

namespace seamtakt {

/// Where a unit's times begin: an arc of the log and the planned one that it is.
struct ComparisonZero {
  std::int64_t ns = 0;
  double planned_s = 0;
  std::string robot;
  ArcName arc;
};

ArcName name_of_planned(const PlannedArc& arc);

/// One robot's arcs of one unit beside its planned ones. Borrows records and timeline.
class RobotComparison {
 public:
  RobotComparison(std::string robot, const PlannedTimeline& planned,
                  const std::vector<const PassRecord*>& records);

  const std::string& robot() const { return robot_; }
  /// Its arcs overlap, or are on several clocks: only the arcs themselves can be compared.
  bool is_impossible() const { return overlaps_ || clocks_ > 1; }
  /// Its first arc in the planned order, and the planned one; nullptr where there is none.
  std::pair<const WeldedArc*, const PlannedArc*> first_planned() const;

  /// Without a zero, steps have no start.
  RobotActual compare(const std::optional<ComparisonZero>& zero) const;

 private:
  void match();
  void match_by_name();
  void match_by_time();
  /// Whether its time from the unit's first arc, which is another robot's, is a gap of its own.
  bool leads(const std::optional<ComparisonZero>& zero) const;
  ArcName name_of(std::size_t arc) const;
  CycleStep arc_step(std::size_t arc, const std::optional<ComparisonZero>& zero) const;
  /// From the arc `from`, or from the zero, to the arc `to`; both in the row.
  CycleStep gap_step(std::optional<std::size_t> from, std::size_t to,
                     const std::optional<ComparisonZero>& zero) const;
  void list_unmatched(RobotActual& actual) const;
  void note_basis(RobotActual& actual) const;

  std::string robot_;
  const PlannedTimeline& planned_;
  std::vector<WeldedArc> arcs_;                         ///< in the order of time
  const std::vector<PlannedArc>* plan_arcs_;            ///< passes, or runs where the log has no names
  std::vector<std::optional<std::size_t>> planned_of_;  ///< in plan_arcs_: what an arc is, wherever it comes
  std::vector<ArcIs> is_;                               ///< of the arcs
  std::vector<int> parts_;        ///< likewise: how often the pass has been begun by then
  std::vector<int> numbers_;      ///< likewise: the pass; 0: not known
  std::vector<std::size_t> row_;  ///< arcs in the planned order
  std::size_t clocks_ = 0;
  bool overlaps_ = false, by_time_ = false, too_many_ = false;
};

}  // namespace seamtakt
