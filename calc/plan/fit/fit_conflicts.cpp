#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <iterator>
#include <limits>
#include <unordered_map>
#include <unordered_set>

#include "plan/fit/fit_search.hpp"

namespace seamtakt {

namespace {

/// In which order limits are tried to be left out of a conflict: what stays is what a person can do most
/// about.
int rank(Judged judged) {
  switch (judged) {
    case Judged::current:
      return 0;
    case Judged::voltage:
      return 1;
    case Judged::single_arc:
      return 2;
    case Judged::cooling_fastest:
    case Judged::cooling_slowest:
      return 3;
    case Judged::hardness_highest:
    case Judged::hardness_lowest:
      return 4;
    case Judged::travel_speed:
      return 5;
    case Judged::wire_feed:
      return 6;
    case Judged::preheat:
      return 7;
    case Judged::heat_input:
      return 8;
    case Judged::leg:
    case Judged::throat:
    case Judged::area:
      return 9;
    case Judged::always:
      break;
  }
  return 10;
}

constexpr double near_steps = 50, far_steps = 10;  ///< a unit, inside what was searched and beyond
/// How many settings are looked at in all before a closer look, and values of an axis: steps are left out
/// only where more would be looked at.
constexpr double most_points = 6e6, least_values = 100, most_near_values = 150, most_far_values = 400;
constexpr int most_rounds = 20;
constexpr double how_far_beyond = 3;

/// Wire feed or travel speed: what was searched and, beyond a limit of it, as far as three times.
class Axis {
 public:
  /// `slices`: how often the axis is looked along.
  /// `is_held`: nothing beyond is looked at.
  Axis(const WindowRange& searched, Judged judged, bool is_held, const WindowModel& model, std::size_t slices)
      : searched_(searched), looked_at_(searched) {
    for (const WindowBound& bound : model.bounds) {
      if (bound.judged != judged || is_held) continue;
      if (bound.is_upper)
        looked_at_.upper = searched.upper * how_far_beyond;
      else
        looked_at_.lower = searched.lower / how_far_beyond;
    }
    const double values =
        std::clamp(std::sqrt(most_points / static_cast<double>(slices)), least_values, most_far_values);
    near_stride_ = stride(searched_, near_steps, std::min(values, most_near_values));
    far_stride_ = stride(looked_at_, far_steps, values);
  }

  std::vector<double> near() const { return thinned(lattice(searched_, near_steps), near_stride_); }
  std::vector<double> far() const { return thinned(lattice(looked_at_, far_steps), far_stride_); }

  /// All steps between a value and its neighbours in near() or far().
  std::vector<double> around(double value) const {
    const double rounding = 1e-9;
    const bool is_near = value >= searched_.lower - rounding && value <= searched_.upper + rounding;
    const double steps = is_near ? near_steps : far_steps;
    const double half = static_cast<double>(is_near ? near_stride_ : far_stride_) / steps;
    return lattice({std::max(value - half, looked_at_.lower), std::min(value + half, looked_at_.upper)},
                   steps);
  }

 private:
  static std::size_t stride(const WindowRange& range, double steps, double values) {
    return 1 + static_cast<std::size_t>((range.upper - range.lower) * steps / values);
  }

  static std::vector<double> thinned(const std::vector<double>& all, std::size_t stride) {
    std::vector<double> some;
    for (std::size_t i = 0; i < all.size(); i += stride) some.push_back(all[i]);
    if (!all.empty() && some.back() != all.back()) some.push_back(all.back());
    return some;
  }

  WindowRange searched_, looked_at_;
  std::size_t near_stride_ = 1, far_stride_ = 1;
};

/// Where a limit is broken least; NaN: nowhere yet.
struct Nearest {
  double value = std::numeric_limits<double>::quiet_NaN();
  double wire_feed_speed_m_min = 0, travel_speed_mm_s = 0;
};

/// Settings that break `mask`, and of these where one limit is broken least.
struct Way {
  std::uint32_t mask = 0;
  Nearest at;

  bool is_known() const { return !std::isnan(at.value); }

  /// Fewer limits broken; of as many, a smaller step beyond the limit.
  bool is_better_than(const Way& other, bool is_upper) const {
    if (!is_known() || !other.is_known()) return is_known();
    const int count = std::popcount(mask), other_count = std::popcount(other.mask);
    if (count != other_count) return count < other_count;
    return is_upper ? at.value < other.at.value : at.value > other.at.value;
  }
};

/// The judged value if known, else NaN.
double value_of(const WindowModel& model, const WindowBound& bound, const FitPoint& point, double leg_mm,
                double area_mm2) {
  switch (bound.judged) {
    case Judged::wire_feed:
      return point.wire_feed_speed_m_min;
    case Judged::travel_speed:
      return point.travel_speed_mm_s;
    case Judged::current:
      return point.current_A;
    case Judged::voltage:
      return point.arc_voltage_V;
    case Judged::heat_input:
      return point.heat_input_kJ_mm;
    case Judged::cooling_fastest:
      return cooling_time(point.heat_input_kJ_mm, model.cooling.fastest).time_s;
    case Judged::cooling_slowest:
      return cooling_time(point.heat_input_kJ_mm, model.cooling.slowest).time_s;
    case Judged::leg:
      return leg_mm - bound.less;
    case Judged::throat:
      return leg_mm * model.throat_per_leg - bound.less;
    case Judged::area:
      return model.other_area_mm2 + point.passes * area_mm2;
    case Judged::single_arc:
      return model.longest_run_mm / point.travel_speed_mm_s;
    default:
      return std::numeric_limits<double>::quiet_NaN();
  }
}

/// One number of passes at one distance from the voltage line, with the settings that were looked at there.
class Slice {
 public:
  Slice(WindowModel model, const Axis& feed, const Axis& speed)
      : model_(std::move(model)), feed_(feed), speed_(speed) {
    look(feed_.near(), speed_.near());
    look(feed_.far(), speed_.far());
  }

  void add_masks(std::unordered_set<std::uint32_t>& masks) const {
    for (const auto& [mask, nearest] : seen_) masks.insert(mask);
  }

  /// The best one by which limit k alone of `set` gives way.
  Way way(std::size_t k, std::uint32_t set) const {
    Way best;
    for (const auto& [mask, nearest] : seen_) {
      if ((mask & set) != std::uint32_t{1} << k) continue;
      const Way way{mask, nearest[k]};
      if (way.is_better_than(best, model_.bounds[k].is_upper)) best = way;
    }
    return best;
  }

  /// Looks at every step near the best way, and near that which is better, until none is.
  void look_closer(std::size_t k, std::uint32_t set) {
    Way best = way(k, set);
    for (int round = 0; round < most_rounds && best.is_known(); ++round) {
      look(feed_.around(best.at.wire_feed_speed_m_min), speed_.around(best.at.travel_speed_mm_s));
      const Way next = way(k, set);
      if (!next.is_better_than(best, model_.bounds[k].is_upper)) return;
      best = next;
    }
  }

 private:
  using OfEachLimit = std::array<Nearest, 32>;  ///< as many as a mask has bits

  void look(const std::vector<double>& feeds, const std::vector<double>& speeds) {
    std::uint32_t last = 0;
    OfEachLimit* nearest = nullptr;
    scan(model_, feeds, speeds,
         [&](const FitPoint& point, std::uint32_t mask, double leg_mm, double area_mm2) {
           if (!nearest || mask != last) {
             nearest = &seen_[mask];
             last = mask;
           }
           for (std::uint32_t rest = mask; rest != 0; rest &= rest - 1) {
             const auto k = static_cast<std::size_t>(std::countr_zero(rest));
             const WindowBound& bound = model_.bounds[k];
             const double value = value_of(model_, bound, point, leg_mm, area_mm2);
             Nearest& least = (*nearest)[k];
             const bool is_less = bound.is_upper ? value < least.value : value > least.value;
             if (is_less || (std::isnan(least.value) && !std::isnan(value)))
               least = {value, point.wire_feed_speed_m_min, point.travel_speed_mm_s};
           }
         });
  }

  WindowModel model_;
  const Axis& feed_;
  const Axis& speed_;
  std::unordered_map<std::uint32_t, OfEachLimit> seen_;  ///< by the limits that are broken
};

/// Everything that is looked at for a conflict: each number of passes, each distance from the voltage line.
class ConflictSearch {
 public:
  explicit ConflictSearch(const FitSearch& search)
      : model_(search.model),
        feed_(search.wire_feed_speed_m_min, Judged::wire_feed, search.options.is_held(FitHold::wire_feed),
              search.model, slices_of(search)),
        speed_(search.travel_speed_mm_s, Judged::travel_speed, search.options.is_held(FitHold::travel_speed),
               search.model, slices_of(search)) {
    slices_.reserve(slices_of(search));
    for (const double volts : volts_off_line_of(search)) {
      WindowModel model = with_voltage_line(search, volts);
      for (int passes = search.least_passes; passes <= search.most_passes; ++passes) {
        model.passes = passes;
        slices_.emplace_back(model, feed_, speed_);
      }
    }
  }

  ConflictSearch(const ConflictSearch&) = delete;
  ConflictSearch& operator=(const ConflictSearch&) = delete;

  /// Leaves out one limit after another for as long as the rest still conflict: none of what stays can go.
  std::uint32_t least_conflict() const {
    std::unordered_set<std::uint32_t> masks;
    for (const Slice& slice : slices_) slice.add_masks(masks);
    std::vector<std::size_t> order(model_.bounds.size());
    for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return rank(model_.bounds[a].judged) < rank(model_.bounds[b].judged);
    });
    std::uint32_t set = 0;
    for (const std::size_t k : order) set |= std::uint32_t{1} << k;
    for (const std::size_t k : order)
      if (const std::uint32_t rest = set & ~(std::uint32_t{1} << k); is_conflict(masks, rest)) set = rest;
    return set;
  }

  void look_closer(std::uint32_t set) {
    for (Slice& slice : slices_) each_of(set, [&](std::size_t k) { slice.look_closer(k, set); });
  }

  Way way(std::size_t k, std::uint32_t set) const {
    Way best;
    for (const Slice& slice : slices_)
      if (const Way way = slice.way(k, set); way.is_better_than(best, model_.bounds[k].is_upper)) best = way;
    return best;
  }

  template <class Each>
  static void each_of(std::uint32_t set, const Each& each) {
    for (; set != 0; set &= set - 1) each(static_cast<std::size_t>(std::countr_zero(set)));
  }

 private:
  static std::size_t slices_of(const FitSearch& search) {
    return volts_off_line_of(search).size() *
           static_cast<std::size_t>(search.most_passes - search.least_passes + 1);
  }

  /// Whether every point breaks one of the limits of `set`.
  static bool is_conflict(const std::unordered_set<std::uint32_t>& masks, std::uint32_t set) {
    return std::all_of(masks.begin(), masks.end(), [set](std::uint32_t mask) { return (mask & set) != 0; });
  }

  const WindowModel& model_;
  Axis feed_, speed_;
  std::vector<Slice> slices_;
};

}  // namespace

std::vector<FitLimit> conflicting_limits(const FitSearch& search) {
  ConflictSearch looked(search);
  std::uint32_t set = looked.least_conflict();
  // A closer look may find settings that keep all limits of a set.
  for (int round = 0; round < most_rounds; ++round) {
    looked.look_closer(set);
    const std::uint32_t before = set;
    set = looked.least_conflict();
    if (set == before) break;
  }
  std::vector<FitLimit> conflicts;
  ConflictSearch::each_of(set, [&](std::size_t k) {
    FitLimit limit = fit_limit(search.limits[k]);
    if (const Way way = looked.way(k, set); way.is_known()) {
      // The limit itself has to give way so far that the margin is left inside it.
      limit.needed = way.at.value / margin_factor(search.options, search.model.bounds[k]);
      ConflictSearch::each_of(way.mask & ~(std::uint32_t{1} << k), [&](std::size_t other) {
        const FitLimit broken = fit_limit(search.limits[other]);
        limit.needed_with.push_back({broken.rule, broken.sentence});
      });
    }
    conflicts.push_back(std::move(limit));
  });
  return conflicts;
}

}  // namespace seamtakt
