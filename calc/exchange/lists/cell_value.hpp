#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/units/units.hpp"
#include "exchange/lists/list_columns.hpp"
#include "exchange/workbook/book.hpp"

namespace seamtakt {

/// Which signs a number in a text may have.
enum class DecimalSign : char {
  either,  ///< a point, or a comma where it can't be a sign for thousands
  point,
  comma  ///< a comma, or a point
};

/// How the numbers of a column are read.
struct NumberReading {
  const Unit* unit = nullptr;  ///< in which they are given; nullptr: the field's own
  DecimalSign decimal = DecimalSign::either;
};

/// The value of a cell as JSON text of the plan file, in the field's unit: numbers, texts and dates of a
/// workbook, numbers as text, numbers with a unit ("6 mm"), lists ("8; 12", one element stands for both of
/// two), intervals ("253 to 309", "2 .. 6", ">= 4"), points ("x y z; x y z"), choices in each language.
/// `column` may be a part: one element or one coordinate. The text isn't checked against the field's range.
/// Errors: InputError without a place where the cell can't be read.
std::string cell_json(const BookCell& cell, const ListColumn& column, const NumberReading& reading);

/// What a cell holds, for a message: "8,x" in quotes, a number, "the error #N/A".
Sentence found_in(const BookCell& cell);
/// The same as a person sees it, without quotes.
std::string shown_cell(const BookCell& cell);

/// Whether the cell asks to take a value out: a dash alone.
bool asks_to_clear(const BookCell& cell);

/// Items of a list in a text; an item in double quotes may hold separators.
std::vector<std::string> list_items(std::string_view text, std::string_view separators);

/// The text that list_items() gives back as these items.
std::string joined_items(const std::vector<std::string>& items);

}  // namespace seamtakt
