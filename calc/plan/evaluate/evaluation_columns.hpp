#pragma once

#include <array>
#include <limits>
#include <optional>
#include <span>
#include <string_view>
#include <variant>

#include "plan/evaluate/evaluation.hpp"

namespace seamtakt {

/// A derived value as tables, JSON and the desk show it; monostate is null. Borrows the text it names.
using ColumnValue = std::variant<std::monostate, double, int, std::string_view, std::array<double, 2>>;

/// One derived value, described once for the CLI's tables and JSON, the report's columns and the desk.
template <class Row>
struct Column {
  const char* key;    ///< the contract's key, with its unit
  const char* label;  ///< table heading
  const char* unit;   ///< "" where dimensionless or text
  int digits;         ///< significant digits shown to people
  bool brief;         ///< stands in the short table
  const char* help;   ///< meaning, for a tooltip
  ColumnValue (*value)(const Row&);
  /// Numbers up to this are shown to people as "none": what needs no more than the shop's temperature.
  double none_up_to = -std::numeric_limits<double>::infinity();

  /// As people see it; files and JSON have the number.
  ColumnValue shown(const Row& row) const {
    const ColumnValue as_it_is = value(row);
    const double* number = std::get_if<double>(&as_it_is);
    if (number && *number <= none_up_to) return std::string_view("none");
    return as_it_is;
  }
};

std::span<const Column<PassEvaluation>> pass_columns();
std::span<const Column<SeamEvaluation>> seam_columns();
std::span<const Column<WeldmentEvaluation>> weldment_columns();

/// The column with this key; nullptr where there is none.
template <class Row>
const Column<Row>* find_column(std::span<const Column<Row>> columns, std::string_view key) {
  for (const auto& column : columns)
    if (key == column.key) return &column;
  return nullptr;
}

}  // namespace seamtakt
