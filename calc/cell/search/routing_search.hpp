#pragma once

#include <memory>
#include <vector>

#include "cell/search/cluster_search.hpp"
#include "cell/search/tour_search.hpp"

namespace seamtakt {

/// The search of one routing problem, a trial at a time: what `shortest_route` and the cell's `best` both
/// drive. The problem must outlive it. std::invalid_argument: `before` is circular, or sizes don't agree.
class RoutingSearch {
 public:
  RoutingSearch(const RoutingProblem& problem, std::uint64_t seed);

  /// Runs `count` more trials; true where the best route became shorter. The first call finds a first route.
  bool advance(std::uint64_t trials);
  const Route& best() const { return best_; }
  /// How many trials take about a hundredth of a millisecond: what to do between two looks at the clock.
  std::uint64_t batch() const { return tour_ ? 8 : 128; }

 private:
  Route route_of_tour() const;
  double temperature() const;
  bool anneal(std::uint64_t trials);

  const RoutingProblem* problem_;
  Precedence precedence_;
  std::vector<int> point_cluster_;  ///< of a tour's points
  std::vector<char> point_last_;    ///< whether the point is the second of its cluster's two ends
  std::unique_ptr<TourSearch> tour_;
  std::unique_ptr<ClusterSearch> clusters_;
  bool begun_ = false;
  std::uint64_t cycle_ = 0, cycle_length_ = 0, in_cycle_ = 0;
  double mean_ = 0;
  Route best_;
};

}  // namespace seamtakt
