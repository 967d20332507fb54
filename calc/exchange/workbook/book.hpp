#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// A cell of a table that somebody else made. A formula has the value that was stored with it.
struct BookCell {
  enum class Kind : char { empty, text, number, boolean, date, error };
  Kind kind = Kind::empty;
  /// It only shows the value of the cell to its left, with which it was merged: counts in heads alone.
  bool from_left = false;
  double number = 0;  ///< of a number; of a boolean 0 or 1
  /// Of a text, of a date (YYYY-MM-DD, with Thh:mm:ss where it has a time of day), of an error ("#N/A").
  std::string text;

  bool is_empty() const { return kind == Kind::empty; }
};

struct BookRow {
  std::size_t number = 0;  ///< from 1, as a spreadsheet shows it; of a CSV the line on which it begins
  bool is_hidden = false;
  std::vector<BookCell> cells;  ///< up to the last one that isn't empty

  const BookCell& at(std::size_t column) const;  ///< an empty cell beyond the last one
  bool is_empty() const;
};

struct BookSheet {
  std::string name;
  bool is_hidden = false;
  std::vector<BookRow> rows;         ///< in order; rows without a value may be missing
  std::vector<bool> hidden_columns;  ///< may be shorter than the rows
  std::size_t merged = 0;            ///< how many groups of cells were merged
  std::size_t formulas = 0;          ///< cells whose stored result was read

  bool is_hidden_column(std::size_t column) const {
    return column < hidden_columns.size() && hidden_columns[column];
  }
};

/// The tables of a workbook (Office Open XML or OpenDocument) or of a CSV file, which is one sheet.
struct Book {
  enum class Form : char { csv, xlsx, ods };
  std::string file;
  Form form = Form::csv;
  /// Of a CSV whose delimiter isn't a comma: its numbers may have one as decimal sign.
  bool has_decimal_comma = false;
  std::vector<BookSheet> sheets;
};

/// What is read at most of a stranger's workbook.
struct BookLimits {
  std::size_t file_bytes = std::size_t{64} << 20;
  std::size_t part_bytes = std::size_t{64} << 20;    ///< of a part, once it is inflated
  std::size_t total_bytes = std::size_t{128} << 20;  ///< of all parts that are read
  std::size_t parts = 4096;
  /// How many times longer than its packed bytes a part of more than a mebibyte may be. A sheet of numbers is
  /// five to thirty times longer, one of equal rows some hundred times.
  std::size_t ratio = 400;
  std::size_t xml_pieces = 6'000'000;  ///< elements and attributes of a part: each takes some 60 bytes
  std::size_t sheets = 256;
  std::size_t columns = 1024;
  std::size_t cells = 1'000'000;  ///< of all sheets, empty ones between others included
};

/// Reads a workbook or a CSV; which of them it is, its bytes tell and not its name. A merged group's value
/// belongs to each row of its first column; in its other columns it is marked `from_left`. Hidden sheets,
/// rows and columns are read. Errors: InputError where it is another kind of file (an older binary workbook,
/// one with a password, a text document are named), damaged, or beyond a limit; read_file's errors.
Book read_book(const std::string& path, const BookLimits& limits = {});
Book parse_book(std::string_view bytes, const std::string& file, const BookLimits& limits = {});

/// "C" of column 2, "AA" of column 26.
std::string column_letters(std::size_t column);

/// Where a cell is: "list.xlsx:Seams!C5", or "list.csv:5:3".
std::string cell_place(const Book& book, const BookSheet& sheet, std::size_t row_number, std::size_t column);

}  // namespace seamtakt
