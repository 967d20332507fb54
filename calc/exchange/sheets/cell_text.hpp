#pragma once

#include <string>

#include "exchange/sheets/cell.hpp"

namespace seamtakt {

/// The only place where values of a report become text.

/// Significant digits of a number whose column states none.
inline constexpr int usual_digits = 5;

std::string words_text(Words words);
/// "Heat input, kJ/mm".
std::string heading_text(const Heading& heading);
/// As people read it: "-" where empty. `digits`: significant digits of a number without its own; 0: all of
/// them.
std::string cell_text(const SheetCell& cell, int digits = usual_digits);
/// Text for a file, all digits of a number; empty where the cell is.
std::string file_text(const SheetCell& cell);

}  // namespace seamtakt
