#pragma once

#include <cstdint>
#include <vector>

#include "cell/search/routing_problem.hpp"
#include "cell/search/seeded_draws.hpp"

namespace seamtakt {

/// Which clusters must come before which, all consequences included: a bit a pair.
class Precedence {
 public:
  /// std::invalid_argument where `before` is circular.
  explicit Precedence(const RoutingProblem& problem);
  bool any() const { return any_; }
  bool must(int before, int after) const {
    return row(before)[static_cast<std::size_t>(after) / 64] >> (after % 64) & 1;
  }
  /// Bits of the clusters that come after one.
  const std::uint64_t* row(int before) const { return &bits_[static_cast<std::size_t>(before) * words_]; }
  std::size_t words() const { return words_; }

 private:
  std::size_t words_;
  bool any_ = false;
  std::vector<std::uint64_t> bits_;
};

/// The general trip: asymmetric costs, precedence, several nodes a cluster. Annealing over the order of
/// clusters: a stretch of clusters is moved so that one follows another that is near, or reversed; the
/// best nodes of an order come from shortest paths through its clusters, of which only the changed stretch is
/// computed again.
///
/// Source: simulated annealing (kirkpatrick-1983); or-1976 for moving stretches; the layered
/// shortest path is the cluster optimisation of generalised problems (fischetti-1997, recalled).
class ClusterSearch {
 public:
  ClusterSearch(const RoutingProblem& problem, const Precedence& precedence, std::uint64_t seed);

  /// Greedy from home.
  void begin();
  /// One trial of annealing at a temperature in the unit of the costs; true where the best got better.
  bool step(double temperature);
  /// Back to the best order.
  void restart_from_best();

  double best_length() const { return best_length_; }
  Route best() const;

 private:
  /// The places low … high change: two stretches, the second of which begins at `middle`, are exchanged; or
  /// the whole is reversed.
  struct Change {
    int low = 0, middle = 0, high = -1;
    bool reversed = false;
    bool possible() const { return low >= 1 && low < middle && middle <= high; }
  };
  void find_near();
  Change propose();
  Change follow(int cluster, int after, bool backwards);
  Change reverse();
  bool keeps_precedence(const Change& change);
  bool may_swap(int first, int middle, int last);
  void write_middle(const Change& change);
  double changed_length(const Change& change);
  double single_length(const Change& change) const;
  void extend_front(int to);
  void extend_back(int to);
  void take(const Change& change, double length);
  double whole_length(std::vector<int>* nodes) const;
  double path_length(int start_node, std::vector<int>* nodes) const;

  const RoutingProblem* problem_;
  const Precedence* precedence_;
  int clusters_, widest_ = 1;
  bool single_ = true, reversible_ = false;
  std::vector<int> near_,
      near_before_;  ///< [cluster * near_count_] that best follow it, that best go before it
  int near_count_ = 0;
  std::vector<int> order_, place_, best_order_, middle_;
  double length_ = 0, best_length_ = 0;
  int start_node_ = 0;
  int front_valid_ = 0, back_valid_ = 0;
  std::vector<double> front_, back_;  ///< [place * widest_]: shortest from home to a node; from it back home
  std::vector<double> layer_, next_layer_;
  std::vector<std::uint64_t> set_;
  SeededDraws draws_;
};

}  // namespace seamtakt
