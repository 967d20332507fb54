#pragma once

#include "cell/bound/least_times.hpp"

namespace seamtakt {

/// A time (s) that no sequence can be faster than, from what can't overlap:
///
///  - the positioner stands in one orientation at a time, and everybody is home when it turns. The time in an
///    orientation is at least the longest of: one robot's own seams in it (those that no other robot can
///    weld) with a round trip's 1-tree bound from home; the seams of each set of robots shared by them; each
///    zone's seams; the longest chain of `after`, with interpass waits;
///  - these times and the turns add up. An orientation that is left and come back to costs one more turn: the
///    interpass waits, which such a visit elsewhere could hide, count only without it, and the smaller of the
///    two sums is the bound;
///  - what a robot has to do besides (seams that lie in any orientation, torch services, wire changes) finds
///    room in the time that others need longer than it, services and changes also while the positioner turns;
///    what is left over is added.
///
/// The round trip treats each pass as an edge between its two ends that must be used; going on with the next
/// pass where the torch stands is free. A seam's direction counts as far as an end where it never begins
/// can't follow another such end. A robot that welds more than its own seams on the way, or is home in
/// between, is covered because an air move is never longer than a detour; where an arc would be faster than
/// the air move beside it, the way into each seam alone is counted.
///
/// Source: derived; 1-tree bound: held-karp-1970, held-karp-1971.
double phase_bound_s(const CellModel& model, const LeastTimes& least);

/// A lower bound (s) of a robot's air moves on a round trip from home through all passes of these seams.
double round_trip_bound_s(const CellModel& model, int robot, const std::vector<int>& seams);

}  // namespace seamtakt
