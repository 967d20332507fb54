#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/finding.hpp"
#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// Values of a report as data: what a page, a workbook or a CSV shows is made of them at its edge
/// (cell_text.hpp), so that language and units are choices of the one who reads. Fixed texts are words of the
/// program ("Heat input"_word); text that a file or a person gave is std::string.

/// "Heat input, kJ/mm": of a column, or of a row whose number is beside it.
struct Heading {
  Word label;
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

/// A number whose unit is elsewhere in its row: in the row's heading, or in a UnitCell.
struct Figure {
  double value = 0;
  std::string unit;
};

/// The unit of a row's figures.
struct UnitCell {
  std::string unit;
};

/// A whole number, shown whole whatever its column's digits are.
struct Count {
  std::uint64_t value = 0;
};

/// A word of the program that a file or a record names: a field's choice, a verdict. One that is no word of
/// the program is shown as it is.
struct Choice {
  std::string english;
};

/// How severe a finding is: a word, in tables for people with its mark.
struct SeverityCell {
  Severity severity = Severity::note;
};

/// A name that is a key in files and a heading for people.
struct KeyCell {
  std::string key;
  Heading heading;
};

/// A finding's source.
struct SourceCell {
  std::string english;
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
using SheetCell =
    std::variant<std::monostate, double, std::string, Count, Word, Heading, Measure, MeasureRange, Figure,
                 UnitCell, Pair, Choice, KeyCell, SourceCell, SentenceCell, SeverityCell, PatternCell>;

/// A fixed text with values in it: {"{1}, revision {2}"_word, {id, revision}}.
struct PatternCell {
  Word pattern;
  std::vector<SheetCell> values;
};

}  // namespace seamtakt
