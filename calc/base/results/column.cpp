#include "base/results/column.hpp"

namespace seamtakt {

std::optional<double> column_number(const ColumnValue& value) {
  if (const double* number = std::get_if<double>(&value)) return *number;
  if (const int* number = std::get_if<int>(&value)) return *number;
  if (const auto* count = std::get_if<std::uint64_t>(&value)) return static_cast<double>(*count);
  return std::nullopt;
}

void write_value(JsonWriter& json, const ColumnValue& value) {
  if (const auto* pair = std::get_if<std::array<double, 2>>(&value)) {
    json.value(std::span<const double>(*pair));
  } else {
    std::visit(
        [&json]<class T>(const T& one) {
          if constexpr (std::is_same_v<T, std::monostate>) {
            json.null();
          } else if constexpr (std::is_same_v<T, const Sentence*>) {
            json.value(one->english());
          } else if constexpr (!std::is_same_v<T, std::array<double, 2>>) {
            json.value(one);
          }
        },
        value);
  }
}

void write_list(JsonWriter& json, const ColumnValue& value) {
  json.begin_array();
  each_list_word(value, [&](std::string_view word) { json.value(word); });
  json.end_array();
}

}  // namespace seamtakt
