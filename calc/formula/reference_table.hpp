#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "formula/note.hpp"

namespace seamtakt {

/// A table of reference/ (a standard's limits, a material's constants) read by column name. A person may edit
/// it, so every cell that can't be used is an InputError "FILE:LINE: found ..., expected ...".
class ReferenceTable {
 public:
  /// name: file name within reference/, e.g. "iso5817.csv".
  explicit ReferenceTable(std::string_view name);

  /// Where it was read: "reference/iso5817.csv", or the file of the folder that overrides it.
  const std::string& path() const { return table_.file; }
  std::size_t size() const { return table_.rows.size(); }
  const std::string& text(std::size_t row, std::string_view column) const;
  /// A finite number.
  double number(std::size_t row, std::string_view column) const;
  /// A finite number, both limits included.
  double number_within(std::size_t row, std::string_view column, double least, double most) const;
  double positive(std::size_t row, std::string_view column) const;
  /// A finite number, or nothing where the cell is empty.
  std::optional<double> number_or_empty(std::size_t row, std::string_view column) const;
  /// Column "basis": read, part-read, recalled, derived or common-practice.
  SourceBasis basis(std::size_t row) const;
  /// InputError at a cell.
  [[noreturn]] void refuse(std::size_t row, std::string_view column, Phrase expected) const;

 private:
  CsvTable table_;
};

}  // namespace seamtakt
