#pragma once

#include <string>

#include "plan/fields/field.hpp"

namespace seamtakt::desk {

/// What a person typed into a field of numbers, as the plan's texts have it: a dot as decimal sign, commas
/// between the values of a list. A comma is taken as the decimal sign too. Values of a list are separated by
/// semicolons ("8,5; 12") or by commas ("8.5, 12"); without a semicolon a comma between two digits separates
/// values, or is the decimal sign where that of the view's language is one (`decimal_comma`). A text that can
/// be read in two ways keeps its semicolons, which no plan's text of a list has: it is refused.
std::string plain_numbers(std::string text, FieldKind kind, bool decimal_comma);

}  // namespace seamtakt::desk
