#pragma once

#include "cell/timeline/cell_model.hpp"

namespace seamtakt {

/// A lower bound (s) of every sequence of the model's seams: the largest of
///
///  - load: for a set S of robots, the work of the seams that only robots of S can weld, shared by them,
///    sum(w)/|S| + the shortest way home/|S|, where w is the least over the robots of: shortest air move into
///    the seam + sensing + all its passes (starts, arcs, ends, moves between runs). S runs over the sets that
///    seams name and all robots. Added to it are either the turns of the positioner (orientations needed -
///    1), during which nobody works, or the torch services that the arc time requires, ceil(arc/every_arc_s)
///    - |S|, shared. The turns are those that no order saves (turn_bound.hpp), by the positioner's own times,
///    out of the load orientation and back where there is one;
///  - chain: the longest chain of `after`, each seam with w and its interpass waits, and the way home;
///  - zone: the work w of the seams of a zone, which are never welded two at once, with the turns of the
///  positioner;
///  - phases: the orientations one by one, with the 1-tree bound of each robot's round trip
///  (phase_bound.hpp).
///
/// Source: derived; sums of times that can't overlap. Above 700 seams the shortest air move into a seam is
/// taken as the wrist time alone (finding it is quadratic). Holds for every order, robot and direction, so
/// for "given" too.
double makespan_bound_s(const CellModel& model);

/// Cycle time of a cell with one or two stations (s), from the time that the robots need: one station:
/// load + weld + unload; two: max(weld + index, load + unload + index).
/// Source: "two-station cycle" of the trade, common practice, no source.
double station_cycle_s(int stations, double weld_s, double load_s, double unload_s, double index_s);

/// How far a time is above a lower bound of it (%): 0 where it reaches it, or is 0.
inline double gap_to_bound_pct(double time_s, double bound_s) {
  return time_s > bound_s && time_s > 0 ? 100 * (time_s - bound_s) / time_s : 0;
}

}  // namespace seamtakt
