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

std::vector<std::string_view> list_words(const ColumnValue& value) {
  std::vector<std::string_view> words;
  const auto* text = std::get_if<std::string_view>(&value);
  for (std::string_view rest = text ? *text : std::string_view(); !rest.empty();) {
    const std::size_t comma = rest.find(", ");
    words.push_back(rest.substr(0, comma));
    rest = comma == std::string_view::npos ? std::string_view() : rest.substr(comma + 2);
  }
  return words;
}

void write_list(JsonWriter& json, const ColumnValue& value) {
  json.begin_array();
  for (const std::string_view word : list_words(value)) json.value(word);
  json.end_array();
}

}  // namespace seamtakt
