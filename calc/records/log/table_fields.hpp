#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/csv/csv_place.hpp"

namespace seamtakt {

/// The field of a column that a table may lack; empty where it does.
std::string optional_field(const CsvRow& row, int column);

/// A pass's number from such a column; empty where there is none. InputError: no whole number from 1.
std::optional<int> optional_pass(std::string_view text, const CsvTable& table, const CsvRow& row, int column);

}  // namespace seamtakt
