#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "base/parallel/thread_pool.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// The operating window of a schedule on a seam: the results of each pair of wire feed speed and travel
/// speed, and the limits it keeps. Everything else (voltage, extension, preheat, gas, passes) stays as
/// planned. A point is what `evaluate` would report with these two settings; it is feasible where `evaluate`
/// would find no fail on the passes that use the schedule nor on the seam's size, and where the fillet is no
/// larger than largest_fillet allows (plan/largest_fillet.hpp).
///
/// Current follows the melting law; where the schedule states a measured current, the law is scaled through
/// that point. Where the seam doesn't use the schedule, it is mapped as if every pass did.

struct WindowRange {
  double lower = 0, upper = 0;
};

struct WindowOptions {
  static constexpr std::size_t least_size = 2, greatest_size = 2000;
  std::size_t size = 50;  ///< points each way
  /// Absent: the schedule's limits and a margin around them; without limits 0.4 to 1.8 times the setting.
  std::optional<WindowRange> wire_feed_speed_m_min, travel_speed_mm_s;
  bool with_hardness = false;  ///< fills haz_hardness_HV, which takes a logarithm and an arc tangent a point
};

/// One bound that the window is cut by. `rule` is the id of the finding that `evaluate` makes beyond it.
struct WindowLimit {
  std::string rule;
  Sentence what;    ///< "Heat input"
  std::string key;  ///< whose value is judged: "heat_input_kJ_mm", "leg_mm", ...
  std::string unit;
  bool is_upper = true;
  std::optional<double> bound;  ///< in `unit`; empty: broken whatever the two speeds (see `sentence`)
  std::optional<double> at_working_point;  ///< the value there
  Sentence sentence;                       ///< of the finding, where the bound is empty
  std::string source;
  bool is_stated = true;  ///< by plan, code or standard; false: common practice
  bool cuts = true;       ///< false: `evaluate` only warns beyond it, and the points there stay feasible
  double broken_pct = 0;  ///< share of the map's points beyond this bound
  double alone_pct = 0;  ///< share beyond this one that cuts and no other: what the window would gain without

  /// How far inside the bound the working point is (negative: beyond), in `unit`.
  std::optional<double> margin() const {
    if (!bound || !at_working_point) return std::nullopt;
    return is_upper ? *bound - *at_working_point : *at_working_point - *bound;
  }
};

/// Maps are row by row: point (feed i, speed j) at i * travel_speed_mm_s.size() + j.
struct WindowMap {
  std::string weldment, seam, schedule;
  int passes = 0;                                                ///< of the seam, welded with the schedule
  std::vector<double> wire_feed_speed_m_min, travel_speed_mm_s;  ///< ascending

  std::vector<double> current_A, arc_voltage_V, deposition_rate_kg_h;  ///< one a wire feed speed

  std::vector<double> heat_input_kJ_mm;
  std::vector<double> deposit_area_mm2;  ///< of one pass
  std::vector<double> leg_mm;            ///< from all passes of the seam; empty for a groove
  std::vector<double> cooling_time_s;    ///< thinner plate, cold; empty where a metal isn't ferritic
  /// Empty where method B can't be judged, or the wire states no hydrogen. At heat inputs below method B's
  /// range, where `evaluate` judges nothing, the formula continues.
  std::vector<double> preheat_needed_C;
  std::vector<double> haz_hardness_HV;  ///< the worse plate; empty unless asked for

  std::vector<WindowLimit> limits;    ///< at most 32
  std::vector<std::uint32_t> broken;  ///< bit k: the point is beyond limits[k]
  std::uint32_t cutting = 0;          ///< bit k: limits[k] cuts
  std::size_t feasible_points = 0;

  double working_wire_feed_speed_m_min = 0, working_travel_speed_mm_s = 0;  ///< the schedule's settings
  bool working_point_is_feasible = false;
  Findings findings;  ///< assumptions and bounds that leave nothing

  std::size_t at(std::size_t feed, std::size_t speed) const {
    return feed * travel_speed_mm_s.size() + speed;
  }
  bool is_feasible(std::size_t feed, std::size_t speed) const {
    return (broken[at(feed, speed)] & cutting) == 0;
  }
  double feasible_pct() const {
    return broken.empty() ? 0
                          : 100 * static_cast<double>(feasible_points) / static_cast<double>(broken.size());
  }
};

/// The map of one schedule on one seam. `seam`: "WELDMENT/SEAM", or the seam's id alone where only one
/// weldment has it. InputError where schedule or seam isn't there or the size or a range can't be used. The
/// result doesn't depend on the number of threads.
WindowMap window_map(const Plan& plan, std::string_view schedule, std::string_view seam,
                     const WindowOptions& options = {}, ThreadPool& pool = ThreadPool::shared());

/// The same into a map that is there already, whose memory is used again: for a map that is drawn while a
/// person drags the working point.
void window_map_into(WindowMap& map, const Plan& plan, std::string_view schedule, std::string_view seam,
                     const WindowOptions& options = {}, ThreadPool& pool = ThreadPool::shared());

}  // namespace seamtakt
