#pragma once

#include <string>

#include "base/units/units.hpp"

namespace seamtakt {

/// In which units values are shown. Files and results stay in their canonical units.
enum class UnitSystem { si, us };

/// The unit in which values of `unit` are shown; `unit` itself where the system has no other.
const Unit& shown_unit(const Unit& unit, UnitSystem system);

/// A unit's name as people read it: superscripts, degree sign ("mm2" is "mm²", "C" is "°C").
std::string readable_unit(std::string_view unit);

}  // namespace seamtakt
