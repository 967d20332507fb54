#include "records/passes/heat_figures.hpp"

#include <algorithm>

#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"

namespace seamtakt {

bool set_plate(HeatBasis& basis, const Seam& seam, double from_C) {
  const auto shape = shape_factors_of(seam.joint);
  if (!shape || seam.thickness_mm.empty()) return false;
  basis.thickness_mm = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  basis.F2 = shape->f2;
  basis.F3 = shape->f3;
  basis.from_C = from_C;
  return true;
}

std::optional<double> recorded_arc_energy_kJ_mm(std::optional<double> energy_J,
                                                std::optional<double> length_mm) {
  if (!energy_J || !length_mm || *length_mm <= 0) return std::nullopt;
  return arc_energy_of_weld_kJ_mm(*energy_J, *length_mm);
}

std::optional<double> recorded_heat_input_kJ_mm(std::optional<double> arc_energy_kJ_mm,
                                                const HeatBasis& basis) {
  if (!arc_energy_kJ_mm || !basis.efficiency) return std::nullopt;
  return heat_input_kJ_mm(*arc_energy_kJ_mm, *basis.efficiency);
}

std::optional<double> recorded_cooling_time_s(std::optional<double> heat_input_kJ_mm,
                                              const HeatBasis& basis) {
  if (!heat_input_kJ_mm || *heat_input_kJ_mm <= 0 || !basis.thickness_mm || !basis.F2 || !basis.F3 ||
      !basis.from_C || *basis.from_C >= preheat_below_C)
    return std::nullopt;
  return cooling_time(*heat_input_kJ_mm, *basis.thickness_mm, *basis.from_C, *basis.F2, *basis.F3).time_s;
}

}  // namespace seamtakt
