#include "exchange/sheets/column_text.hpp"

#include "base/units/units.hpp"

namespace seamtakt {

std::string column_text(const ColumnValue& value, int digits) {
  if (const double* number = std::get_if<double>(&value)) return rounded_text(*number, digits);
  if (const int* number = std::get_if<int>(&value)) return std::to_string(*number);
  if (const auto* count = std::get_if<std::uint64_t>(&value)) return std::to_string(*count);
  if (const bool* truth = std::get_if<bool>(&value)) return *truth ? "yes" : "no";
  if (const auto* text = std::get_if<std::string_view>(&value)) return std::string(*text);
  if (const auto* pair = std::get_if<std::array<double, 2>>(&value))
    return rounded_text((*pair)[0], digits) + " to " + rounded_text((*pair)[1], digits);
  return "-";
}

std::string column_heading(const char* label, const char* unit) {
  return *unit ? std::string(label) + ", " + unit : std::string(label);
}

}  // namespace seamtakt
