#include "plan/fit/fit_search.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

#include "base/units/units.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

/// Slope of the conventional load line of gas-shielded metal arc welding, U = 14 V + 0.05 V/A * I.
/// Source: iec-60974-1 (recalled).
constexpr double load_line_V_A = 0.05;
constexpr double voltage_steps_per_V = 10;

/// Share by which two measures of the same settings may differ through rounding.
constexpr double same_measure = 1e-9;

double distance(const FitPoint& a, const FitPoint& b) {
  const auto off = [](double x, double y) { return std::abs(x - y) / y; };
  return off(a.wire_feed_speed_m_min, b.wire_feed_speed_m_min) +
         off(a.travel_speed_mm_s, b.travel_speed_mm_s);
}

const Robot* robot_of(const PassFacts& facts) {
  if (facts.seam.by != "robot" || !facts.plan.cell || facts.plan.cell->robots.empty()) return nullptr;
  const Robot* named = facts.seam.robots.empty() ? nullptr : facts.index.robot(facts.seam.robots[0]);
  return named ? named : &facts.plan.cell->robots[0];
}

}  // namespace

FitRates fit_rates(const PassFacts& facts) {
  const Schedule& schedule = facts.schedule;
  const Costs costs = facts.plan.costs.value_or(Costs{});
  const Robot* robot = robot_of(facts);
  FitRates rates;
  rates.length_mm = welded_length_mm(facts.seam);
  const double start_s = schedule.arc_start_s.value_or(robot ? robot->arc_start_s : 0);
  const double end_s = schedule.crater_fill_s.value_or(robot ? robot->crater_fill_s : 0);
  rates.post_flow_s = robot ? robot->post_flow_s : 0;
  rates.starts_and_ends_s =
      static_cast<double>(weld_runs(facts.seam).size()) * (start_s + end_s + rates.post_flow_s);
  rates.wire_per_kg = facts.wire.price_per_kg;
  rates.gas_per_l = facts.gas ? facts.gas->price_per_m3 / 1000 : 0;
  rates.energy_per_kWh = costs.energy_per_kWh;
  rates.hour = facts.seam.by == "robot" ? costs.robot_per_h : costs.labour_per_h;
  rates.gas_flow_l_min = schedule.gas_flow_l_min;
  rates.source_efficiency = facts.power_source ? facts.power_source->efficiency : 1;
  return rates;
}

double fit_time_s(const FitRates& rates, const FitPoint& point) {
  return point.passes * (rates.length_mm / point.travel_speed_mm_s + rates.starts_and_ends_s);
}

double fit_heat_kJ(const FitRates& rates, const FitPoint& point) {
  return point.passes * point.heat_input_kJ_mm * rates.length_mm;
}

double fit_cost(const FitRates& rates, const FitPoint& point) {
  const double arc_s = rates.length_mm / point.travel_speed_mm_s;
  const double wire = point.melting_rate_kg_h * arc_s / 3600 * rates.wire_per_kg;
  const double gas = rates.gas_flow_l_min * (arc_s + rates.post_flow_s) / 60 * rates.gas_per_l;
  const double energy =
      point.arc_power_W / 1000 * arc_s / 3600 / rates.source_efficiency * rates.energy_per_kWh;
  return point.passes * (wire + gas + energy + (arc_s + rates.starts_and_ends_s) / 3600 * rates.hour);
}

double fit_measure(FitObjective objective, const FitRates& rates, const FitPoint& point) {
  switch (objective) {
    case FitObjective::heat:
      return fit_heat_kJ(rates, point);
    case FitObjective::cost:
      return fit_cost(rates, point);
    case FitObjective::time:
      break;
  }
  return fit_time_s(rates, point);
}

double margin_factor(const FitOptions& options, const WindowBound& bound) {
  switch (bound.judged) {
    case Judged::always:
    case Judged::preheat:
    case Judged::hardness_highest:
    case Judged::hardness_lowest:
      return 1;
    case Judged::wire_feed:
      if (options.is_held(FitHold::wire_feed)) return 1;
      break;
    case Judged::voltage:
      if (options.is_held(FitHold::voltage)) return 1;
      break;
    case Judged::travel_speed:
      if (options.is_held(FitHold::travel_speed)) return 1;
      break;
    default:
      break;
  }
  const double share = options.margin_pct / 100;
  return bound.is_upper ? 1 - share : 1 + share;
}

bool keeps_margin(const FitOptions& options, const WindowProblem& problem, bool stated) {
  constexpr double rounding = 1e-9;
  for (std::size_t k = 0; k < problem.limits.size(); ++k) {
    const WindowLimit& limit = problem.limits[k];
    if (!limit.cuts || (stated && !limit.is_stated) || !limit.margin()) continue;
    const double share = std::abs(1 - margin_factor(options, problem.model.bounds[k]));
    if (share > 0 && *limit.margin() < (share - rounding) * std::abs(*limit.bound)) return false;
  }
  return true;
}

std::vector<double> lattice(const WindowRange& range, double steps_per_unit) {
  if (range.lower == range.upper) return {range.lower};
  std::vector<double> values;
  // A limit that is itself a multiple must not be lost to rounding.
  const double slack = 1e-9;
  const double first = std::ceil(range.lower * steps_per_unit - slack);
  const double last = std::floor(range.upper * steps_per_unit + slack);
  for (double k = std::max(1.0, first); k <= last; ++k) values.push_back(k / steps_per_unit);
  return values;
}

WindowModel with_voltage_line(const FitSearch& search, double volts_off_line) {
  WindowModel model = search.model;
  model.arc_voltage_V = search.present.arc_voltage_V + volts_off_line;
  if (search.options.is_held(FitHold::voltage)) return model;
  model.voltage_per_current_V_A = load_line_V_A;
  model.voltage_steps_per_V = voltage_steps_per_V;
  model.voltage_V = search.voltage_V;
  return model;
}

std::optional<FitPoint> best_point(const FitSearch& search, double steps_per_unit, double volts_off_line) {
  const std::vector<double> feeds = lattice(search.wire_feed_speed_m_min, steps_per_unit);
  const std::vector<double> speeds = lattice(search.travel_speed_mm_s, steps_per_unit);
  WindowModel model = with_voltage_line(search, volts_off_line);
  std::optional<FitPoint> best;
  double least = std::numeric_limits<double>::infinity();
  for (int passes = search.least_passes; passes <= search.most_passes; ++passes) {
    model.passes = passes;
    scan(model, feeds, speeds, [&](const FitPoint& point, std::uint32_t mask, double, double) {
      if (mask != 0) return;
      const double measure = fit_measure(search.options.objective, search.rates, point);
      const bool is_less = measure < least * (1 - same_measure);
      const bool is_same = !is_less && measure <= least * (1 + same_measure);
      if (!is_less && !(is_same && distance(point, search.present) < distance(*best, search.present))) return;
      if (is_less) least = measure;
      best = point;
    });
  }
  return best;
}

std::vector<FitLimit> binding_limits(const FitSearch& search, const FitPoint& best, double steps_per_unit,
                                     double volts_off_line) {
  // Half as far again on either side: beyond what a limit alone keeps the settings from.
  const auto wider = [](const WindowRange& range) {
    const double margin = std::max(range.upper - range.lower, 0.2 * range.upper) / 2;
    return WindowRange{std::max(range.lower - margin, range.lower / 2), range.upper + margin};
  };
  const auto looked_at = [&](FitHold axis, const WindowRange& range) {
    return lattice(search.options.is_held(axis) ? range : wider(range), steps_per_unit);
  };
  const std::vector<double> feeds = looked_at(FitHold::wire_feed, search.wire_feed_speed_m_min);
  const std::vector<double> speeds = looked_at(FitHold::travel_speed, search.travel_speed_mm_s);
  const double measure_to_beat =
      fit_measure(search.options.objective, search.rates, best) * (1 - same_measure);
  std::uint32_t found = 0, fewest = ~std::uint32_t{0};
  WindowModel model = with_voltage_line(search, volts_off_line);
  for (int passes = search.least_passes; passes <= search.most_passes; ++passes) {
    model.passes = passes;
    scan(model, feeds, speeds, [&](const FitPoint& point, std::uint32_t mask, double, double) {
      if (mask == 0 || std::popcount(mask) > std::popcount(fewest)) return;
      if (!(fit_measure(search.options.objective, search.rates, point) < measure_to_beat)) return;
      if (std::popcount(mask) == 1) found |= mask;
      fewest = mask;
    });
  }
  // Where no single limit is the cause, the smallest set of limits that is.
  if (found == 0) found = fewest;
  std::vector<FitLimit> binding;
  for (std::size_t k = 0; k < search.limits.size(); ++k)
    if (found >> k & 1) binding.push_back(fit_limit(search.limits[k]));
  return binding;
}

FitLimit fit_limit(const WindowLimit& limit) {
  FitLimit result{limit.rule,     limit.what,  limit.key, limit.unit,
                  limit.is_upper, limit.bound, {},        limit.sentence};
  if (limit.bound)
    result.sentence = Sentence(limit.is_upper ? "fit.limit.at-most"_key : "fit.limit.at-least"_key,
                               {{"what", limit.what}, {"bound", limit_value(result, *limit.bound, 4)}});
  return result;
}

UnitValue limit_value(const FitLimit& limit, double value, int digits) {
  const Unit* unit = find_unit(limit.unit);
  return {value, unit ? unit->name : "", digits};
}

}  // namespace seamtakt
