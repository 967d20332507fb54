#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// Values of a report as data: what a page, a workbook or a CSV shows is made of them at its edge
/// (cell_text.hpp), so that language and units are choices of the one who reads.

/// A fixed text of the program, known by its English. Not for text that a file or a person gave.
struct Words {
  std::string_view english;  ///< a literal
};

/// "Heat input, kJ/mm": of a column, or of a row whose number stands beside it.
struct Heading {
  Words label;
  std::string_view unit = {};  ///< a literal; empty where there is none
};

/// A number with its unit: "8.2 mm/s".
struct Measure {
  double value = 0;
  std::string_view unit = {};  ///< a literal
  int digits = 0;              ///< significant digits shown to people; 0: all that it was stated with
};

/// "4.5 to 6 mm", "from 4.5 mm", "up to 6 mm", "not stated"; all digits.
struct MeasureRange {
  std::optional<double> lower, upper;
  std::string_view unit = {};  ///< a literal
};

/// A whole number, shown whole whatever its column's digits are.
struct Count {
  std::uint64_t value = 0;
};

/// A sentence of the table of sentences, with what fills its holes.
struct SentenceCell {
  Sentence sentence;
};

/// Two numbers of one column: "4.5 to 6" for people, two columns of a file.
struct Pair {
  double low = 0, high = 0;
};

struct PatternCell;

/// A value: monostate is an empty one, std::string is text of a file or a person, double a number whose unit
/// its column names.
using SheetCell = std::variant<std::monostate, double, std::string, Count, Words, Heading, Measure,
                               MeasureRange, Pair, SentenceCell, PatternCell>;

/// A fixed text with values in it: {{"{1}, revision {2}"}, {id, revision}}.
struct PatternCell {
  Words pattern;
  std::vector<SheetCell> values;
};

}  // namespace seamtakt
