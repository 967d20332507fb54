#pragma once

#include <optional>
#include <span>
#include <vector>

#include "plan/evaluate/pass_facts.hpp"
#include "plan/fit/fit.hpp"
#include "plan/window/window_model.hpp"

namespace seamtakt {

/// What a pass of the seam costs beside what its settings decide.
struct FitRates {
  double length_mm = 0;
  double starts_and_ends_s = 0;  ///< of all runs of a pass
  double wire_per_kg = 0, gas_per_l = 0, energy_per_kWh = 0, hour = 0;
  double gas_flow_l_min = 0, post_flow_s = 0, source_efficiency = 1;
};
FitRates fit_rates(const PassFacts& facts);

double fit_time_s(const FitRates& rates, const FitPoint& point);
double fit_heat_kJ(const FitRates& rates, const FitPoint& point);
double fit_cost(const FitRates& rates, const FitPoint& point);
double fit_measure(FitObjective objective, const FitRates& rates, const FitPoint& point);

/// The search space: the window's model, with the steps of its two axes and the choices of passes.
struct FitSearch {
  WindowModel model;
  std::vector<WindowLimit> limits;
  FitRates rates;
  FitOptions options;  ///< objective, holds and margin
  FitPoint present;    ///< of equal points, the nearest to it is taken
  Interval voltage_V;
  WindowRange wire_feed_speed_m_min, travel_speed_mm_s;
  int least_passes = 1, most_passes = 1;
};

/// Distances from the voltage's line that are tried, in this order (V); none where the voltage is held.
inline constexpr double fit_volts_off_line[] = {0, -0.5, 0.5, -1, 1, -1.5, 1.5, -2, 2, -3, 3};
inline std::span<const double> volts_off_line_of(const FitSearch& search) {
  const std::span<const double> all(fit_volts_off_line);
  return search.options.is_held(FitHold::voltage) ? all.first(1) : all;
}

/// By what a limit is multiplied so that what keeps it has the margin that is asked for; 1 where none is.
double margin_factor(const FitOptions& options, const WindowBound& bound);

/// Whether settings keep the margin to all limits of which their values are known; `stated`: except those of
/// common practice.
bool keeps_margin(const FitOptions& options, const WindowProblem& problem, bool stated);

/// The best point inside all bounds; empty where there is none. `steps_per_unit`: 10 for steps of 0.1.
/// `volts_off_line`: how far the voltage is from its line.
std::optional<FitPoint> best_point(const FitSearch& search, double steps_per_unit, double volts_off_line);

/// Limits without which a point better than `best` could be had: each alone; where none does so alone, the
/// fewest together.
std::vector<FitLimit> binding_limits(const FitSearch& search, const FitPoint& best, double steps_per_unit,
                                     double volts_off_line);

/// The fewest limits (none can be left out) of which no settings keep all, at any number of passes and any
/// distance from the voltage's line that is searched; looked for as far as three times beyond limits of wire
/// feed and travel speed, in steps of 0.1, and of 0.02 where settings were searched. Each says by how much it
/// alone would have to give way.
std::vector<FitLimit> conflicting_limits(const FitSearch& search);

/// With its sentence, "Heat input at most 0.79 kJ/mm".
FitLimit fit_limit(const WindowLimit& limit);
/// A value of the limit, in its unit.
UnitValue limit_value(const FitLimit& limit, double value, int digits);

/// Model with the voltage of a search: it follows the current from the present point, in steps of 0.1 V,
/// inside the limits.
WindowModel with_voltage_line(const FitSearch& search, double volts_off_line);

/// Calls visit(point, mask, leg_mm, deposit_area_mm2) for every pair of wire feed speed and travel speed;
/// mask as compute_row gives it.
template <class Visit>
void scan(const WindowModel& model, const std::vector<double>& feeds, const std::vector<double>& speeds,
          const Visit& visit);

/// Multiples of 1/steps_per_unit inside a range, ends included; of a range that is one value, that.
std::vector<double> lattice(const WindowRange& range, double steps_per_unit);

}  // namespace seamtakt

#include "plan/fit/fit_scan.hpp"
