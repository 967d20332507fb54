#pragma once

#include <span>
#include <string_view>

#include "plan/fields/field.hpp"

namespace seamtakt {

/// Symbols of the chemical elements, by atomic number (IUPAC).
std::span<const std::string_view> element_symbols();

namespace table {

/// A metal's composition: an object of mass percentages by element symbol. T: BaseMetal or Wire.
template <class T>
Field<T> composition(const char* key, const char* label, CompositionPct T::*composition, FileKeys T::*keys,
                     const char* help);

}  // namespace table

}  // namespace seamtakt
