#include "cell/search/cluster_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace seamtakt {

namespace {

constexpr double unreached = std::numeric_limits<double>::infinity();
constexpr int near_clusters = 12;
constexpr int longest_stretch = 60;

}  // namespace

Precedence::Precedence(const RoutingProblem& problem)
    : words_((static_cast<std::size_t>(problem.cluster_count()) + 63) / 64),
      any_(!problem.before.empty()),
      bits_(words_ * static_cast<std::size_t>(problem.cluster_count()), 0) {
  const int count = problem.cluster_count();
  std::vector<std::vector<int>> after(static_cast<std::size_t>(count));
  std::vector<int> waits(static_cast<std::size_t>(count), 0), order;
  for (const auto& [a, b] : problem.before) {
    after[a].push_back(b);
    ++waits[b];
  }
  for (int i = 0; i < count; ++i)
    if (waits[i] == 0) order.push_back(i);
  for (std::size_t i = 0; i < order.size(); ++i)
    for (const int b : after[order[i]])
      if (--waits[b] == 0) order.push_back(b);
  if (static_cast<int>(order.size()) != count) throw std::invalid_argument("the precedence is circular");
  for (auto at = order.rbegin(); at != order.rend(); ++at) {
    std::uint64_t* bits = &bits_[static_cast<std::size_t>(*at) * words_];
    for (const int b : after[*at]) {
      bits[static_cast<std::size_t>(b) / 64] |= std::uint64_t{1} << (b % 64);
      for (std::size_t word = 0; word < words_; ++word) bits[word] |= row(b)[word];
    }
  }
}

ClusterSearch::ClusterSearch(const RoutingProblem& problem, const Precedence& precedence, std::uint64_t seed)
    : problem_(&problem),
      precedence_(&precedence),
      clusters_(problem.cluster_count()),
      place_(static_cast<std::size_t>(clusters_)),
      set_(precedence.words()),
      draws_(seed) {
  for (int i = 0; i < clusters_; ++i) widest_ = std::max(widest_, problem.size_of(i));
  single_ = widest_ == 1;
  reversible_ = is_reversible(problem);
  const auto cells = static_cast<std::size_t>(clusters_ + 1) * static_cast<std::size_t>(widest_);
  front_.resize(cells);
  back_.resize(cells);
  layer_.resize(static_cast<std::size_t>(widest_));
  next_layer_.resize(static_cast<std::size_t>(widest_));
}

/// The cheapest successors and predecessors of each cluster, among those that precedence allows.
void ClusterSearch::find_near() {
  near_count_ = std::min(near_clusters, clusters_ - 1);
  const auto least = [&](int a, int b) {
    double cost = unreached;
    for (int i = problem_->first_node[a]; i < problem_->first_node[a + 1]; ++i)
      for (int k = problem_->first_node[b]; k < problem_->first_node[b + 1]; ++k)
        cost = std::min(cost, problem_->between(i, k));
    return cost;
  };
  std::vector<double> costs(static_cast<std::size_t>(clusters_));
  std::vector<int> others;
  for (const bool backwards : {false, true}) {
    std::vector<int>& near = backwards ? near_before_ : near_;
    near.assign(static_cast<std::size_t>(clusters_) * static_cast<std::size_t>(near_count_), -1);
    for (int i = 0; i < clusters_; ++i) {
      others.clear();
      for (int k = 0; k < clusters_; ++k) {
        if (k == i || precedence_->must(backwards ? i : k, backwards ? k : i)) continue;
        costs[k] = backwards ? least(k, i) : least(i, k);
        others.push_back(k);
      }
      const auto count = std::min<std::ptrdiff_t>(near_count_, static_cast<std::ptrdiff_t>(others.size()));
      std::partial_sort(others.begin(), others.begin() + count, others.end(),
                        [&](int a, int b) { return costs[a] != costs[b] ? costs[a] < costs[b] : a < b; });
      std::copy(others.begin(), others.begin() + count,
                near.begin() + static_cast<std::ptrdiff_t>(i) * near_count_);
    }
  }
}

void ClusterSearch::begin() {
  find_near();
  std::vector<int> waits(static_cast<std::size_t>(clusters_), 0);
  for (const auto& [a, b] : problem_->before) ++waits[b];
  std::vector<char> used(static_cast<std::size_t>(clusters_), 0);
  order_.assign(1, 0);
  int node = problem_->first_node[0];
  for (int at = 0;;) {
    used[at] = 1;
    for (const auto& [a, b] : problem_->before)
      if (a == at) --waits[b];
    int nearest = -1;
    double least = unreached;
    for (int other = 1; other < clusters_; ++other) {
      if (used[other] || waits[other] > 0) continue;
      for (int k = problem_->first_node[other]; k < problem_->first_node[other + 1]; ++k)
        if (nearest < 0 || problem_->between(node, k) < least) {
          least = problem_->between(node, k);
          nearest = k;
          at = other;
        }
    }
    if (nearest < 0) break;
    node = nearest;
    order_.push_back(at);
  }
  best_order_ = order_;
  best_length_ = unreached;
  restart_from_best();
}

/// The shortest trip through the clusters of order_ from one of home's nodes.
double ClusterSearch::path_length(int start_node, std::vector<int>* nodes) const {
  std::vector<double> at{0};
  std::vector<int> from_of;  // all layers' best predecessors
  int previous_first = start_node, previous_count = 1;
  for (int place = 1; place < clusters_; ++place) {
    const int first = problem_->first_node[order_[place]], count = problem_->size_of(order_[place]);
    std::vector<double> reached(static_cast<std::size_t>(count), unreached);
    const std::size_t base = from_of.size();
    from_of.resize(base + static_cast<std::size_t>(count), 0);
    for (int i = 0; i < previous_count; ++i)
      for (int k = 0; k < count; ++k) {
        const double cost = at[i] + problem_->between(previous_first + i, first + k);
        if (cost >= reached[k]) continue;
        reached[k] = cost;
        from_of[base + static_cast<std::size_t>(k)] = i;
      }
    at = std::move(reached);
    previous_first = first;
    previous_count = count;
  }
  int last = 0;
  for (int i = 0; i < previous_count; ++i) {
    at[i] += problem_->between(previous_first + i, start_node);
    if (at[i] < at[last]) last = i;
  }
  if (!nodes) return at[last];
  nodes->assign(static_cast<std::size_t>(clusters_), start_node);
  std::size_t base = from_of.size();
  int node = last;
  for (int place = clusters_ - 1; place > 0; --place) {
    base -= static_cast<std::size_t>(problem_->size_of(order_[place]));
    (*nodes)[place] = problem_->first_node[order_[place]] + node;
    node = from_of[base + static_cast<std::size_t>(node)];
  }
  return at[last];
}

void ClusterSearch::restart_from_best() {
  order_ = best_order_;
  for (int i = 0; i < clusters_; ++i) place_[order_[i]] = i;
  length_ = unreached;
  for (int node = problem_->first_node[0]; node < problem_->first_node[1]; ++node) {
    const double length = path_length(node, nullptr);
    if (length >= length_) continue;
    length_ = length;
    start_node_ = node;
  }
  best_length_ = std::min(best_length_, length_);
  front_valid_ = 0;
  back_valid_ = clusters_;
  std::fill(front_.begin(), front_.begin() + widest_, unreached);
  front_[static_cast<std::size_t>(start_node_ - problem_->first_node[0])] = 0;
}

Route ClusterSearch::best() const {
  ClusterSearch copy(*this);
  copy.order_ = best_order_;
  Route best, tried;
  best.length = unreached;
  for (int node = problem_->first_node[0]; node < problem_->first_node[1]; ++node) {
    tried.length = copy.path_length(node, &tried.nodes);
    if (tried.length < best.length) best = tried;
  }
  return best;
}

/// Whether places first … middle - 1 and middle … last may be exchanged.
bool ClusterSearch::may_swap(int first, int middle, int last) {
  std::fill(set_.begin(), set_.end(), 0);
  for (int i = middle; i <= last; ++i)
    set_[static_cast<std::size_t>(order_[i]) / 64] |= std::uint64_t{1} << (order_[i] % 64);
  for (int i = first; i < middle; ++i) {
    const std::uint64_t* after = precedence_->row(order_[i]);
    for (std::size_t word = 0; word < set_.size(); ++word)
      if (after[word] & set_[word]) return false;
  }
  return true;
}

bool ClusterSearch::keeps_precedence(const Change& change) {
  if (!precedence_->any()) return true;
  if (!change.reversed) return may_swap(change.low, change.middle, change.high);
  for (int i = change.low; i < change.high; ++i)
    if (!may_swap(i, i + 1, change.high)) return false;
  return true;
}

/// Exchanges two neighbouring stretches so that `cluster` follows `after`. The stretch that begins with
/// `cluster` moves there, or (`backwards`) the one that ends with `after`; its length is drawn.
ClusterSearch::Change ClusterSearch::follow(int cluster, int after, bool backwards) {
  const int target = place_[after], from = place_[cluster];
  if (cluster == 0 || from == target + 1) return {};
  const int stretch = draws_.chance(0.5) ? 1 : 1 + draws_.below(longest_stretch);
  if (from > target)
    return backwards ? Change{std::max(1, target - stretch + 1), target + 1, from - 1}
                     : Change{target + 1, from, std::min(clusters_ - 1, from + stretch - 1)};
  return backwards ? Change{from, std::max(from + 1, target - stretch + 1), target}
                   : Change{from, std::min(target, from + stretch), target};
}

ClusterSearch::Change ClusterSearch::reverse() {
  const int first = 1 + draws_.below(clusters_ - 1);
  return {first, first + 1, std::min(clusters_ - 1, first + 1 + draws_.below(longest_stretch)), true};
}

/// The new order of the changed places.
void ClusterSearch::write_middle(const Change& change) {
  if (change.reversed) {
    middle_.assign(order_.rend() - change.high - 1, order_.rend() - change.low);
    return;
  }
  middle_.assign(order_.begin() + change.middle, order_.begin() + change.high + 1);
  middle_.insert(middle_.end(), order_.begin() + change.low, order_.begin() + change.middle);
}

ClusterSearch::Change ClusterSearch::propose() {
  if (reversible_ && draws_.chance(0.4)) return reverse();
  const int cluster = draws_.below(clusters_);
  const bool backwards = draws_.chance(0.5);
  const std::vector<int>& near = backwards ? near_before_ : near_;
  const int other = near[static_cast<std::size_t>(cluster) * static_cast<std::size_t>(near_count_) +
                         static_cast<std::size_t>(draws_.below(near_count_))];
  if (other < 0) return {};
  return backwards ? follow(cluster, other, draws_.chance(0.5)) : follow(other, cluster, draws_.chance(0.5));
}

/// With one node a cluster, three arcs are exchanged; or all of a stretch reversed.
double ClusterSearch::single_length(const Change& change) const {
  const auto node = [&](int place) { return problem_->first_node[order_[place]]; };
  const int before = node(change.low - 1), first = node(change.low), last = node(change.high);
  const int behind = change.high + 1 < clusters_ ? node(change.high + 1) : node(0);
  double difference = -problem_->between(before, first) - problem_->between(last, behind);
  if (!change.reversed) {
    const int end = node(change.middle - 1), begin = node(change.middle);
    return length_ + difference + problem_->between(before, begin) + problem_->between(last, first) +
           problem_->between(end, behind) - problem_->between(end, begin);
  }
  for (int i = change.low; i < change.high; ++i)
    difference += problem_->between(node(i + 1), node(i)) - problem_->between(node(i), node(i + 1));
  return length_ + difference + problem_->between(before, last) + problem_->between(first, behind);
}

void ClusterSearch::extend_front(int to) {
  for (; front_valid_ < to; ++front_valid_) {
    const int from_first = problem_->first_node[order_[front_valid_]],
              from_count = problem_->size_of(order_[front_valid_]);
    const int first = problem_->first_node[order_[front_valid_ + 1]],
              count = problem_->size_of(order_[front_valid_ + 1]);
    const double* at = &front_[static_cast<std::size_t>(front_valid_) * widest_];
    double* next = &front_[static_cast<std::size_t>(front_valid_ + 1) * widest_];
    std::fill(next, next + count, unreached);
    for (int i = 0; i < from_count; ++i) {
      const double* row =
          &problem_->cost[static_cast<std::size_t>(from_first + i) * problem_->node_count() + first];
      for (int k = 0; k < count; ++k) next[k] = std::min(next[k], at[i] + row[k]);
    }
  }
}

void ClusterSearch::extend_back(int to) {
  for (; back_valid_ > to; --back_valid_) {
    const int place = back_valid_ - 1;
    const int first = problem_->first_node[order_[place]], count = problem_->size_of(order_[place]);
    double* at = &back_[static_cast<std::size_t>(place) * widest_];
    for (int i = 0; i < count; ++i) {
      if (place == clusters_ - 1) {
        at[i] = problem_->between(first + i, start_node_);
        continue;
      }
      const int next_first = problem_->first_node[order_[place + 1]],
                next_count = problem_->size_of(order_[place + 1]);
      const double* row =
          &problem_->cost[static_cast<std::size_t>(first + i) * problem_->node_count() + next_first];
      const double* next = &back_[static_cast<std::size_t>(place + 1) * widest_];
      at[i] = unreached;
      for (int k = 0; k < next_count; ++k) at[i] = std::min(at[i], row[k] + next[k]);
    }
  }
}

/// The length with middle_ at the changed places, with the best nodes.
double ClusterSearch::changed_length(const Change& change) {
  write_middle(change);
  extend_front(change.low - 1);
  extend_back(change.high + 1);
  int from_first = problem_->first_node[order_[change.low - 1]],
      from_count = problem_->size_of(order_[change.low - 1]);
  std::copy_n(&front_[static_cast<std::size_t>(change.low - 1) * widest_], from_count, layer_.begin());
  for (const int cluster : middle_) {
    const int first = problem_->first_node[cluster], count = problem_->size_of(cluster);
    std::fill_n(next_layer_.begin(), count, unreached);
    for (int i = 0; i < from_count; ++i) {
      const double* row =
          &problem_->cost[static_cast<std::size_t>(from_first + i) * problem_->node_count() + first];
      for (int k = 0; k < count; ++k) next_layer_[k] = std::min(next_layer_[k], layer_[i] + row[k]);
    }
    std::swap(layer_, next_layer_);
    from_first = first;
    from_count = count;
  }
  double length = unreached;
  for (int i = 0; i < from_count; ++i) {
    if (change.high + 1 == clusters_) {
      length = std::min(length, layer_[i] + problem_->between(from_first + i, start_node_));
      continue;
    }
    const int next = order_[change.high + 1], first = problem_->first_node[next];
    const double* back = &back_[static_cast<std::size_t>(change.high + 1) * widest_];
    for (int k = 0; k < problem_->size_of(next); ++k)
      length = std::min(length, layer_[i] + problem_->between(from_first + i, first + k) + back[k]);
  }
  return length;
}

void ClusterSearch::take(const Change& change, double length) {
  if (single_) write_middle(change);
  for (int i = change.low; i <= change.high; ++i) {
    order_[i] = middle_[i - change.low];
    place_[order_[i]] = i;
  }
  length_ = length;
  front_valid_ = std::min(front_valid_, change.low - 1);
  back_valid_ = std::max(back_valid_, change.high + 1);
}

bool ClusterSearch::step(double temperature) {
  const Change change = propose();
  if (!change.possible()) return false;
  if (!single_ && !keeps_precedence(change)) return false;
  const double length = single_ ? single_length(change) : changed_length(change);
  if (length > length_ - temperature * std::log(1 - draws_.unit())) return false;
  if (single_ && !keeps_precedence(change)) return false;
  take(change, length);
  if (!(length < best_length_ - 1e-9)) return false;
  best_length_ = length;
  best_order_ = order_;
  return true;
}

}  // namespace seamtakt
