#pragma once

#include <string_view>

namespace seamtakt {

/// Density of the weld metal (g/cm3) by the wire's material: reference/weld_metal_density.csv, read once;
/// mild steel's for a material that the table hasn't. InputError: the table is damaged.
double weld_metal_density_g_cm3(std::string_view wire_material);

}  // namespace seamtakt
