#include <algorithm>
#include <limits>

#include "formula/kernel/window_row.hpp"
#include "formula/metal/preheat.hpp"
#include "plan/window/window_model.hpp"

namespace seamtakt {

namespace {

/// Judges the points of one row; `mask` has 64 bits so that it is as wide as the numbers compared.
class RowJudge {
 public:
  RowJudge(const WindowModel& model, double wire_feed, const FeedFigures& feed,
           const std::vector<double>& speeds, const RowFigures& figures)
      : model_(model),
        wire_feed_(wire_feed),
        feed_(feed),
        speeds_(speeds),
        figures_(figures),
        mask_(speeds.size(), 0),
        times_(speeds.size()) {}

  void judge(std::size_t index) {
    const WindowBound& bound = model_.bounds[index];
    bit_ = std::uint64_t{1} << index;
    switch (bound.judged) {
      case Judged::always:
        return mark_all(true);
      case Judged::wire_feed:
        return mark_all(beyond(wire_feed_, bound));
      case Judged::current:
        return mark_all(beyond(feed_.current_A, bound));
      case Judged::voltage:
        return mark_all(beyond(feed_.arc_voltage_V, bound));
      default:
        return judge_points(bound);
    }
  }

  void store(std::uint32_t* broken) const {
    for (std::size_t i = 0; i < mask_.size(); ++i) broken[i] = static_cast<std::uint32_t>(mask_[i]);
  }

 private:
  static bool beyond(double value, const WindowBound& bound) {
    return bound.is_upper ? value > bound.bound : value < bound.bound;
  }

  void mark_all(bool broken) {
    if (broken)
      for (std::uint64_t& mask : mask_) mask |= bit_;
  }

  /// `broken(i)` of each point; a plain loop, so that it is vectorised.
  template <class Broken>
  void mark(const Broken& broken) {
    std::uint64_t* mask = mask_.data();
    const std::uint64_t bit = bit_;
    for (std::size_t i = 0, n = mask_.size(); i < n; ++i) mask[i] |= broken(i) ? bit : 0;
  }

  void mark_beyond(const double* value, const WindowBound& bound) {
    const double limit = bound.bound, less = bound.less;
    if (bound.is_upper)
      mark([=](std::size_t i) { return value[i] - less > limit; });
    else
      mark([=](std::size_t i) { return value[i] - less < limit; });
  }

  const double* cooling(const CoolingCase& at) {
    cooling_row(
        {mask_.size(), figures_.heat_input_kJ_mm, at.thickness_mm, at.start_C, at.f2, at.f3, times_.data()});
    return times_.data();
  }

  const double* cooling_of_plate(std::size_t plate) {
    CoolingCase at = model_.cooling.nominal;
    at.thickness_mm = model_.plate_mm[plate];
    return cooling(at);
  }

  void judge_points(const WindowBound& bound) {
    switch (bound.judged) {
      case Judged::travel_speed:
        return mark_beyond(speeds_.data(), bound);
      case Judged::heat_input:
        return mark_beyond(figures_.heat_input_kJ_mm, bound);
      case Judged::cooling_fastest:
        return mark_beyond(cooling(model_.cooling.fastest), bound);
      case Judged::cooling_slowest:
        return mark_beyond(cooling(model_.cooling.slowest), bound);
      case Judged::preheat:
        return judge_preheat(bound);
      case Judged::hardness_highest:
      case Judged::hardness_lowest:
        return judge_hardness(bound);
      case Judged::leg:
        return mark_beyond(figures_.leg_mm, bound);
      case Judged::throat:
        return judge_throat(bound);
      case Judged::area:
        return judge_area(bound);
      default:
        return judge_single_arc();
    }
  }

  /// Below its range of heat inputs, where `evaluate` says that it isn't judged, the method's value continues
  /// to rise: a value beyond the bound there doesn't count as kept.
  void judge_preheat(const WindowBound& bound) {
    const double *needed = figures_.preheat_needed_C, limit = bound.bound;
    mark([=](std::size_t i) { return needed[i] > limit; });
  }

  void judge_hardness(const WindowBound& bound) {
    const bool is_upper = bound.judged == Judged::hardness_highest;
    std::vector<double> first(mask_.size());
    const double* of_first = cooling_of_plate(0);
    std::copy_n(of_first, first.size(), first.begin());
    const double *a = first.data(), *b = cooling_of_plate(1);
    const double least_a = bound.plate_time_s[0], least_b = bound.plate_time_s[1];
    if (is_upper)
      mark([=](std::size_t i) { return (a[i] < least_a) | (b[i] < least_b); });
    else
      mark([=](std::size_t i) { return (a[i] > least_a) & (b[i] > least_b); });
  }

  void judge_throat(const WindowBound& bound) {
    const double *leg = figures_.leg_mm, per_leg = model_.throat_per_leg, limit = bound.bound,
                 less = bound.less;
    if (bound.is_upper)
      mark([=](std::size_t i) { return leg[i] * per_leg - less > limit; });
    else
      mark([=](std::size_t i) { return leg[i] * per_leg - less < limit; });
  }

  void judge_area(const WindowBound& bound) {
    const double *area = figures_.deposit_area_mm2, passes = model_.passes, other = model_.other_area_mm2;
    const double limit = bound.bound;
    mark([=](std::size_t i) { return other + passes * area[i] < limit; });
  }

  void judge_single_arc() {
    if (feed_.longest_arc_s == std::numeric_limits<double>::infinity()) return;
    const double *speed = speeds_.data(), run = model_.longest_run_mm, limit = feed_.longest_arc_s;
    mark([=](std::size_t i) { return run / speed[i] > limit; });
  }

  const WindowModel& model_;
  double wire_feed_;
  const FeedFigures& feed_;
  const std::vector<double>& speeds_;
  const RowFigures& figures_;
  std::vector<std::uint64_t> mask_;
  std::vector<double> times_;
  std::uint64_t bit_ = 0;
};

/// As a seam's evaluation states it: never negative, and a lap's no higher than the edge.
void hold_leg(const WindowModel& model, double* leg, std::size_t count) {
  const double most = model.leg_at_most_mm;
  for (std::size_t i = 0; i < count; ++i) leg[i] = std::min(std::max(0.0, leg[i]), most);
}

}  // namespace

void compute_row(const WindowModel& model, double wire_feed_speed_m_min, const FeedFigures& feed,
                 const std::vector<double>& travel_speed_mm_s, const RowFigures& figures,
                 std::uint32_t* broken) {
  WindowRow row;
  row.count = travel_speed_mm_s.size();
  row.travel_speed_mm_s = travel_speed_mm_s.data();
  row.power_W = feed.power_W;
  row.thermal_efficiency = model.thermal_efficiency;
  row.deposition_rate_kg_h = feed.deposition_rate_kg_h;
  row.weld_metal_density_g_cm3 = model.weld_metal_density_g_cm3;
  row.passes = model.passes;
  row.other_area_mm2 = model.other_area_mm2;
  row.area_allowance = model.area_allowance;
  row.gap_mm = model.gap_mm;
  row.dihedral_deg = model.dihedral_deg;
  const CoolingCase& cooling = model.cooling.nominal;
  row.thickness_mm = cooling.thickness_mm;
  row.start_C = cooling.start_C;
  row.f2 = cooling.f2;
  row.f3 = cooling.f3;
  row.heat_input_kJ_mm = figures.heat_input_kJ_mm;
  row.deposit_area_mm2 = figures.deposit_area_mm2;
  row.leg_mm = figures.leg_mm;
  row.cooling_time_2d_s = figures.cooling_time_2d_s;
  row.cooling_time_3d_s = figures.cooling_time_3d_s;
  window_row(row);
  hold_leg(model, figures.leg_mm, row.count);
  for (std::size_t i = 0; i < row.count; ++i)
    figures.cooling_time_s[i] = std::max(figures.cooling_time_2d_s[i], figures.cooling_time_3d_s[i]);
  if (figures.preheat_needed_C)
    preheat_row({row.count, figures.heat_input_kJ_mm, model.preheat->cet_pct, model.preheat->thickness_mm,
                 model.preheat->hydrogen_ml_100g, figures.preheat_needed_C});
  RowJudge judge(model, wire_feed_speed_m_min, feed, travel_speed_mm_s, figures);
  for (std::size_t k = 0; k < model.bounds.size(); ++k) judge.judge(k);
  judge.store(broken);
}

}  // namespace seamtakt
