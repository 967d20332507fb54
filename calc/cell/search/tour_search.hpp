#pragma once

#include <vector>

#include "cell/search/routing_problem.hpp"
#include "cell/search/seeded_draws.hpp"

namespace seamtakt {

/// A round trip through points with symmetric costs, some of whose edges are fixed (the two ends of a seam).
/// Chained local search: Lin-Kernighan steps and Or's moves over lists of near points, kicks by exchanging
/// two short neighbouring stretches, worse results undone.
///
/// Source: lin-kernighan-1973, or-1976, martin-otto-felten-1991 (all recalled); the tour is an array, its
/// stretches reversed on the shorter side.
class TourSearch {
 public:
  /// `cost` is [from * points + to], `partner[i]` the other end of point i's fixed edge or -1. At least 5
  /// points.
  TourSearch(std::vector<double> cost, std::vector<int> partner, std::uint64_t seed);

  /// From the nearest-neighbour tour to a local optimum.
  void begin();
  /// One kick and its repair; true where the tour became shorter.
  bool step();

  const std::vector<int>& tour() const { return tour_; }
  double length() const { return length_; }

 private:
  struct Flip {
    int from, to;
  };
  double cost(int a, int b) const {
    return cost_[static_cast<std::size_t>(a) * count_ + static_cast<std::size_t>(b)];
  }
  int near(int a, int rank) const { return near_[static_cast<std::size_t>(a * near_count_ + rank)]; }
  double near_cost(int a, int rank) const {
    return near_cost_[static_cast<std::size_t>(a * near_count_ + rank)];
  }
  int next(int a) const { return tour_[place_[a] + 1 == points_ ? 0 : place_[a] + 1]; }
  int before(int a) const { return tour_[place_[a] == 0 ? points_ - 1 : place_[a] - 1]; }
  bool fixed(int a, int b) const { return partner_[a] == b; }
  void find_neighbours();
  void nearest_neighbour_tour();
  void turn_round(int from, int to);
  void turn(int from, int to);
  void flip(int from, int to);
  void put_stretch(int first, int last, int behind, bool reversed);
  int moved(int place, int by) const { return ((place + by) % points_ + points_) % points_; }
  void undo(std::size_t flips);
  void push(int point);
  void push_ends(std::size_t first_flip);
  void repair();
  bool improve(int point);
  /// A way to continue: `end` is joined to `to`, the edge (opened, to) goes; `value` is the gain of the open
  /// tour.
  struct Way {
    int to = -1, opened = -1;
    double value = 0;
  };
  bool chain(int anchor, bool forward);
  bool two_exchanges(int anchor, int end, const Way& first, bool forward, Way& best);
  bool lengthen(int anchor, int end, double gain);
  void exchange(int end, const Way& way, bool forward);
  bool insert_stretch(int point, bool forward);
  bool insert_beside(int first, int last, double gain, bool forward);
  void kick();
  int cut_after(int place) const;

  std::size_t count_;
  int points_;
  std::vector<double> cost_;
  std::vector<int> partner_, tour_, place_, near_;
  std::vector<double> near_cost_;
  int near_count_ = 0;
  double length_ = 0;
  std::vector<Flip> flips_;  ///< since the step began
  std::vector<int> queue_;
  std::vector<char> queued_;
  SeededDraws draws_;
};

}  // namespace seamtakt
