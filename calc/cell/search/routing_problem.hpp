#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

namespace seamtakt {

/// A robot's travel as a problem of its own: visit every cluster once, at one of its nodes, and come back.
///
/// A cluster is a seam, its nodes the ways to weld it (as drawn, reversed); cluster 0 is home, where the trip
/// begins and ends. Costs go from node to node, any values >= 0 (a trip that stays open has 0 on the way
/// back). A seam shrunk to a point is a cluster of one node: the travelling salesman's problem, asymmetric
/// where costs are, sequential ordering with `before`, generalised with larger clusters.
struct RoutingProblem {
  std::vector<int> first_node{0};           ///< nodes of cluster c: first_node[c] … first_node[c + 1] - 1
  std::vector<double> cost;                 ///< [from * node_count + to]
  std::vector<std::pair<int, int>> before;  ///< clusters (a, b): a before b; none for cluster 0

  int cluster_count() const { return static_cast<int>(first_node.size()) - 1; }
  int node_count() const { return first_node.back(); }
  int size_of(int cluster) const { return first_node[cluster + 1] - first_node[cluster]; }
  double between(int from, int to) const {
    return cost[static_cast<std::size_t>(from) * static_cast<std::size_t>(node_count()) +
                static_cast<std::size_t>(to)];
  }
};

/// The nodes in the order of the trip, home first.
struct Route {
  std::vector<int> nodes;
  double length = 0;
};

struct RoutingOptions {
  std::uint64_t seed = 1;
  std::uint64_t steps = 0;     ///< trials; 0: until `stop`
  double bound = 0;            ///< no trip is shorter: one that reaches it ends the search
  std::function<bool()> stop;  ///< asked now and then
  std::function<void(const Route&)> improved;
};

/// The length of a route; infinity where it isn't one (a cluster missing or twice, `before` broken).
double length_of(const RoutingProblem& problem, const std::vector<int>& nodes);

/// Whether every trip is as long in reverse, with the nodes of two-node clusters exchanged.
bool is_reversible(const RoutingProblem& problem);

/// Searches for the shortest trip; the result depends on problem, seed and steps alone. Reversible problems
/// without `before` go to `tour_search`, others to `cluster_search`. std::invalid_argument: `before` is
/// circular, or sizes don't agree.
Route shortest_route(const RoutingProblem& problem, const RoutingOptions& options);

/// A lower bound of every trip's length: 1-tree bound or assignment bound, whichever is larger.
/// `rounds`: of the 1-tree's ascent; 0 chooses by size.
double route_bound(const RoutingProblem& problem, int rounds = 0);

}  // namespace seamtakt
