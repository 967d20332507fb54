#pragma once

#include <algorithm>
#include <cstddef>
#include <limits>
#include <vector>

namespace seamtakt {

/// A lower bound for a round trip through all nodes that uses given edges: 1-trees with node prices that are
/// raised and lowered towards two edges a node (subgradient ascent). Every round trip is a 1-tree, so each
/// price gives a bound; the best is kept.
///
/// `partner[i]` is the other end of the edge that the trip must use at node i, -1 where there is none; such
/// an edge costs nothing. `cost(i, j)` is symmetric and at least 0; infinity forbids an edge. Node 0 is the
/// node outside the tree. Work grows with nodes^2 * rounds.
///
/// Source: held-karp-1970, held-karp-1971; the step's length and its memory of the last direction
/// after Volgenant and Jonker (1982, recalled), simplified to a geometric decay.
template <class Cost>
class OneTreeBound {
 public:
  OneTreeBound(std::vector<int> partner, Cost cost)
      : partner_(std::move(partner)),
        cost_(std::move(cost)),
        count_(partner_.size()),
        price_(count_, 0),
        degree_(count_, 0),
        key_(count_),
        from_(count_) {}

  double bound(int rounds) {
    if (count_ < 3) return 0;
    std::vector<int> before(count_, 2);
    double best = tree_cost(), length = best / (2.0 * static_cast<double>(count_));
    if (!(best < std::numeric_limits<double>::infinity())) return 0;  // forbidden edges leave no tree
    best = std::max(best, 0.0);
    for (int round = 0; round < rounds && length > 0; ++round) {
      bool tour = true;
      for (std::size_t i = 0; i < count_; ++i) {
        tour = tour && degree_[i] == 2;
        price_[i] += length * (0.7 * (degree_[i] - 2) + 0.3 * (before[i] - 2));
      }
      if (tour) break;
      before = degree_;
      length *= decay(rounds);
      best = std::max(best, tree_cost());
    }
    return best;
  }

 private:
  /// A thousandth of the first length is left at the end.
  static double decay(int rounds) { return 1 - 6.9 / (6.9 + rounds); }

  double priced(std::size_t i, std::size_t j) const {
    return cost_(static_cast<int>(i), static_cast<int>(j)) + price_[i] + price_[j];
  }

  /// Prim's tree over all nodes but 0; a node and its partner join together.
  double tree_cost() {
    std::fill(degree_.begin(), degree_.end(), 0);
    open_.clear();
    for (std::size_t i = 1; i < count_; ++i) {
      open_.push_back(static_cast<int>(i));
      key_[i] = std::numeric_limits<double>::infinity();
      from_[i] = -1;
    }
    double total = 0;
    for (const double price : price_) total -= 2 * price;
    int next = 1;
    while (next >= 0) {
      if (from_[next] >= 0) {
        total += key_[next];
        ++degree_[from_[next]];
        ++degree_[next];
      }
      const int other = partner_[next];
      if (other > 0) {
        total += price_[next] + price_[other];
        ++degree_[next];
        ++degree_[other];
        join(other);
      }
      join(next);
      next = -1;
      for (const int node : open_)
        if (next < 0 || key_[node] < key_[next]) next = node;
      if (next >= 0 && from_[next] < 0) return std::numeric_limits<double>::infinity();
    }
    return total + outside_cost();
  }

  /// Takes a node into the tree and brings the others' distances up to date.
  void join(int node) {
    open_.erase(std::find(open_.begin(), open_.end(), node));
    for (const int other : open_) {
      const double cost = priced(static_cast<std::size_t>(node), static_cast<std::size_t>(other));
      if (cost >= key_[other]) continue;
      key_[other] = cost;
      from_[other] = node;
    }
  }

  /// Node 0's two edges: the cheapest, or its partner's and the cheapest.
  double outside_cost() {
    double first = std::numeric_limits<double>::infinity(), second = first;
    int first_node = -1, second_node = -1;
    for (std::size_t i = 1; i < count_; ++i) {
      if (static_cast<int>(i) == partner_[0]) continue;
      const double cost = priced(0, i);
      if (cost < first) {
        second = first;
        second_node = first_node;
        first = cost;
        first_node = static_cast<int>(i);
      } else if (cost < second) {
        second = cost;
        second_node = static_cast<int>(i);
      }
    }
    if (partner_[0] > 0) {
      second = price_[0] + price_[partner_[0]];
      second_node = partner_[0];
    }
    if (first_node < 0 || second_node < 0) return 0;
    degree_[0] = 2;
    ++degree_[first_node];
    ++degree_[second_node];
    return first + second;
  }

  std::vector<int> partner_;
  Cost cost_;
  std::size_t count_;
  std::vector<double> price_;
  std::vector<int> degree_;
  std::vector<double> key_;
  std::vector<int> from_, open_;
};

}  // namespace seamtakt
