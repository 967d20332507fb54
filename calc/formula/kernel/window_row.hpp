#pragma once

#include <cstddef>

#include "formula/kernel/instruction_set.hpp"

namespace seamtakt {

/// One row of an operating-window map: a wire feed speed, and what a pass gives at each of `count` travel
/// speeds. Computed by the same templates as a single pass (heat_input.hpp, deposition.hpp, fillet.hpp,
/// cooling_time.hpp), so a point of the map has the bits of a single evaluation. Outputs must not overlap.
struct WindowRow {
  std::size_t count = 0;
  const double* travel_speed_mm_s = nullptr;  ///< each > 0

  double power_W = 0;               ///< arc power with the waveform factor, at this wire feed speed
  double thermal_efficiency = 0;    ///< 0..1
  double deposition_rate_kg_h = 0;  ///< at this wire feed speed
  double weld_metal_density_g_cm3 = 0;
  double passes = 1;          ///< passes of the seam that are welded with these settings
  double other_area_mm2 = 0;  ///< deposit of the seam's other passes
  double area_allowance = 1;  ///< deposit over theoretical triangle
  double gap_mm = 0, dihedral_deg = 90;
  double thickness_mm = 0;  ///< of the plate that the cooling time is for
  double start_C = 20;      ///< preheat or interpass temperature, below 450
  double f2 = 1, f3 = 1;    ///< shape factors of the joint

  double* heat_input_kJ_mm = nullptr;
  double* deposit_area_mm2 = nullptr;  ///< of one pass
  double* leg_mm = nullptr;  ///< from all passes, 90 deg or `dihedral_deg`; below 0: the gap isn't filled
  double* cooling_time_2d_s = nullptr;
  double* cooling_time_3d_s = nullptr;
};

void window_row(const WindowRow& row, InstructionSet set = best_instruction_set());

/// Cooling time of one plate (the larger of 2D and 3D) for heat inputs (kJ/mm) that are known already.
struct CoolingRow {
  std::size_t count = 0;
  const double* heat_input_kJ_mm = nullptr;
  double thickness_mm = 0, start_C = 20, f2 = 1, f3 = 1;
  double* cooling_time_s = nullptr;
};

void cooling_row(const CoolingRow& row, InstructionSet set = best_instruction_set());

/// Preheat that passes need (preheat_needed_C, degC) for heat inputs that are known already; what tanh and
/// the power give is the same for the whole row.
struct PreheatRow {
  std::size_t count = 0;
  const double* heat_input_kJ_mm = nullptr;
  double cet_pct = 0, thickness_mm = 0, hydrogen_ml_100g = 0;
  double* preheat_C = nullptr;
};

void preheat_row(const PreheatRow& row, InstructionSet set = best_instruction_set());

}  // namespace seamtakt
