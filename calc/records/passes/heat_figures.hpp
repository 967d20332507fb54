#pragma once

#include <optional>

#include "plan/plan.hpp"

namespace seamtakt {

/// Inputs of a record's heat input and cooling time that aren't logged. It is kept with
/// the record, so that a correction can recompute them without the plan.
struct HeatBasis {
  std::optional<double> efficiency;            ///< k of EN 1011-1
  std::optional<double> thickness_mm, F2, F3;  ///< of EN 1011-2, annex D
  /// Plate's temperature before the pass: the preheat, or the interpass temperature that was logged.
  std::optional<double> from_C;
};

/// The seam's thinner plate and joint, from that temperature. False, and nothing is set, where the seam
/// states no thickness, or shape factors of its joint aren't known.
bool set_plate(HeatBasis& basis, const Seam& seam, double from_C);

// The figures of a record, when it is made and after a correction. Each is empty where something that it
// takes isn't known or can't be: a length that isn't above 0, a plate too hot for annex D.
std::optional<double> recorded_arc_energy_kJ_mm(std::optional<double> energy_J,
                                                std::optional<double> length_mm);
std::optional<double> recorded_heat_input_kJ_mm(std::optional<double> arc_energy_kJ_mm,
                                                const HeatBasis& basis);
std::optional<double> recorded_cooling_time_s(std::optional<double> heat_input_kJ_mm, const HeatBasis& basis);

}  // namespace seamtakt
