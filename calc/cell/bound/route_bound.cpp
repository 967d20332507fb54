#include <algorithm>
#include <cmath>
#include <limits>

#include "cell/bound/one_tree.hpp"
#include "cell/search/cluster_search.hpp"
#include "cell/search/route_points.hpp"
#include "cell/timeline/assignment.hpp"

namespace seamtakt {

namespace {

constexpr double no_way = std::numeric_limits<double>::infinity();
/// nodes^2 * rounds of the 1-tree's ascent, and clusters^3 of the assignment: about half a second each.
constexpr double tree_work = 3e8, assignment_work = 5e8;

int rounds_for(std::size_t nodes, int wanted) {
  if (wanted > 0) return wanted;
  const double count = static_cast<double>(nodes);
  return std::clamp(static_cast<int>(tree_work / (count * count)), 20, 500);
}

/// Least costs between clusters, without the arcs that no allowed trip uses.
std::vector<double> cluster_costs(const RoutingProblem& problem, const Precedence& precedence) {
  const int count = problem.cluster_count();
  std::vector<double> cost(static_cast<std::size_t>(count) * static_cast<std::size_t>(count), no_way);
  const auto between = [&](int a, int b) {
    for (int k = 1; k < count; ++k) {
      const bool a_first = a > 0 && precedence.must(a, k), b_last = b > 0 && precedence.must(k, b);
      // Through k; home first, but b not first; a last, but k after it.
      if ((a_first || a == 0) && b_last) return true;
      if (b == 0 && a_first) return true;
    }
    return false;
  };
  for (int a = 0; a < count; ++a)
    for (int b = 0; b < count; ++b) {
      if (a == b || (a > 0 && b > 0 && precedence.must(b, a)) || (precedence.any() && between(a, b)))
        continue;
      double least = no_way;
      for (int i = problem.first_node[a]; i < problem.first_node[a + 1]; ++i)
        for (int k = problem.first_node[b]; k < problem.first_node[b + 1]; ++k)
          least = std::min(least, problem.between(i, k));
      cost[static_cast<std::size_t>(a) * static_cast<std::size_t>(count) + static_cast<std::size_t>(b)] =
          least;
    }
  return cost;
}

/// An asymmetric trip as a symmetric one: each cluster a way out and a way in, joined by a fixed edge.
double in_and_out_bound(const std::vector<double>& cost, int count, int rounds) {
  std::vector<int> partner;
  for (int i = 0; i < 2 * count; ++i) partner.push_back(i ^ 1);
  const auto between = [&](int i, int k) {
    if ((i & 1) == (k & 1)) return no_way;
    const int out = (i & 1) ? k / 2 : i / 2, in = (i & 1) ? i / 2 : k / 2;
    return cost[static_cast<std::size_t>(out) * static_cast<std::size_t>(count) +
                static_cast<std::size_t>(in)];
  };
  return OneTreeBound(std::move(partner), between).bound(rounds);
}

}  // namespace

double route_bound(const RoutingProblem& problem, int rounds) {
  const int count = problem.cluster_count();
  if (count < 2) return 0;
  const Precedence precedence(problem);
  if (!precedence.any() && is_reversible(problem)) {
    RoutePoints points = route_points(problem);
    const std::size_t nodes = points.partner.size();
    const auto between = [&](int i, int k) {
      return points.cost[static_cast<std::size_t>(i) * nodes + static_cast<std::size_t>(k)];
    };
    if (nodes > 2) return OneTreeBound(points.partner, between).bound(rounds_for(nodes, rounds));
  }
  const std::vector<double> cost = cluster_costs(problem, precedence);
  double bound = 0;
  if (std::pow(count, 3.0) <= assignment_work) {
    const double assigned = assignment_cost(cost, count);
    if (std::isfinite(assigned)) bound = assigned;
  }
  if (count < 3) return bound;
  return std::max(bound,
                  in_and_out_bound(cost, count, rounds_for(2 * static_cast<std::size_t>(count), rounds)));
}

}  // namespace seamtakt
