#pragma once

#include <string>

#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

/// A derived value as people read it: rounded to `digits` significant digits, "-" where null, "a to b" for a
/// pair.
std::string column_text(const ColumnValue& value, int digits);

/// "Heat input, kJ/mm".
std::string column_heading(const char* label, const char* unit);

}  // namespace seamtakt
