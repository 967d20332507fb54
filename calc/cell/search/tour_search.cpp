#include "cell/search/tour_search.hpp"

#include <algorithm>
#include <numeric>

namespace seamtakt {

namespace {

constexpr double least_gain = 1e-9;
constexpr int near_points = 10;
constexpr int chain_depth = 10;
constexpr int longest_moved_stretch = 3;
constexpr int longest_kick = 50;

}  // namespace

TourSearch::TourSearch(std::vector<double> cost, std::vector<int> partner, std::uint64_t seed)
    : count_(partner.size()),
      points_(static_cast<int>(partner.size())),
      cost_(std::move(cost)),
      partner_(std::move(partner)),
      place_(count_),
      queued_(count_, 0),
      draws_(seed) {}

void TourSearch::find_neighbours() {
  near_count_ = std::min(near_points, points_ - 1);
  near_.resize(count_ * static_cast<std::size_t>(near_count_));
  near_cost_.resize(near_.size());
  std::vector<int> others(count_ - 1);
  for (int i = 0; i < points_; ++i) {
    for (int k = 0; k < points_ - 1; ++k) others[k] = k < i ? k : k + 1;
    const auto nearer = [&](int a, int b) {
      const double to_a = cost(i, a), to_b = cost(i, b);
      return to_a != to_b ? to_a < to_b : a < b;
    };
    std::nth_element(others.begin(), others.begin() + near_count_ - 1, others.end(), nearer);
    std::sort(others.begin(), others.begin() + near_count_, nearer);
    const auto row = static_cast<std::size_t>(i) * static_cast<std::size_t>(near_count_);
    for (int k = 0; k < near_count_; ++k) {
      near_[row + k] = others[k];
      near_cost_[row + k] = cost(i, others[k]);
    }
  }
}

/// From point 0, always over a fixed edge first, else to the nearest point left.
void TourSearch::nearest_neighbour_tour() {
  std::vector<char> used(count_, 0);
  tour_.clear();
  for (int at = 0; at >= 0;) {
    tour_.push_back(at);
    used[at] = 1;
    int nearest = partner_[at] >= 0 && !used[partner_[at]] ? partner_[at] : -1;
    for (int i = 0; nearest < 0 && i < near_count_; ++i)
      if (const int other = near(at, i); !used[other]) nearest = other;
    if (nearest < 0)
      for (int other = 0; other < points_; ++other)
        if (!used[other] && (nearest < 0 || cost(at, other) < cost(at, nearest))) nearest = other;
    at = nearest;
  }
  length_ = 0;
  for (int i = 0; i < points_; ++i) {
    place_[tour_[i]] = i;
    if (!fixed(tour_[i], tour_[(i + 1) % points_])) length_ += cost(tour_[i], tour_[(i + 1) % points_]);
  }
}

/// Reverses the places from … to, wrapping at the end of the array.
void TourSearch::turn_round(int from, int to) {
  int steps = (to - from + points_) % points_ + 1;
  for (steps /= 2; steps > 0; --steps) {
    std::swap(tour_[from], tour_[to]);
    place_[tour_[from]] = from;
    place_[tour_[to]] = to;
    if (++from == points_) from = 0;
    if (--to < 0) to = points_ - 1;
  }
}

void TourSearch::turn(int from, int to) {
  turn_round(from, to);
  flips_.push_back({from, to});
}

/// Reverses the way from one point to another; or all the rest, which is the same tour.
void TourSearch::flip(int from, int to) {
  const int first = place_[from], last = place_[to];
  const int length = (last - first + points_) % points_ + 1;
  if (2 * length <= points_)
    turn(first, last);
  else
    turn(moved(last, 1), moved(first, -1));
}

void TourSearch::undo(std::size_t flips) {
  while (flips_.size() > flips) {
    turn_round(flips_.back().from, flips_.back().to);
    flips_.pop_back();
  }
}

void TourSearch::push(int point) {
  if (queued_[point]) return;
  queued_[point] = 1;
  queue_.push_back(point);
}

void TourSearch::push_ends(std::size_t first_flip) {
  for (std::size_t i = first_flip; i < flips_.size(); ++i) {
    push(tour_[flips_[i].from]);
    push(tour_[flips_[i].to]);
    push(tour_[moved(flips_[i].from, -1)]);
    push(tour_[moved(flips_[i].to, 1)]);
  }
}

void TourSearch::repair() {
  while (!queue_.empty()) {
    const int point = queue_.back();
    queue_.pop_back();
    queued_[point] = 0;
    while (improve(point)) {
    }
  }
}

bool TourSearch::improve(int point) {
  return chain(point, true) || chain(point, false) || insert_stretch(point, true) ||
         insert_stretch(point, false);
}

/// Joins `end` to way.to in place of the edge (way.opened, way.to): the way between is reversed.
void TourSearch::exchange(int end, const Way& way, bool forward) {
  if (forward)
    flip(end, way.opened);
  else
    flip(way.opened, end);
}

/// A Lin-Kernighan chain that opens the edge after (or before) the anchor: one exchange, two, or more along
/// the most promising way. Nothing is reversed before a chain closes with a gain, or is longer than two.
bool TourSearch::chain(int anchor, bool forward) {
  const int end = forward ? next(anchor) : before(anchor);
  if (fixed(anchor, end)) return false;
  const double opened = cost(anchor, end);
  Way ways[near_points];
  int count = 0;
  for (int i = 0; i < near_count_; ++i) {
    const double left = opened - near_cost(end, i);
    if (left <= least_gain) break;
    const int to = near(end, i), other = forward ? before(to) : next(to);
    if (to == anchor || other == end || fixed(other, to)) continue;
    const Way way{to, other, left + cost(other, to)};
    const double closing = way.value - cost(anchor, other);
    if (closing > least_gain) {
      const std::size_t begun = flips_.size();
      exchange(end, way, forward);
      length_ -= closing;
      push_ends(begun);
      return true;
    }
    ways[count++] = way;
  }
  Way best_first, best;
  for (int i = 0; i < count; ++i) {
    Way second;
    if (two_exchanges(anchor, end, ways[i], forward, second)) return true;
    if (second.value <= best.value) continue;
    best = second;
    best_first = ways[i];
  }
  if (best.to < 0 || chain_depth <= 2) return false;
  const std::size_t begun = flips_.size();
  exchange(end, best_first, forward);
  exchange(best_first.opened, best, next(anchor) == best_first.opened);
  if (lengthen(anchor, best.opened, best.value)) {
    push_ends(begun);
    return true;
  }
  undo(begun);
  return false;
}

/// The second exchange, seen as if the first had been made. `best`: the most valuable way to continue.
bool TourSearch::two_exchanges(int anchor, int end, const Way& first, bool forward, Way& best) {
  // The stretch that the first exchange reverses, and its neighbours on both sides.
  const int low = forward ? end : first.opened, high = forward ? first.opened : end;
  const int outside_low = forward ? anchor : first.to, outside_high = forward ? first.to : anchor;
  const int from = place_[low], length = (place_[high] - from + points_) % points_ + 1;
  const auto turned = [&](int a) {
    const int off = place_[a] - from;
    return (off < 0 ? off + points_ : off) < length;
  };
  const auto before_to = [&](int a) {
    if (forward) return a == outside_high ? low : a == high ? outside_low : turned(a) ? next(a) : before(a);
    return a == outside_low ? high : a == low ? outside_high : turned(a) ? before(a) : next(a);
  };
  const int open = first.opened;
  for (int i = 0; i < near_count_; ++i) {
    const double left = first.value - near_cost(open, i);
    if (left <= least_gain) return false;
    const int to = near(open, i);
    if (to == anchor || to == first.to) continue;
    const int other = before_to(to);
    if (other == open || fixed(other, to) || (to == end && other == first.to) ||
        (to == first.to && other == end))
      continue;
    const Way way{to, other, left + cost(other, to)};
    const double closing = way.value - cost(anchor, other);
    if (closing > least_gain) {
      const std::size_t begun = flips_.size();
      exchange(end, first, forward);
      exchange(open, way, next(anchor) == open);
      length_ -= closing;
      push_ends(begun);
      return true;
    }
    if (way.value > best.value) best = way;
  }
  return false;
}

/// Extends an open tour, always along the most valuable way, until it closes with a gain.
bool TourSearch::lengthen(int anchor, int end, double gain) {
  for (int depth = 2; depth < chain_depth; ++depth) {
    const bool forward = next(anchor) == end;
    Way best;
    for (int i = 0; i < near_count_; ++i) {
      const double left = gain - near_cost(end, i);
      if (left <= least_gain) break;
      const int to = near(end, i), other = forward ? before(to) : next(to);
      if (to == anchor || other == end || fixed(other, to)) continue;
      const Way way{to, other, left + cost(other, to)};
      if (way.value > best.value) best = way;
    }
    if (best.to < 0) return false;
    exchange(end, best, forward);
    const double closing = best.value - cost(anchor, best.opened);
    if (closing > least_gain) {
      length_ -= closing;
      return true;
    }
    end = best.opened;
    gain = best.value;
  }
  return false;
}

/// Moves the stretch of places from `first` to `last` to a place after a point, reversed or not; over the
/// shorter side.
void TourSearch::put_stretch(int first, int last, int behind, bool reversed) {
  const int from = place_[first], to = place_[last], target = place_[behind];
  const int length = (to - from + points_) % points_ + 1;
  const int ahead = (target - to + points_) % points_, back = points_ - length - ahead;
  if (ahead <= back) {
    turn(from, target);
    if (ahead > 1) turn(from, moved(from, ahead - 1));
    if (!reversed && length > 1) turn(moved(from, ahead), target);
  } else {
    const int begin = moved(target, 1);
    turn(begin, to);
    if (back > 1) turn(moved(begin, length), to);
    if (!reversed && length > 1) turn(begin, moved(begin, length - 1));
  }
}

/// Or's move: the stretch of up to three points from this one on is moved, this end beside a near point.
bool TourSearch::insert_stretch(int point, bool forward) {
  const int outer = forward ? before(point) : next(point);
  if (fixed(outer, point)) return false;
  int last = point;
  for (int length = 1; length <= longest_moved_stretch && length + 3 < points_; ++length) {
    if (length > 1) last = forward ? next(last) : before(last);
    const int beyond = forward ? next(last) : before(last);
    if (beyond == outer) return false;
    if (fixed(last, beyond)) continue;
    const double gain = cost(outer, point) + cost(last, beyond) - cost(outer, beyond);
    if (gain > least_gain && insert_beside(point, last, gain, forward)) return true;
  }
  return false;
}

bool TourSearch::insert_beside(int first, int last, double gain, bool forward) {
  const int begin = forward ? first : last, end = forward ? last : first;  // in the order of the array
  const int from = place_[begin], length = (place_[end] - from + points_) % points_ + 1;
  const auto inside = [&](int a) { return (place_[a] - from + points_) % points_ < length; };
  for (int i = 0; i < near_count_; ++i) {
    const int beside = near(first, i);
    const double left = gain - near_cost(first, i);
    if (left <= least_gain) return false;
    if (inside(beside)) continue;
    for (const bool behind : {true, false}) {
      const int other = behind ? next(beside) : before(beside);
      if (inside(other) || fixed(beside, other)) continue;
      const double won = left + cost(beside, other) - cost(last, other);
      if (won <= least_gain) continue;
      const std::size_t begun = flips_.size();
      put_stretch(begin, end, behind ? beside : other, behind != forward);
      length_ -= won;
      push_ends(begun);
      return true;
    }
  }
  return false;
}

/// The place after which the tour may be cut: not within a fixed edge.
int TourSearch::cut_after(int place) const {
  return fixed(tour_[place], tour_[moved(place, 1)]) ? moved(place, 1) : place;
}

/// Exchanges two neighbouring stretches.
void TourSearch::kick() {
  const int longest = std::min(longest_kick, (points_ - 3) / 2);
  const int first = cut_after(draws_.below(points_));
  const int middle = cut_after(moved(first, 1 + draws_.below(std::max(1, longest - 1))));
  const int last = cut_after(moved(middle, 1 + draws_.below(std::max(1, longest - 1))));
  const int a = tour_[first], b = tour_[moved(first, 1)], c = tour_[middle], d = tour_[moved(middle, 1)],
            e = tour_[last], f = tour_[moved(last, 1)];
  const int left = (middle - first + points_) % points_, right = (last - middle + points_) % points_;
  if (left == 0 || right == 0 || left + right >= points_) return;
  const int begin = moved(first, 1);
  turn(begin, last);
  if (right > 1) turn(begin, moved(begin, right - 1));
  if (left > 1) turn(moved(begin, right), last);
  length_ += cost(a, d) + cost(e, b) + cost(c, f) - cost(a, b) - cost(c, d) - cost(e, f);
  for (const int point : {a, b, c, d, e, f}) push(point);
}

void TourSearch::begin() {
  find_neighbours();
  nearest_neighbour_tour();
  for (int i = points_ - 1; i >= 0; --i) push(tour_[i]);
  flips_.clear();
  repair();
}

bool TourSearch::step() {
  const double before_kick = length_;
  flips_.clear();
  kick();
  repair();
  if (length_ > before_kick + least_gain) {
    undo(0);
    length_ = before_kick;
  }
  return length_ < before_kick - least_gain;
}

}  // namespace seamtakt
