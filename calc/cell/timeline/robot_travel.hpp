#pragma once

#include "cell/search/routing_problem.hpp"
#include "cell/timeline/sequence.hpp"

namespace seamtakt {

/// A robot's travel through some of its seams as a routing problem: cluster 0 is its home, cluster i + 1 the
/// i-th of `seams` with one node as drawn and, where it may be reversed, one reversed. All passes of a seam
/// are welded in a row, every other one reversed where the seam allows; air moves between passes don't depend
/// on the order and aren't in it. `after` between these seams is kept. Orientations, zones, services, wire
/// changes and waits aren't modelled.
RoutingProblem travel_of(const CellModel& model, int robot, const std::vector<int>& seams);

/// The route as steps of the robot.
Sequence steps_of(const CellModel& model, int robot, const std::vector<int>& seams, const Route& route);

/// Whether the model's makespan is a constant plus the length of its only robot's route, so that the shortest
/// route is the best order: nothing turns, is changed, serviced, balanced or waited for.
bool travel_decides(const CellModel& model);

}  // namespace seamtakt
