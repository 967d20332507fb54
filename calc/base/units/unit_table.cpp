#include <array>

#include "base/units/units.hpp"

namespace seamtakt {

namespace {

using enum Dimension;

// Inch 25.4 mm, pound 453.59237 g and pound-force 4.4482216152605 N are exact by definition (international
// yard and pound agreement of 1959; recalled). Every other factor here follows from them and from the
// prefixes.
constexpr double pi = 3.141592653589793;

// The first unit of a dimension is its canonical one.
constexpr std::array units = {
    Unit{"", none, 1, 1, 0},
    Unit{"mm", length, 1, 1, 0},
    Unit{"cm", length, 10, 1, 0},
    Unit{"m", length, 1000, 1, 0},
    Unit{"in", length, 127, 5, 0},
    Unit{"ft", length, 1524, 5, 0},
    Unit{"mm/s", speed, 1, 1, 0},
    Unit{"cm/min", speed, 1, 6, 0},
    Unit{"m/min", speed, 50, 3, 0},
    Unit{"mm/min", speed, 1, 60, 0},
    Unit{"in/min", speed, 127, 300, 0},
    Unit{"A", current, 1, 1, 0},
    Unit{"kA", current, 1000, 1, 0},
    Unit{"V", voltage, 1, 1, 0},
    Unit{"mV", voltage, 1, 1000, 0},
    Unit{"W", power, 1, 1, 0},
    Unit{"kW", power, 1000, 1, 0},
    Unit{"J", energy, 1, 1, 0},
    Unit{"kJ", energy, 1000, 1, 0},
    Unit{"kWh", energy, 3600000, 1, 0},
    Unit{"kJ/mm", energy_per_length, 1, 1, 0},
    Unit{"kJ/cm", energy_per_length, 1, 10, 0},
    Unit{"kJ/in", energy_per_length, 5, 127, 0},
    Unit{"J/mm", energy_per_length, 1, 1000, 0},
    Unit{"J/in", energy_per_length, 1, 25400, 0},
    Unit{"mm2", area, 1, 1, 0},
    Unit{"cm2", area, 100, 1, 0},
    Unit{"in2", area, 16129, 25, 0},
    Unit{"mm3", volume, 1, 1, 0},
    Unit{"l", volume, 1000000, 1, 0},
    Unit{"mm4", second_moment, 1, 1, 0},
    Unit{"cm4", second_moment, 10000, 1, 0},
    Unit{"in4", second_moment, 260144641, 625, 0},
    Unit{"mm/s2", acceleration, 1, 1, 0},
    Unit{"m/s2", acceleration, 1000, 1, 0},
    Unit{"N", force, 1, 1, 0},
    Unit{"kN", force, 1000, 1, 0},
    Unit{"lbf", force, 44482216152605, 10000000000000, 0},
    Unit{"N/mm", force_per_length, 1, 1, 0},
    Unit{"s", Dimension::time, 1, 1, 0},
    Unit{"ms", Dimension::time, 1, 1000, 0},
    Unit{"min", Dimension::time, 60, 1, 0},
    Unit{"h", Dimension::time, 3600, 1, 0},
    Unit{"K", temperature_difference, 1, 1, 0},
    Unit{"C", temperature, 1, 1, 0},
    Unit{"K", temperature, 1, 1, -273.15},
    Unit{"F", temperature, 5, 9, -32},
    Unit{"C", temperature_difference, 1, 1, 0},
    Unit{"F", temperature_difference, 5, 9, 0},
    Unit{"g", mass, 1, 1, 0},
    Unit{"kg", mass, 1000, 1, 0},
    Unit{"lb", mass, 45359237, 100000, 0},
    Unit{"g/cm3", density, 1, 1, 0},
    Unit{"kg/m3", density, 1, 1000, 0},
    Unit{"lb/in3", density, 453592370, 16387064, 0},
    Unit{"ml/100g", hydrogen, 1, 1, 0},
    Unit{"kg/h", mass_rate, 1, 1, 0},
    Unit{"lb/h", mass_rate, 45359237, 100000000, 0},
    Unit{"l/min", gas_flow, 1, 1, 0},
    Unit{"cfh", gas_flow, 28316846592, 60000000000, 0},
    Unit{"MPa", stress, 1, 1, 0},
    Unit{"psi", stress, 8896443230521, 1290320000000000, 0},
    Unit{"ksi", stress, 8896443230521, 1290320000000, 0},
    Unit{"W/(mm K)", conductivity, 1, 1, 0},
    Unit{"J/(mm3 K)", volumetric_heat, 1, 1, 0},
    Unit{"deg", angle, 1, 1, 0},
    Unit{"rad", angle, 180, pi, 0},
    Unit{"deg/s", angular_speed, 1, 1, 0},
    Unit{"W/(m2 K)", heat_transfer, 1, 1, 0},
    Unit{"%", percent, 1, 1, 0},
    Unit{"HV", hardness, 1, 1, 0},
    Unit{"mOhm", resistance, 1, 1, 0},
    Unit{"Hz", frequency, 1, 1, 0},
    Unit{"mm/(s A)", melting_alpha, 1, 1, 0},
    Unit{"1/(s A2)", melting_beta, 1, 1, 0},
};

struct KeySuffix {
  std::string_view suffix;
  std::string_view unit;
};

constexpr std::array suffixes = {
    KeySuffix{"_mm", "mm"},
    KeySuffix{"_mm2", "mm2"},
    KeySuffix{"_mm3", "mm3"},
    KeySuffix{"_mm4", "mm4"},
    KeySuffix{"_mm_s", "mm/s"},
    KeySuffix{"_mm_s2", "mm/s2"},
    KeySuffix{"_m_min", "m/min"},
    KeySuffix{"_A", "A"},
    KeySuffix{"_V", "V"},
    KeySuffix{"_W", "W"},
    KeySuffix{"_kW", "kW"},
    KeySuffix{"_J", "J"},
    KeySuffix{"_kJ_mm", "kJ/mm"},
    KeySuffix{"_kJ_in", "kJ/in"},
    KeySuffix{"_s", "s"},
    KeySuffix{"_ms", "ms"},
    KeySuffix{"_deg_s", "deg/s"},
    KeySuffix{"_W_m2K", "W/(m2 K)"},
    KeySuffix{"_min", "min"},
    KeySuffix{"_h", "h"},
    KeySuffix{"_C", "C"},
    KeySuffix{"_K", "K"},
    KeySuffix{"_g", "g"},
    KeySuffix{"_kg", "kg"},
    KeySuffix{"_kg_h", "kg/h"},
    KeySuffix{"_g_cm3", "g/cm3"},
    KeySuffix{"_ml_100g", "ml/100g"},
    KeySuffix{"_l", "l"},
    KeySuffix{"_l_min", "l/min"},
    KeySuffix{"_kWh", "kWh"},
    KeySuffix{"_HV", "HV"},
    KeySuffix{"_MPa", "MPa"},
    KeySuffix{"_N", "N"},
    KeySuffix{"_kN", "kN"},
    KeySuffix{"_N_mm", "N/mm"},
    KeySuffix{"_W_mmK", "W/(mm K)"},
    KeySuffix{"_J_mm3K", "J/(mm3 K)"},
    KeySuffix{"_mOhm", "mOhm"},
    KeySuffix{"_deg", "deg"},
    KeySuffix{"_pct", "%"},
    KeySuffix{"_Hz", "Hz"},
    KeySuffix{"_mm_s_A", "mm/(s A)"},
    KeySuffix{"_per_s_A2", "1/(s A2)"},
};

}  // namespace

std::span<const Unit> known_units() {
  return units;
}

const Unit* find_unit(std::string_view name) {
  for (const Unit& unit : units) {
    if (name == unit.name) return &unit;
  }
  return nullptr;
}

const Unit* find_unit(std::string_view name, Dimension dimension) {
  for (const Unit& unit : units) {
    if (unit.dimension == dimension && name == unit.name) return &unit;
  }
  return nullptr;
}

const Unit* unit_of_key(std::string_view key) {
  const KeySuffix* longest = nullptr;
  for (const KeySuffix& candidate : suffixes) {
    const bool longer = !longest || candidate.suffix.size() > longest->suffix.size();
    if (longer && key.size() > candidate.suffix.size() && key.ends_with(candidate.suffix))
      longest = &candidate;
  }
  if (!longest) return nullptr;
  const bool is_rate = key.find("_per_") != std::string_view::npos && !longest->suffix.starts_with("_per_");
  return is_rate ? nullptr : find_unit(longest->unit);
}

}  // namespace seamtakt
