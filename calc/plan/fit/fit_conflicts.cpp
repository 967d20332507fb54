#include <algorithm>
#include <cmath>
#include <limits>
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

/// Whether every point breaks one of the limits of `set`.
bool is_conflict(const std::unordered_set<std::uint32_t>& masks, std::uint32_t set) {
  return std::all_of(masks.begin(), masks.end(), [set](std::uint32_t mask) { return (mask & set) != 0; });
}

/// Leaves out one limit after another for as long as the rest still conflict: none of what stays can go.
std::uint32_t least_conflict(const WindowModel& model, const std::unordered_set<std::uint32_t>& masks) {
  std::vector<std::size_t> order(model.bounds.size());
  for (std::size_t k = 0; k < order.size(); ++k) order[k] = k;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return rank(model.bounds[a].judged) < rank(model.bounds[b].judged);
  });
  std::uint32_t set = 0;
  for (std::size_t k : order) set |= std::uint32_t{1} << k;
  for (std::size_t k : order)
    if (const std::uint32_t rest = set & ~(std::uint32_t{1} << k); is_conflict(masks, rest)) set = rest;
  return set;
}

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
    case Judged::heat_input:
      return point.heat_input_kJ_mm;
    case Judged::leg:
      return leg_mm - bound.less;
    case Judged::throat:
      return leg_mm * model.throat_per_leg - bound.less;
    case Judged::area:
      return model.other_area_mm2 + point.passes * area_mm2;
    default:
      return std::numeric_limits<double>::quiet_NaN();
  }
}

/// Everything that is looked at for a conflict: the model at each number of passes, over wide axes.
template <class Visit>
void scan_widely(const FitSearch& search, const Visit& visit) {
  const auto wide = [](const WindowRange& range) { return WindowRange{range.lower / 3, range.upper * 3}; };
  const auto steps = [](const std::vector<double>& all) {
    std::vector<double> some;
    const std::size_t stride = std::max<std::size_t>(1, all.size() / 400);
    for (std::size_t i = 0; i < all.size(); i += stride) some.push_back(all[i]);
    return some;
  };
  const std::vector<double> feeds = steps(lattice(wide(search.wire_feed_speed_m_min), 10));
  const std::vector<double> speeds = steps(lattice(wide(search.travel_speed_mm_s), 10));
  // Inside the limits as finely as was searched.
  const std::vector<double> near_feeds = lattice(search.wire_feed_speed_m_min, 50);
  const std::vector<double> near_speeds = lattice(search.travel_speed_mm_s, 50);
  WindowModel model = with_voltage_line(search, 0);
  for (int passes = search.least_passes; passes <= search.most_passes; ++passes) {
    model.passes = passes;
    const auto with_model = [&](const FitPoint& point, std::uint32_t mask, double leg_mm, double area_mm2) {
      visit(model, point, mask, leg_mm, area_mm2);
    };
    scan(model, feeds, speeds, with_model);
    scan(model, near_feeds, near_speeds, with_model);
  }
}

}  // namespace

std::vector<FitLimit> conflicting_limits(const FitSearch& search) {
  std::unordered_set<std::uint32_t> masks;
  scan_widely(search, [&](const WindowModel&, const FitPoint&, std::uint32_t mask, double, double) {
    masks.insert(mask);
  });
  const std::uint32_t set = least_conflict(search.model, masks);
  std::vector<std::optional<double>> needed(search.limits.size());
  scan_widely(search, [&](const WindowModel& model, const FitPoint& point, std::uint32_t mask, double leg_mm,
                          double area_mm2) {
    if (mask == 0 || (mask & (mask - 1)) != 0 || (mask & set) == 0) return;
    const auto k = static_cast<std::size_t>(__builtin_ctz(mask));
    const double value = value_of(model, model.bounds[k], point, leg_mm, area_mm2);
    if (std::isnan(value)) return;
    const bool is_upper = model.bounds[k].is_upper;
    if (!needed[k] || (is_upper ? value < *needed[k] : value > *needed[k])) needed[k] = value;
  });
  std::vector<FitLimit> conflicts;
  for (std::size_t k = 0; k < search.limits.size(); ++k) {
    if (!(set >> k & 1)) continue;
    conflicts.push_back(fit_limit(search.limits[k]));
    conflicts.back().needed = needed[k];
  }
  return conflicts;
}

}  // namespace seamtakt
