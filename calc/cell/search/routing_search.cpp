#include "cell/search/routing_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "cell/search/route_points.hpp"

namespace seamtakt {

namespace {

constexpr double not_a_route = std::numeric_limits<double>::infinity();
constexpr int least_tour_points = 8;
/// Temperatures as parts of a route's mean step.
constexpr double hottest = 0.6, cooled_to = 0.004;
/// The first annealing cycle; each next one is half as long again.
constexpr std::uint64_t first_cycle = 20'000, first_cycle_per_cluster = 300;

const RoutingProblem& checked(const RoutingProblem& problem) {
  const auto nodes = static_cast<std::size_t>(problem.node_count());
  if (problem.cluster_count() < 1 || problem.cost.size() != nodes * nodes)
    throw std::invalid_argument("a routing problem whose sizes don't agree");
  for (int cluster = 0; cluster < problem.cluster_count(); ++cluster)
    if (problem.size_of(cluster) < 1) throw std::invalid_argument("a cluster without a node");
  for (const auto& [a, b] : problem.before)
    if (a < 1 || b < 1 || a >= problem.cluster_count() || b >= problem.cluster_count())
      throw std::invalid_argument("a precedence of no cluster");
  return problem;
}

}  // namespace

double length_of(const RoutingProblem& problem, const std::vector<int>& nodes) {
  if (static_cast<int>(nodes.size()) != problem.cluster_count()) return not_a_route;
  std::vector<int> place(nodes.size(), -1);
  double length = 0;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    if (nodes[i] < 0 || nodes[i] >= problem.node_count()) return not_a_route;
    const auto at = std::upper_bound(problem.first_node.begin(), problem.first_node.end(), nodes[i]);
    const auto cluster = static_cast<std::size_t>(at - problem.first_node.begin() - 1);
    if (place[cluster] >= 0) return not_a_route;
    place[cluster] = static_cast<int>(i);
    length += problem.between(nodes[i], nodes[i + 1 < nodes.size() ? i + 1 : 0]);
  }
  if (place[0] != 0) return not_a_route;
  for (const auto& [a, b] : problem.before)
    if (place[a] > place[b]) return not_a_route;
  return length;
}

bool is_reversible(const RoutingProblem& problem) {
  std::vector<int> mirrored;
  for (int cluster = 0; cluster < problem.cluster_count(); ++cluster) {
    const int first = problem.first_node[cluster], size = problem.size_of(cluster);
    if (size > 2 || (cluster == 0 && size > 1)) return false;
    for (int i = 0; i < size; ++i) mirrored.push_back(first + size - 1 - i);
  }
  for (int cluster = 0; cluster < problem.cluster_count(); ++cluster)
    for (int i = problem.first_node[cluster]; i < problem.first_node[cluster + 1]; ++i)
      for (int k = problem.first_node[cluster + 1]; k < problem.node_count(); ++k)
        if (problem.between(i, k) != problem.between(mirrored[k], mirrored[i]) ||
            problem.between(k, i) != problem.between(mirrored[i], mirrored[k]))
          return false;
  return true;
}

RoutingSearch::RoutingSearch(const RoutingProblem& problem, std::uint64_t seed)
    : problem_(&checked(problem)), precedence_(problem) {
  if (!precedence_.any() && is_reversible(problem)) {
    RoutePoints points = route_points(problem);
    if (static_cast<int>(points.partner.size()) >= least_tour_points) {
      point_cluster_ = std::move(points.cluster);
      point_last_ = std::move(points.last);
      tour_ = std::make_unique<TourSearch>(std::move(points.cost), std::move(points.partner), seed);
      return;
    }
  }
  clusters_ = std::make_unique<ClusterSearch>(problem, precedence_, seed);
  cycle_length_ = first_cycle + first_cycle_per_cluster * static_cast<std::uint64_t>(problem.cluster_count());
}

/// The tour's points from home, as nodes; a seam is welded as drawn where its first end comes first.
Route RoutingSearch::route_of_tour() const {
  const std::vector<int>& tour = tour_->tour();
  const auto home = static_cast<std::size_t>(std::find(tour.begin(), tour.end(), 0) - tour.begin());
  Route route;
  const std::size_t count = tour.size();
  const auto at = [&](std::size_t i) { return tour[(home + i) % count]; };
  for (std::size_t i = 0; i < count; ++i) {
    const int cluster = point_cluster_[at(i)];
    route.nodes.push_back(problem_->first_node[cluster] + (point_last_[at(i)] ? 1 : 0));
    if (problem_->size_of(cluster) == 2) ++i;
  }
  route.length = length_of(*problem_, route.nodes);
  return route;
}

/// Falls by the same factor in every cycle, from less in two of three.
double RoutingSearch::temperature() const {
  const double hot = mean_ * (cycle_ % 3 == 0 ? hottest : cycle_ % 3 == 1 ? 0.3 * hottest : 0.1 * hottest);
  return hot * std::pow(cooled_to, static_cast<double>(in_cycle_) / static_cast<double>(cycle_length_));
}

bool RoutingSearch::anneal(std::uint64_t trials) {
  bool better = false;
  double heat = temperature();
  for (std::uint64_t i = 0; i < trials; ++i) {
    if (i % 32 == 0) heat = temperature();
    better = clusters_->step(heat) || better;
    if (++in_cycle_ < cycle_length_) continue;
    in_cycle_ = 0;
    ++cycle_;
    cycle_length_ += cycle_length_ / 2;
    clusters_->restart_from_best();
  }
  return better;
}

bool RoutingSearch::advance(std::uint64_t trials) {
  bool better = !begun_;
  if (problem_->cluster_count() == 1) {
    best_.nodes = {0};
    best_.length = length_of(*problem_, best_.nodes);
  } else if (tour_) {
    if (!begun_) tour_->begin();
    for (std::uint64_t i = 0; begun_ && i < trials; ++i) better = tour_->step() || better;
    if (better) best_ = route_of_tour();
  } else {
    if (!begun_) {
      clusters_->begin();
      best_ = clusters_->best();
      mean_ = best_.length / problem_->cluster_count();
    } else if (problem_->cluster_count() > 2) {
      better = anneal(trials);
      if (better) best_ = clusters_->best();
    }
  }
  begun_ = true;
  return better;
}

Route shortest_route(const RoutingProblem& problem, const RoutingOptions& options) {
  RoutingSearch search(problem, options.seed);
  constexpr double reached = 1e-9;
  std::uint64_t done = 0;
  for (;;) {
    const bool better = search.advance(search.batch());
    if (better && options.improved) options.improved(search.best());
    done += search.batch();
    if (options.bound > 0 && search.best().length <= options.bound * (1 + reached)) break;
    if (options.steps > 0 ? done >= options.steps : !options.stop) break;
    if (options.stop && options.stop()) break;
  }
  return search.best();
}

}  // namespace seamtakt
