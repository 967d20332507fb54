#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"

namespace seamtakt {

/// What may judge a pass: bits of PassEvaluation::judged.
enum class JudgedBy : std::uint8_t {
  size = 1,          ///< the drawing's leg or throat, or the groove's area
  heat = 2,          ///< a limit of heat input or t8/5
  position = 4,      ///< the positions that the schedule is for
  qualification = 8  ///< a procedure test
};
/// Limits that a guarded decision may leave open (uncertainty/open_limits.hpp): bits of
/// PassEvaluation::left_open.
enum class OpenLimit : std::uint8_t {
  current = 1,
  heat_input = 2,
  cooling_fastest = 4,
  cooling_slowest = 8,
  qualified_heat_input = 16,
  qualified_current = 32
};
/// With these, "ok" says that a pass is in order; without one of them it is judged in part.
inline constexpr std::uint8_t judged_in_full = 7;

/// Every derived value of one pass. Names, units and definitions are the contract's; an empty value is null.
/// Results of formulas for ferritic steels (cooling, carbon equivalents, preheat, hardness, penetration) are
/// empty where a metal of the joint isn't one, and where its composition leaves the formula's own range.
struct PassEvaluation {
  std::string weldment, seam;
  int pass = 1;  ///< counts from 1
  std::string schedule, process;
  double length_mm = 0;  ///< welded length
  double current_A = 0, voltage_V = 0;
  double arc_power_kW = 0, arc_energy_kJ_mm = 0;
  double thermal_efficiency = 0, heat_input_kJ_mm = 0;
  double melting_rate_kg_h = 0, deposition_rate_kg_h = 0, deposit_area_mm2 = 0;
  std::optional<double> penetration_mm;
  std::string transfer_mode;
  std::optional<double> cooling_time_s;
  std::string_view cooling_regime;  ///< "2D" or "3D"
  std::optional<std::array<double, 2>> cooling_time_span_s, cooling_time_plate_s;
  std::optional<double> cooling_time_hot_s;
  /// Cold, thicker plate, low end of the span: what a lower limit is judged on.
  std::optional<double> cooling_time_fastest_s;
  /// Hot, thinner plate, high end: what an upper limit is judged on.
  std::optional<double> cooling_time_slowest_s;
  /// Never below 5 C; up to 20 C none is needed. Empty also where method B can't be judged.
  std::optional<double> preheat_needed_C;
  /// Inputs of method B that were taken at the edge of its range, and those beyond it on the side where it
  /// can't be judged: bits of preheat_input_ranges (formula/preheat.hpp).
  std::uint8_t preheat_at_edge = 0, preheat_beyond = 0;
  std::optional<double> CE_IIW, CET, Pcm, CEN;
  std::optional<double> haz_hardness_HV;
  double arc_time_s = 0, wire_g = 0, gas_l = 0, energy_kWh = 0;
  std::optional<double> U_current_A, U_heat_input_kJ_mm, U_cooling_time_s;  ///< expanded, k = 2
  std::uint8_t judged = 0;                                                  ///< by what: bits of JudgedBy
  /// Limits that a guarded decision leaves open as the current isn't measured: bits of OpenLimit.
  std::uint8_t left_open = 0;
};

/// Whether nothing judges the pass's size, its heat or its position: that there is no finding on it doesn't
/// mean that it is in order.
inline bool is_partly_judged(const PassEvaluation& pass) {
  constexpr auto needed = static_cast<std::uint8_t>(JudgedBy::size) |
                          static_cast<std::uint8_t>(JudgedBy::heat) |
                          static_cast<std::uint8_t>(JudgedBy::position);
  return (pass.judged & needed) != needed;
}

struct SeamEvaluation {
  std::string weldment, seam;
  std::optional<double> leg_mm, throat_mm, leg_needed_mm, throat_needed_mm;
  double area_mm2 = 0, area_needed_mm2 = 0;
  double interpass_wait_s = 0;            ///< longest of the waits below
  std::vector<double> interpass_waits_s;  ///< before pass 2, 3, ...; 0 where no interpass limit is set
  std::optional<double> angular_distortion_deg;
  std::optional<double> U_leg_mm;
};

struct WeldmentEvaluation {
  std::string weldment;
  double arc_time_s = 0, wire_kg = 0, gas_l = 0, energy_kWh = 0, cost = 0;
  double robot_share_pct = 0;  ///< of weld length
  double robot_share_deposit_pct = 0, robot_share_arc_time_pct = 0;
  std::optional<double> bow_mm;
};

/// What follows from a plan. Passes and seams are in file order.
struct Evaluation {
  std::vector<PassEvaluation> passes;
  std::vector<SeamEvaluation> seams;
  std::vector<WeldmentEvaluation> weldments;
  Findings findings;
};

}  // namespace seamtakt
