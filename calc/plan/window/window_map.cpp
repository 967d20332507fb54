#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "base/units/units.hpp"
#include "formula/metal/composition.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "formula/valid_range.hpp"
#include "plan/planned_current.hpp"
#include "plan/steel_of_metal.hpp"
#include "plan/window/window.hpp"
#include "plan/window/window_model.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t most_limits = 32;

/// How many points are beyond each limit, and beyond it alone.
struct Tally {
  std::array<std::atomic<std::size_t>, most_limits> broken{}, alone{};
  std::atomic<std::size_t> feasible = 0;

  /// `cutting`: bits of the limits that count for feasibility.
  void add(const std::uint32_t* masks, std::size_t count, std::size_t limits, std::uint32_t cutting) {
    std::uint32_t inside = 0;
    for (std::size_t i = 0; i < count; ++i) inside += (masks[i] & cutting) == 0;
    feasible += inside;
    for (std::size_t k = 0; k < limits; ++k) {
      const std::uint32_t bit = std::uint32_t{1} << k;
      std::uint32_t beyond = 0, only = 0;
      for (std::size_t i = 0; i < count; ++i) {
        beyond += (masks[i] & bit) != 0;
        only += (masks[i] & cutting) == bit;
      }
      broken[k] += beyond;
      alone[k] += only;
    }
  }
};

WindowRange checked(const WindowRange& range, const char* option) {
  if (!(range.lower > 0 && range.upper > range.lower && std::isfinite(range.upper)))
    throw InputError(option,
                     Sentence("window.range"_key,
                              {{"lower", number_text(range.lower)}, {"upper", number_text(range.upper)}}),
                     "a range above 0 whose end is above its beginning"_word);
  return range;
}

/// What isn't limited reaches from and to so many times the setting.
constexpr double assumed_from = 0.4, assumed_to = 1.8;

/// Limits with half their width on both sides, so that the edges of the window are seen.
WindowRange range_around(const std::optional<Interval>& limit, double setting) {
  const bool has_lower = limit && limit->lower, has_upper = limit && limit->upper;
  double lower = has_lower ? *limit->lower : assumed_from * setting;
  double upper = has_upper ? *limit->upper : assumed_to * setting;
  lower = std::min(lower, setting);
  upper = std::max(upper, setting);
  const double margin = std::max((upper - lower) / 2, setting / 10);
  return {has_lower ? std::max(lower - margin, lower / 4) : lower, has_upper ? upper + margin : upper};
}

std::vector<double> axis(const WindowRange& range, std::size_t size) {
  std::vector<double> values(size);
  const double step = (range.upper - range.lower) / static_cast<double>(size - 1);
  for (std::size_t i = 0; i < size; ++i) values[i] = range.lower + step * static_cast<double>(i);
  values.back() = range.upper;
  return values;
}

void set_axes(WindowMap& map, const Schedule& schedule, const WindowOptions& options) {
  if (options.size < WindowOptions::least_size || options.size > WindowOptions::greatest_size)
    throw InputError("--size", std::to_string(options.size),
                     Sentence("window.points-from-to"_key, {{"least", WindowOptions::least_size},
                                                            {"most", WindowOptions::greatest_size}}));
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  const auto chosen = [&](const std::optional<WindowRange>& given, const std::optional<Interval>& limit,
                          double setting, const char* option, Word what) {
    if (given) return checked(*given, option);
    if (!limit || !limit->lower || !limit->upper)
      map.findings.push_back(
          remark("window.range.assumed", schedule.id,
                 Sentence("window.range.assumed"_key, {{"what", what},
                                                       {"schedule", schedule.id},
                                                       {"from", UnitValue{assumed_from, ""}},
                                                       {"to", UnitValue{assumed_to, ""}}}),
                 "common practice, no source"));
    return range_around(limit, setting);
  };
  map.wire_feed_speed_m_min =
      axis(chosen(options.wire_feed_speed_m_min, limits.wire_feed_speed_m_min, schedule.wire_feed_speed_m_min,
                  "--wire-feed", "Wire feed speed"_word),
           options.size);
  map.travel_speed_mm_s = axis(chosen(options.travel_speed_mm_s, limits.travel_speed_mm_s,
                                      schedule.travel_speed_mm_s, "--travel-speed", "Travel speed"_word),
                               options.size);
}

const Schedule& schedule_named(const Plan& plan, std::string_view id) {
  if (const Schedule* schedule = find_by_id(plan.schedules, id)) return *schedule;
  std::vector<std::string> known;
  for (const Schedule& schedule : plan.schedules) known.push_back(schedule.id);
  throw InputError("--schedule", "\"" + printable(id) + "\"",
                   known.empty() ? Sentence("a plan with schedules"_word)
                                 : Sentence("plan.one-of"_key, {{"names", comma_list(known)}}));
}

void reserve_maps(WindowMap& map, const WindowModel& model, bool with_hardness) {
  const std::size_t feeds = map.wire_feed_speed_m_min.size(), points = feeds * map.travel_speed_mm_s.size();
  for (auto* by_feed : {&map.current_A, &map.arc_voltage_V, &map.deposition_rate_kg_h})
    by_feed->resize(feeds);
  for (auto* by_point : {&map.heat_input_kJ_mm, &map.deposit_area_mm2, &map.leg_mm, &map.cooling_time_s})
    by_point->resize(points);
  map.preheat_needed_C.resize(model.preheat ? points : 0);
  map.haz_hardness_HV.resize(with_hardness ? points : 0);
  map.broken.resize(points);
}

/// Hardness of the worse plate at each heat input of a row.
class HardnessRow {
 public:
  HardnessRow(const SeamAlone& alone, const WindowModel& model) : model_(model) {
    for (std::size_t plate = 0; plate < 2; ++plate) {
      const BaseMetal* metal = find_by_id(alone.plan.base_metals, alone.seam().base_metals[plate]);
      elements_[plate] = hardening_elements(steel_of(*metal, alone.seam().thickness_mm[plate]).steel);
    }
  }

  bool is_known() const { return model_.has_hardness && hardness_HV(1).has_value(); }

  std::optional<double> hardness_HV(double heat_input_kJ_mm) const {
    std::optional<double> worst;
    for (std::size_t plate = 0; plate < 2; ++plate) {
      CoolingCase at = model_.cooling.nominal;
      at.thickness_mm = model_.plate_mm[plate];
      const double time_s = cooling_time(heat_input_kJ_mm, at).time_s;
      const std::optional<double> hardness = yurioka_hardness_HV(elements_[plate], time_s);
      if (hardness && (!worst || *hardness > *worst)) worst = hardness;
    }
    return worst;
  }

 private:
  const WindowModel& model_;
  std::array<HardeningElements, 2> elements_;
};

void compute_rows(WindowMap& map, const WindowModel& model, const HardnessRow* hardness, std::size_t begin,
                  std::size_t end, Tally& tally) {
  const std::size_t speeds = map.travel_speed_mm_s.size();
  std::vector<double> time_2d(speeds), time_3d(speeds);
  for (std::size_t i = begin; i < end; ++i) {
    const FeedFigures feed = feed_figures(model, map.wire_feed_speed_m_min[i]);
    map.current_A[i] = feed.current_A;
    map.arc_voltage_V[i] = feed.arc_voltage_V;
    map.deposition_rate_kg_h[i] = feed.deposition_rate_kg_h;
    const std::size_t first = i * speeds;
    const RowFigures figures{&map.heat_input_kJ_mm[first],
                             &map.deposit_area_mm2[first],
                             &map.leg_mm[first],
                             &map.cooling_time_s[first],
                             map.preheat_needed_C.empty() ? nullptr : &map.preheat_needed_C[first],
                             time_2d.data(),
                             time_3d.data()};
    compute_row(model, map.wire_feed_speed_m_min[i], feed, map.travel_speed_mm_s, figures,
                &map.broken[first]);
    if (hardness)
      for (std::size_t j = first; j < first + speeds; ++j)
        map.haz_hardness_HV[j] = hardness->hardness_HV(map.heat_input_kJ_mm[j]).value_or(0);
    tally.add(&map.broken[first], speeds, model.bounds.size(), map.cutting);
  }
}

void add_findings(WindowMap& map, const Schedule& schedule, const WindowProblem& problem) {
  const std::string place = map.weldment + "/" + map.seam;
  map.findings.insert(map.findings.end(), problem.fails.begin(), problem.fails.end());
  if (stated_current_A(schedule))
    map.findings.push_back(remark("window.current.scaled", schedule.id,
                                  Sentence("window.current.scaled"_key, {{"schedule", schedule.id}}),
                                  "derived"));
  if (map.feasible_points > 0) return;
  std::vector<Sentence> always;
  for (const WindowLimit& limit : map.limits)
    if (!limit.bound) always.push_back(limit.sentence);
  Sentence sentence = always.empty() ? Sentence("window.empty"_key)
                                     : Sentence("window.empty.always"_key, {{"findings", std::move(always)}});
  map.findings.push_back(
      {"window.empty", Severity::fail, place, 0.0, {}, "%", std::move(sentence), "plan limit"});
}

}  // namespace

void window_map_into(WindowMap& map, const Plan& plan, std::string_view schedule_id,
                     std::string_view seam_place, const WindowOptions& options, ThreadPool& pool) {
  const Schedule& schedule = schedule_named(plan, schedule_id);
  SeamAlone alone = seam_alone(plan, seam_place, "--seam");
  std::vector<std::string>& schedules = alone.seam().schedules;
  map.findings.clear();
  set_axes(map, schedule, options);
  if (passes_with(alone.seam(), schedule_id).empty())
    schedules.assign(std::max<std::size_t>(1, schedules.size()), schedule.id);
  WindowProblem problem = window_problem(alone, schedule.id);
  map.weldment = alone.weldment().id;
  map.seam = alone.seam().id;
  map.schedule = schedule.id;
  map.passes = static_cast<int>(problem.passes.size());
  map.working_wire_feed_speed_m_min = schedule.wire_feed_speed_m_min;
  map.working_travel_speed_mm_s = schedule.travel_speed_mm_s;
  map.working_point_is_feasible = problem.keeps_limits(false);
  map.cutting = 0;
  for (std::size_t k = 0; k < problem.limits.size(); ++k)
    if (problem.limits[k].cuts) map.cutting |= std::uint32_t{1} << k;

  const HardnessRow hardness(alone, problem.model);
  const bool with_hardness = options.with_hardness && hardness.is_known();
  reserve_maps(map, problem.model, with_hardness);
  Tally tally;
  constexpr std::size_t rows_a_piece = 8;
  pool.parallel_for(map.wire_feed_speed_m_min.size(), rows_a_piece, [&](std::size_t begin, std::size_t end) {
    compute_rows(map, problem.model, with_hardness ? &hardness : nullptr, begin, end, tally);
  });
  map.feasible_points = tally.feasible;
  map.limits = std::move(problem.limits);
  for (std::size_t k = 0; k < map.limits.size(); ++k) {
    const double points = static_cast<double>(map.broken.size());
    map.limits[k].broken_pct = 100 * static_cast<double>(tally.broken[k]) / points;
    map.limits[k].alone_pct = 100 * static_cast<double>(tally.alone[k]) / points;
  }
  if (problem.model.is_groove) map.leg_mm.clear();
  if (!problem.model.is_ferritic) map.cooling_time_s.clear();
  add_findings(map, schedule, problem);
}

WindowMap window_map(const Plan& plan, std::string_view schedule, std::string_view seam,
                     const WindowOptions& options, ThreadPool& pool) {
  WindowMap map;
  window_map_into(map, plan, schedule, seam, options, pool);
  return map;
}

}  // namespace seamtakt
