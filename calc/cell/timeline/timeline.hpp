#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

enum class MoveKind {
  air,
  sense,
  start,
  arc,
  end,
  wait,
  orientation,
  service,
  index,
  load,
  wire_change,
  tip_change,
  spool_change
};
inline constexpr MoveKind last_move_kind = MoveKind::spool_change;

/// The contract's word: "wire-change", ...
const char* to_string(MoveKind kind);
/// The same for people.
Sentence kind_sentence(MoveKind kind);

/// What a robot's wait ends with.
enum class WaitCause {
  none,        ///< no wait
  cooling,     ///< the pass before has cooled to the interpass limit
  zone,        ///< another robot leaves a zone
  after,       ///< the seam that this one comes after is done
  positioner,  ///< the positioner has turned
  others,      ///< another robot is home, so that the positioner may turn
  balance,     ///< the seam before in the balance group is begun
  together,    ///< the robot that begins a seam together with this one is there
  apart        ///< another torch has gone far enough away
};

/// One bar of a robot's timeline.
struct Move {
  std::string robot;
  std::string seam;  ///< empty where the move belongs to none
  int pass = 0;      ///< 0 where it belongs to none
  bool reversed = false;
  double start_s = 0, end_s = 0;
  MoveKind kind = MoveKind::air;
  std::vector<Point_mm> points;  ///< where the torch goes: from, to (air), or along the seam (arc)
  WaitCause cause = WaitCause::none;
  Sentence why = {};  ///< of a wait: what it ends with, with its names; empty otherwise
  /// Of an arc, where the plan gives the sizes of the seam's plates: what it finds there.
  std::optional<double> start_temperature_C = {};
};

/// A weldment's cycle in the cell. Sums are over all robots; definitions are the contract's.
struct CycleResult {
  std::string weldment;
  double cycle_time_s = 0;
  double weld_s = 0;  ///< from the first robot's leaving home to the last one's, and the positioner's, return
  double arc_on_s = 0, air_s = 0, sense_s = 0, start_end_s = 0, wait_s = 0, orientation_s = 0, service_s = 0,
         wire_change_s = 0, load_unload_s = 0;
  double tip_change_s = 0, spool_change_s = 0;
  double arc_on_ratio = 0;
  /// The line's takt and the share of it to plan to. The margin is a finished weldment's alone: there is none
  /// where seams are unwelded.
  std::optional<double> takt_s, takt_limit_s, takt_margin_s;
  std::optional<double> lower_bound_s, gap_pct;
  std::uint64_t orders_tried = 0;  ///< by a search; 0 for the given order
  std::vector<Move> moves;
  std::vector<OrderStep> order;  ///< the passes as the robots claim them: as Weldment::order, the same again
  int robot_seams = 0;           ///< the weldment's seams that aren't manual
  std::vector<std::string> unwelded;  ///< ids of those that aren't in the timeline: no robot can weld them
  Findings findings;
};

/// `cycle --order given`: the weldment's order where it has one, balance kept as far as that order keeps it;
/// else seams in file order, each by the first robot of its list. `evaluation` is of this plan. A seam that
/// no robot can weld (none of its list exists in the cell, or what is loaded doesn't fit and can't be
/// changed) is a fail finding and is left out of the timeline; it fails the weldment, too.
CycleResult cycle_given(const Plan& plan, const Weldment& weldment, const Evaluation& evaluation);

}  // namespace seamtakt
