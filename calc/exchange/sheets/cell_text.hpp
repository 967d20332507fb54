#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/sentences/sentence_text.hpp"
#include "exchange/sheets/cell.hpp"

namespace seamtakt {

/// The only place where values of a report become text, in the language and units of the one who reads.

/// Significant digits of a number whose column states none.
inline constexpr int usual_digits = 5;

/// What a cell's column says of its numbers.
struct NumberForm {
  int digits = usual_digits;   ///< significant digits of a number without its own; 0: all of them
  std::string_view unit = {};  ///< in which they are given
};

/// "Heat input, kJ/mm".
std::string heading_text(const Heading& heading, const TextView& view);
/// As people read it: "-" where empty.
std::string cell_text(const SheetCell& cell, const TextView& view, const NumberForm& form = {});
/// Text for a file, all digits of a number; empty where the cell is. `unit`: of the column.
std::string file_text(const SheetCell& cell, const TextView& view, std::string_view unit = {});
/// The number that a file has, in the view's unit and all its digits; nothing where the cell is text.
std::optional<double> file_number(const SheetCell& cell, const TextView& view, std::string_view unit = {});

}  // namespace seamtakt
