#pragma once

#include "cell/search/routing_problem.hpp"

namespace seamtakt {

/// A reversible problem as points with symmetric costs: a cluster of one node is a point, one of two nodes a
/// pair of ends that a fixed edge joins (as drawn from the first to the second).
struct RoutePoints {
  std::vector<int> cluster;  ///< of each point
  std::vector<char> last;    ///< whether it is the second end of a pair
  std::vector<int> partner;  ///< the pair's other end, or -1
  std::vector<double> cost;  ///< [from * points + to]; within a pair 0
};
RoutePoints route_points(const RoutingProblem& problem);

}  // namespace seamtakt
