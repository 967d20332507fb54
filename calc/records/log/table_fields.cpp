#include "records/log/table_fields.hpp"

#include <charconv>

namespace seamtakt {

std::string optional_field(const CsvRow& row, int column) {
  return column < 0 ? std::string() : row.fields[static_cast<std::size_t>(column)];
}

std::optional<int> optional_pass(std::string_view text, const CsvTable& table, const CsvRow& row,
                                 int column) {
  const std::string number = optional_field(row, column);
  if (number.empty()) return std::nullopt;
  int pass = 0;
  const auto end = std::from_chars(number.data(), number.data() + number.size(), pass);
  if (end.ec != std::errc() || end.ptr != number.data() + number.size() || pass < 1)
    refuse_field(text, table, row, static_cast<std::size_t>(column), "a whole number from 1"_word);
  return pass;
}

}  // namespace seamtakt
