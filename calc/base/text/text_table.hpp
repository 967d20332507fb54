#pragma once

#include <array>
#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/sentences/sentence_text.hpp"

namespace seamtakt {

/// A table for people in their language and units: headings, a row of units where any column has one, numbers
/// to the right with their decimal signs below one another, text to the left. Widths count columns of a
/// terminal, not bytes.
class TextTable {
 public:
  /// A word of the program, or a text of a person or a file, which is shown as it is.
  class Heading {
   public:
    Heading(Word word) : text_(word) {}
    Heading(std::string text) : text_(std::move(text)) {}
    Heading(const char* text) : text_(std::string(text)) {}

    std::string shown(const TextView& view) const;

   private:
    std::variant<Word, std::string> text_;
  };

  struct Column {
    Heading heading;
    /// In which its numbers are given; they are shown in the view's unit.
    std::string unit;
    bool is_text = false;
    /// Significant digits of numbers.
    int digits = 4;
  };

  explicit TextTable(std::vector<Column> columns, const TextView& view = TextView::plain_english());

  /// A number of the next column; no value is shown as "-".
  TextTable& cell(std::optional<double> number);
  TextTable& cell(double number) { return cell(std::optional<double>(number)); }
  /// Two numbers of the next column: "12 to 15".
  TextTable& cell(const std::array<double, 2>& range);
  /// A number in a unit of its own, where the column's rows differ in it.
  TextTable& cell(const UnitValue& number) { return number_cell(view_.number(number)); }
  /// A difference of two such numbers.
  TextTable& difference_cell(const UnitValue& number) { return number_cell(view_.difference(number)); }
  /// A count: all its digits.
  TextTable& cell(std::integral auto count) { return number_cell(std::to_string(count)); }
  /// Text of the next column; control characters are shown as \xNN.
  TextTable& cell(std::string_view text);
  TextTable& cell(const char* text) { return cell(std::string_view(text)); }
  TextTable& cell(const std::string& text) { return cell(std::string_view(text)); }
  TextTable& cell(Word word) { return cell(view_.word(word)); }
  TextTable& cell(const Sentence& sentence);

  std::size_t rows() const { return (cells_.size() + columns_.size() - 1) / columns_.size(); }

  /// The whole table, a newline after each row, no blanks at a line's end. Cells missing from the last row
  /// are empty.
  std::string text() const;

 private:
  struct Layout;
  const Column& next_column() const { return columns_[cells_.size() % columns_.size()]; }
  TextTable& number_cell(std::string text);
  Layout layout_of(std::size_t column) const;

  std::vector<Column> columns_;
  TextView view_;
  std::vector<std::string> headings_, units_;  ///< as they are shown
  struct Cell {
    std::string text;
    bool is_number = false;
  };
  std::vector<Cell> cells_;
};

}  // namespace seamtakt
