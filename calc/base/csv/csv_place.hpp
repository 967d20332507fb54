#pragma once

#include <string>
#include <string_view>

#include "base/csv/csv.hpp"
#include "base/error.hpp"

namespace seamtakt {

/// "FILE:LINE:COLUMN" of a field of a table that was parsed from `text`; the column counts characters.
std::string field_place(std::string_view text, const CsvTable& table, const CsvRow& row, std::size_t field);

/// InputError at a field: "found "WHAT", expected EXPECTED".
[[noreturn]] void refuse_field(std::string_view text, const CsvTable& table, const CsvRow& row,
                               std::size_t field, Phrase expected);

}  // namespace seamtakt
