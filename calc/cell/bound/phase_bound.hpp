#pragma once

#include "cell/bound/least_times.hpp"

namespace seamtakt {

/// A lower bound (s) of every sequence's time, from what can't overlap:
///
///  - the positioner has one orientation at a time, and all robots are home when it turns. The time in an
///    orientation is at least the longest of: one robot's own seams in it (those that no other robot can
///    weld) with a round trip's 1-tree bound from home; the seams of each set of robots shared by them; each
///    zone's seams; the longest chain of `after`, with interpass waits;
///  - these times and the turns add up. Returning to an orientation costs one more turn: the
///    interpass waits, which such a visit elsewhere could hide, count only without it, and the smaller of the
///    two sums is the bound. In the load orientation, which is there at both ends, they don't count at all;
///  - a robot's other work (seams that may be welded in any orientation, torch services, wire changes) first
///    fills the time that other robots need longer than it, services and changes also the turns of the
///    positioner; the remainder is added.
///
/// The round trip treats each pass as an edge between its two ends that must be used; starting the next pass
/// at the torch's position is free. A seam's direction counts as far as an end where it never begins can't
/// follow another such end. A robot that welds more than its own seams on the way, or is home in between, is
/// covered because an air move is never longer than a detour; where an arc would be faster than the air move
/// beside it, the way into each seam alone is counted.
///
/// Source: derived; 1-tree bound: held-karp-1970, held-karp-1971.
double phase_bound_s(const CellModel& model, const LeastTimes& least);

/// A lower bound (s) of a robot's air moves on a round trip from home through all passes of these seams.
double round_trip_bound_s(const CellModel& model, int robot, const std::vector<int>& seams);

}  // namespace seamtakt
