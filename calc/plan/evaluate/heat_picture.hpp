#pragma once

#include <optional>
#include <vector>

#include "formula/heat/temperature_field.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Pictures of the temperature round a pass: the plate's field seen from the moving arc, and what a point
/// beside the seam goes through. Formula and source: plate_temperature_C (grong-1997, chapter 1), a bead on
/// one plate with constant handbook properties; a tee's second plate and a groove aren't in it, so it shows
/// the shape of the field, not the cooling time that limits are judged on. Accuracy: not stated by the
/// source.

/// The heat that a pass brings: arc power times the process's thermal efficiency, at the pass's travel speed
/// (mm/s), into plate at preheat_C, with the handbook's conductivity and heat capacity.
MovingSource<double> source_of_pass(const PassEvaluation& pass, double travel_speed_mm_s, double preheat_C);

/// Surface temperatures, row by row: temperature_C[i * ahead_mm.size() + j] at aside_mm[i], ahead_mm[j].
struct SurfaceField {
  std::vector<double> ahead_mm;  ///< ascending; ahead of the arc is positive
  std::vector<double> aside_mm;  ///< ascending, both sides of the seam
  std::vector<double>
      temperature_C;  ///< capped at the steel's melting temperature: the pool's own isn't known
};

/// The field with `along` by `across` points (each at least 2), from where the centre line behind the arc has
/// fallen to coldest_C (above preheat) to a little ahead of it.
SurfaceField surface_field(const MovingSource<double>& source, double thickness_mm, double coldest_C,
                           std::size_t along, std::size_t across);

/// What a point of the surface at aside_mm from the seam's middle goes through while the arc passes by.
struct ThermalCycle {
  double aside_mm = 0;
  std::vector<double> time_s;         ///< 0: the arc is abreast
  std::vector<double> temperature_C;  ///< capped at melting
  double peak_C = 0;
  std::optional<double> at_800_s, at_500_s;  ///< cooling through; empty where it never got there
};

ThermalCycle thermal_cycle(const MovingSource<double>& source, double thickness_mm, double aside_mm,
                           double coldest_C, std::size_t points);

/// Half width (mm) of the molten zone at the surface: where the peak falls to melting; 0 where nothing melts.
double molten_half_width_mm(const MovingSource<double>& source, double thickness_mm);

}  // namespace seamtakt
