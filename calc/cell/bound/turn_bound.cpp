#include "cell/bound/turn_bound.hpp"

#include <algorithm>
#include <limits>

namespace seamtakt {

namespace {

constexpr std::size_t exact_orientations = 12;
constexpr double no_route_s = std::numeric_limits<double>::infinity();

/// The orientations that seams ask for and the load orientation, which is the first where there is one, with
/// the shortest times between them, over others where that is shorter.
class TurnRoutes {
 public:
  explicit TurnRoutes(const CellModel& model) : has_load_(model.load_orientation >= 0) {
    std::vector<char> used(static_cast<std::size_t>(model.orientation_count), 0);
    if (has_load_) ids_.push_back(model.load_orientation);
    for (const CellSeam& seam : model.seams) {
      if (seam.orientation < 0 || used[static_cast<std::size_t>(seam.orientation)]) continue;
      used[static_cast<std::size_t>(seam.orientation)] = 1;
      if (seam.orientation != model.load_orientation) ids_.push_back(seam.orientation);
    }
    for (const int from : ids_)
      for (const int to : ids_) time_s_.push_back(from == to ? 0 : model.turn_time_s(from, to));
    least_turn_s_ = no_route_s;
    for (std::size_t i = 0; i < count(); ++i)
      for (std::size_t k = 0; k < count(); ++k)
        if (i != k) least_turn_s_ = std::min(least_turn_s_, at(i, k));
    for (std::size_t via = 0; via < count(); ++via)
      for (std::size_t i = 0; i < count(); ++i)
        for (std::size_t k = 0; k < count(); ++k) at(i, k) = std::min(at(i, k), at(i, via) + at(via, k));
  }

  std::size_t count() const { return ids_.size(); }
  bool has_load() const { return has_load_; }
  double least_turn_s() const { return count() < 2 ? 0 : least_turn_s_; }
  /// Turns at least: each orientation but the first, and back to the load orientation.
  double turns() const {
    if (count() < 2) return 0;
    return static_cast<double>(count() - (has_load_ ? 0 : 1));
  }

  double shortest_s() {
    if (count() < 2) return 0;
    return count() <= exact_orientations ? shortest_route_s() : shortest_turns_s();
  }

 private:
  double& at(std::size_t from, std::size_t to) { return time_s_[from * count() + to]; }

  /// [set of orientations seen, the last of them]: the least time so far.
  double shortest_route_s() {
    const std::size_t sets = std::size_t{1} << count();
    std::vector<double> least_s(sets * count(), no_route_s);
    for (std::size_t i = 0; i < (has_load_ ? 1 : count()); ++i)
      least_s[(std::size_t{1} << i) * count() + i] = 0;
    for (std::size_t set = 1; set < sets; ++set)
      for (std::size_t last = 0; last < count(); ++last) {
        const double here_s = least_s[set * count() + last];
        if (here_s == no_route_s) continue;
        for (std::size_t next = 0; next < count(); ++next) {
          if (set >> next & 1) continue;
          double& there_s = least_s[(set | std::size_t{1} << next) * count() + next];
          there_s = std::min(there_s, here_s + at(last, next));
        }
      }
    double shortest_s = no_route_s;
    for (std::size_t last = 0; last < count(); ++last)
      shortest_s = std::min(shortest_s, least_s[(sets - 1) * count() + last] + (has_load_ ? at(last, 0) : 0));
    return shortest_s;
  }

  /// Each orientation's shortest turn into it; without a load orientation the longest of these may be saved.
  double shortest_turns_s() {
    double sum_s = 0, longest_s = 0;
    for (std::size_t to = 0; to < count(); ++to) {
      double shortest_s = no_route_s;
      for (std::size_t from = 0; from < count(); ++from)
        if (from != to) shortest_s = std::min(shortest_s, at(from, to));
      sum_s += shortest_s;
      longest_s = std::max(longest_s, shortest_s);
    }
    return has_load_ ? sum_s : sum_s - longest_s;
  }

  bool has_load_;
  double least_turn_s_ = 0;
  std::vector<int> ids_;
  std::vector<double> time_s_;
};

bool turns_are_equal(const CellModel& model) {
  return model.turn_s.empty() && model.load_orientation < 0;
}

}  // namespace

double least_turns_s(const CellModel& model) {
  TurnRoutes routes(model);
  if (turns_are_equal(model)) return routes.turns() * model.orientation_change_s;
  return routes.shortest_s();
}

double least_return_s(const CellModel& model) {
  if (turns_are_equal(model)) return model.orientation_change_s;
  TurnRoutes routes(model);
  const double shortest_s = routes.shortest_s();
  return std::max(shortest_s, (routes.turns() + 1) * routes.least_turn_s()) - shortest_s;
}

}  // namespace seamtakt
