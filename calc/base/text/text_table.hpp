#pragma once

#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// A table for people: headings, a row of units where any column has one, numbers to the right with their
/// decimal signs below one another, text to the left. Widths count columns of a terminal, not bytes.
class TextTable {
 public:
  struct Column {
    std::string heading;
    std::string unit;
    bool is_text = false;
    /// Significant digits of numbers.
    int digits = 4;
  };

  explicit TextTable(std::vector<Column> columns) : columns_(std::move(columns)) {}

  /// A number of the next column; no value is shown as "-".
  TextTable& cell(std::optional<double> number);
  TextTable& cell(double number) { return cell(std::optional<double>(number)); }
  /// A count: all its digits.
  TextTable& cell(std::integral auto count) { return number_cell(std::to_string(count)); }
  /// Text of the next column; control characters are shown as \xNN.
  TextTable& cell(std::string_view text);
  TextTable& cell(const char* text) { return cell(std::string_view(text)); }
  TextTable& cell(const std::string& text) { return cell(std::string_view(text)); }

  std::size_t rows() const { return (cells_.size() + columns_.size() - 1) / columns_.size(); }

  /// The whole table, a newline after each row, no blanks at a line's end. Cells missing from the last row
  /// are empty.
  std::string text() const;

 private:
  struct Layout;
  TextTable& number_cell(std::string text);
  Layout layout_of(std::size_t column) const;

  std::vector<Column> columns_;
  struct Cell {
    std::string text;
    bool is_number = false;
  };
  std::vector<Cell> cells_;
};

}  // namespace seamtakt
