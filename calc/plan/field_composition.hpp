#pragma once

#include <span>
#include <string_view>

#include "plan/field.hpp"

namespace seamtakt {

/// Symbols of the chemical elements, by atomic number (IUPAC).
std::span<const std::string_view> element_symbols();

namespace table {

/// A base metal's composition: an object of mass percentages by element symbol.
Field<BaseMetal> composition(const char* key, const char* label, const char* help);

}  // namespace table

}  // namespace seamtakt
