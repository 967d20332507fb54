#pragma once

#include <span>
#include <string_view>

#include "plan/fields/field_builders.hpp"

namespace seamtakt {

/// Symbols of the chemical elements, by atomic number (IUPAC).
std::span<const std::string_view> element_symbols();

namespace table {

/// A metal's composition: an object of mass percentages by element symbol; `keys` has the file's keys of that
/// object.
FieldInfo composition(const char* key, const char* label, Member<CompositionPct> composition,
                      Member<FileKeys> keys, const char* help);

}  // namespace table

}  // namespace seamtakt
