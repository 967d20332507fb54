#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// What is measured. Each has one canonical unit, the one that files and results use.
enum class Dimension {
  none,
  length,
  area,
  second_moment,
  speed,
  current,
  voltage,
  power,
  energy,
  energy_per_length,
  acceleration,
  force,
  time,
  temperature,
  temperature_difference,
  mass,
  density,
  hydrogen,
  mass_rate,
  gas_flow,
  stress,
  conductivity,
  volumetric_heat,
  angle,
  angular_speed,
  heat_transfer,
  percent,
  volume,
  hardness,
  force_per_length,
  resistance,
  frequency,
  melting_alpha,
  melting_beta
};

/// A unit as people write it: value_in_canonical = (value + offset) * multiply / divide.
/// Whole factors keep what a person typed exact as far as doubles allow.
struct Unit {
  const char* name;  ///< "cm/min"
  Dimension dimension;
  double multiply, divide, offset;
};

std::span<const Unit> known_units();

/// The unit named `name`; nullptr where unknown. Case matters ("mV" is not "MV"). "C" and "F" are
/// temperatures, "K" is a difference (files and results state temperatures in C); "" is the number 1.
const Unit* find_unit(std::string_view name);

/// The unit named `name` among those of one dimension; nullptr where there is none.
const Unit* find_unit(std::string_view name, Dimension dimension);

/// The unit of a difference or an uncertainty of a quantity in `unit`: 5 F of uncertainty is 5/9 C,
/// without the offset. The unit itself where it has no offset.
const Unit& difference_unit(const Unit& unit);

double to_canonical(double value, const Unit& from);
double from_canonical(double value, const Unit& to);

/// Converts a value from unit `from` to unit `to`; both of one dimension.
double convert(double value, const Unit& from, const Unit& to);

/// Parses "45cm/min", "45 cm/min" or a bare "7.5" (then in `bare`) and returns it in `bare`.
/// '.' is the decimal sign; the number must be finite. Throws InputError{where, ...}; for an unknown
/// or mismatched unit the message names the units that fit.
double parse_quantity(std::string_view text, const Unit& bare, const std::string& where);

/// The units of one dimension, for messages: "mm/s, cm/min, m/min, mm/min or in/min".
Sentence units_that_fit(Dimension dimension);

/// The unit that a key's suffix names: "travel_speed_mm_s" -> mm/s, "CET" -> nullptr. A price or a rate
/// ("price_per_kg", "units_per_h") has none.
const Unit* unit_of_key(std::string_view key);

/// Shortest text that reads back as the same double, '.' as the decimal sign, whatever the locale.
std::string number_text(double value);
void append_number_text(std::string& out, double value);

/// `value` with `digits` significant digits (1 to 17), without zeros at the end, and without exponent where
/// that reads better: "0.8134", "1041.4", "5".
std::string rounded_text(double value, int digits);

}  // namespace seamtakt
