#include "formula/kernel/window_row.hpp"

#include "formula/heat/cooling_time.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/kernel/row_kernel.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/size/fillet.hpp"
#include "formula/wire/deposition.hpp"

namespace seamtakt {

namespace {

// Values of the row are copied: as members they could be changed by a write through an output pointer, for
// all that the compiler knows, and nothing would leave the loop. For the same reason the loops promise
// that outputs don't overlap.
inline void window_body(const WindowRow& given) {
  const WindowRow row = given;
  const double* speed = row.travel_speed_mm_s;
  double* heat = row.heat_input_kJ_mm;
  double* area = row.deposit_area_mm2;
  double* leg = row.leg_mm;
  double* time_2d = row.cooling_time_2d_s;
  double* time_3d = row.cooling_time_3d_s;
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < row.count; ++i) {
    const double v = speed[i];
    const double Q =
        heat_input_kJ_mm<double>(arc_energy_kJ_mm<double>(row.power_W, v), row.thermal_efficiency);
    const double A = deposit_area_mm2<double>(row.deposition_rate_kg_h, v, row.weld_metal_density_g_cm3);
    heat[i] = Q;
    area[i] = A;
    leg[i] = fillet_leg_obtained_mm<double>(row.other_area_mm2 + row.passes * A, row.area_allowance,
                                            row.gap_mm, row.dihedral_deg);
    time_2d[i] = cooling_time_2d_s<double>(Q, row.thickness_mm, row.start_C, row.f2);
    time_3d[i] = cooling_time_3d_s<double>(Q, row.start_C, row.f3);
  }
}

inline void cooling_body(const CoolingRow& given) {
  const CoolingRow row = given;
  const double* heat = row.heat_input_kJ_mm;
  double* time = row.cooling_time_s;
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < row.count; ++i)
    time[i] = cooling_time<double>(heat[i], row.thickness_mm, row.start_C, row.f2, row.f3).time_s;
}

inline void preheat_body(const PreheatRow& given) {
  const PreheatRow row = given;
  const double* heat = row.heat_input_kJ_mm;
  double* preheat = row.preheat_C;
  SEAMTAKT_INDEPENDENT_LOOP
  for (std::size_t i = 0; i < row.count; ++i)
    preheat[i] = preheat_needed_C<double>(row.cet_pct, row.thickness_mm, row.hydrogen_ml_100g, heat[i]);
}

}  // namespace

SEAMTAKT_ROW_KERNEL(window_row, WindowRow, window_body)
SEAMTAKT_ROW_KERNEL(cooling_row, CoolingRow, cooling_body)
SEAMTAKT_ROW_KERNEL(preheat_row, PreheatRow, preheat_body)

}  // namespace seamtakt
