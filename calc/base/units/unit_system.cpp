#include "base/units/unit_system.hpp"

namespace seamtakt {

namespace {

struct UsUnit {
  std::string_view file;
  const char* shown;
};

/// What a US shop reads instead of the file's unit.
constexpr UsUnit us_units[] = {
    {"mm", "in"},     {"mm/s", "in/min"}, {"m/min", "in/min"}, {"kJ/mm", "kJ/in"}, {"mm2", "in2"},
    {"mm4", "in4"},   {"C", "F"},         {"kg", "lb"},        {"g", "lb"},        {"g/cm3", "lb/in3"},
    {"kg/h", "lb/h"}, {"l/min", "cfh"},   {"MPa", "ksi"},      {"N", "lbf"},       {"kN", "lbf"},
};

struct ReadableUnit {
  std::string_view plain;
  const char* readable;
};

constexpr ReadableUnit readable_units[] = {
    {"C", "°C"},          {"F", "°F"},        {"deg", "°"},     {"mOhm", "mΩ"},
    {"mm2", "mm²"},       {"in2", "in²"},     {"cm2", "cm²"},   {"mm3", "mm³"},
    {"mm4", "mm⁴"},       {"in4", "in⁴"},     {"cm4", "cm⁴"},   {"g/cm3", "g/cm³"},
    {"lb/in3", "lb/in³"}, {"mm/s2", "mm/s²"}, {"m/s2", "m/s²"}, {"kg/m3", "kg/m³"},
};

/// Parts of composite units ("J/(mm3 K)", "mm/(s A2)") that read better.
constexpr ReadableUnit readable_parts[] = {
    {"cm3", "cm³"}, {"in3", "in³"}, {"mm3", "mm³"}, {"/s2", "/s²"}, {"A2", "A²"}};

}  // namespace

const Unit& shown_unit(const Unit& unit, UnitSystem system) {
  if (system == UnitSystem::us)
    for (const UsUnit& us : us_units)
      if (us.file == unit.name)
        if (const Unit* other = find_unit(us.shown, unit.dimension)) return *other;
  return unit;
}

std::string readable_unit(std::string_view unit) {
  for (const ReadableUnit& each : readable_units)
    if (each.plain == unit) return each.readable;
  std::string text(unit);
  for (const ReadableUnit& part : readable_parts)
    for (std::size_t at = 0; (at = text.find(part.plain, at)) != std::string::npos;) {
      text.replace(at, part.plain.size(), part.readable);
      at += std::string_view(part.readable).size();
    }
  return text;
}

}  // namespace seamtakt
