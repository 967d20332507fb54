#include "cell/search/route_points.hpp"

namespace seamtakt {

RoutePoints route_points(const RoutingProblem& problem) {
  RoutePoints points;
  std::vector<int> leaving, entering;  // the node that leaves, or enters, its cluster at the point
  for (int cluster = 0; cluster < problem.cluster_count(); ++cluster) {
    const int first = problem.first_node[cluster], size = problem.size_of(cluster);
    for (int i = 0; i < size; ++i) {
      const int at = static_cast<int>(points.cluster.size());
      points.cluster.push_back(cluster);
      points.last.push_back(i == 1);
      points.partner.push_back(size == 1 ? -1 : i == 0 ? at + 1 : at - 1);
      entering.push_back(first + i);
      leaving.push_back(first + size - 1 - i);
    }
  }
  const std::size_t count = points.cluster.size();
  points.cost.resize(count * count, 0);
  for (std::size_t from = 0; from < count; ++from)
    for (std::size_t to = 0; to < count; ++to)
      if (points.cluster[from] != points.cluster[to])
        points.cost[from * count + to] = problem.between(leaving[from], entering[to]);
  return points;
}

}  // namespace seamtakt
