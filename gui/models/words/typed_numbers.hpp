#pragma once

#include <string>

#include "plan/fields/field.hpp"

namespace seamtakt::desk {

/// What a person typed into a field of numbers, as the plan's texts have it: a dot as decimal sign, commas
/// between the values of a list. A comma is taken as the decimal sign too. Values of a list are separated by
/// semicolons ("8,5; 12") or by commas ("8.5, 12"); without a semicolon a comma between two digits separates
/// values, or is the decimal sign where that of the view's language is one (`decimal_comma`). A text that can
/// be read in two ways keeps its semicolons, which no plan's text of a list has: it is refused.
/// An interval is two bounds ("253 to 309", "253 bis 309", "253 .. 309") or one ("from 253", "up to 309").
std::string plain_numbers(std::string text, FieldKind kind, bool decimal_comma);

/// The inverse, as the desk shows it: semicolons between the values of any list, a comma as decimal sign
/// where the language has it. The bounds of an interval stay apart by "..".
std::string shown_numbers(std::string text, FieldKind kind, bool decimal_comma);

}  // namespace seamtakt::desk
