#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "formula/metal/preheat.hpp"
#include "plan/evaluate/cooling_case.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/evaluate/pass_facts.hpp"
#include "plan/window/judged.hpp"
#include "plan/window/seam_alone.hpp"
#include "plan/window/window.hpp"

namespace seamtakt {

struct WindowBound {
  Judged judged = Judged::always;
  bool is_upper = true;
  double bound = 0;
  double less = 0;                       ///< taken off the value first: the leg that a larger gap costs
  std::array<double, 2> plate_time_s{};  ///< hardness: the cooling times that correspond to the bound
};

/// A pass of one schedule on one seam, with the two speeds left open.
struct WindowModel {
  // The wire and its current.
  double extension_mm = 0, alpha_mm_s_A = 0, beta_per_s_A2 = 0;
  double current_factor = 1;  ///< measured current over that of the melting law
  double wire_area_mm2 = 0, wire_density_g_cm3 = 0, deposition_efficiency = 0, weld_metal_density_g_cm3 = 0;
  // The arc.
  double arc_voltage_V = 0, waveform_factor = 1, thermal_efficiency = 0;
  double voltage_per_current_V_A =
      0;  ///< 0: the voltage stays; else it follows the current from base_current_A
  double base_current_A = 0;
  double voltage_steps_per_V = 0;  ///< above 0: a voltage that follows is rounded to such steps
  Interval voltage_V;              ///< and held inside these
  // The seam.
  double passes = 1, other_area_mm2 = 0, area_allowance = 1, gap_mm = 0, dihedral_deg = 90;
  double leg_at_most_mm = std::numeric_limits<double>::infinity();  ///< a lap's edge
  double throat_per_leg = 1;
  bool is_groove = false;
  double longest_run_mm = 0;
  std::optional<double> max_current_A, rated_current_A;
  double rated_duty_pct = 100;
  // The plates.
  std::array<double, 2> plate_mm{};
  CoolingCases cooling;
  bool is_ferritic = true;   ///< else there are no cooling times
  bool has_hardness = true;  ///< the hardness formula holds for both plates
  /// Inputs of method B, inside its range; empty where it can't be judged whatever the heat input.
  std::optional<PreheatInputs> preheat;

  std::vector<WindowBound> bounds;
};

/// The model of the passes that `alone` welds with `schedule`; bounds and limits (same order) with what
/// `evaluation` of it says at the schedule's settings.
struct WindowProblem {
  WindowModel model;
  std::vector<WindowLimit> limits;
  std::vector<int> passes;
  Findings fails;  ///< of these passes and of the seam, at the schedule's settings

  /// Whether the schedule's settings keep all limits that cut; `stated`: except those of common practice.
  bool keeps_limits(bool stated) const;
};
WindowProblem window_problem(const SeamAlone& alone, const std::string& schedule);

/// Adds the bounds and their limits to a problem whose model is filled.
void add_window_limits(const PassFacts& facts, const PassEvaluation& pass, const SeamEvaluation& seam,
                       WindowProblem& problem);

/// A wire feed speed's figures that don't depend on travel speed.
struct FeedFigures {
  double current_A = 0, arc_voltage_V = 0, power_W = 0, deposition_rate_kg_h = 0;
  double longest_arc_s = std::numeric_limits<double>::infinity();  ///< that the power source's duty allows
};
FeedFigures feed_figures(const WindowModel& model, double wire_feed_speed_m_min);

/// Where a row's figures go; each holds as many as there are speeds. `cooling_time_2d_s` and `_3d_s` are
/// worked in and may be anything afterwards.
struct RowFigures {
  double *heat_input_kJ_mm, *deposit_area_mm2, *leg_mm, *cooling_time_s, *preheat_needed_C;
  double *cooling_time_2d_s, *cooling_time_3d_s;
};

/// Fills a row, and bit k of `broken` for each point beyond bounds[k]. `preheat_needed_C` may be nullptr
/// where the model has no preheat.
void compute_row(const WindowModel& model, double wire_feed_speed_m_min, const FeedFigures& feed,
                 const std::vector<double>& travel_speed_mm_s, const RowFigures& figures,
                 std::uint32_t* broken);

}  // namespace seamtakt
