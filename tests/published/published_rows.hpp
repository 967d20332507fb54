#pragma once

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <string>
#include <vector>

#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "formula/quantities/quantity.hpp"
#include "support/source_path.hpp"

namespace seamtakt::published {

/// One check: what a source prints for given inputs (tests/published), or what a second program has computed
/// for them from the source's formula (tests/second_route).
struct Row {
  std::string place;     ///< "cooling.csv:12"
  std::string quantity;  ///< as in `seamtakt calc`
  std::string inputs;    ///< "thickness=10; preheat=100 C; u-thickness=2%"; a flag has no value: "cyclic"
  std::string key;       ///< result key; "key[0]" for an element of a list, "u_key" for an uncertainty
  std::string expected;  ///< as printed; "null", or "no check value" where the source prints none
  std::string source, clause;
  std::string tolerance_reason;  ///< empty: half the last printed digit; else "2 %: why"
};

inline constexpr const char* no_value = "no check value";

/// Values as printed by outside sources.
inline std::filesystem::path outside_folder() {
  return std::filesystem::path(source_path()) / "tests/published";
}

/// Values recalculated by the Python program that is there, and the waveforms that rows name.
inline std::filesystem::path second_route_folder() {
  return std::filesystem::path(source_path()) / "tests/second_route";
}

inline std::vector<Row> rows_of(const std::filesystem::path& file) {
  CsvTable table = read_csv(file.string());
  std::vector<Row> rows;
  auto column = [&](const CsvRow& row, const char* name) { return row.fields[table.require(name)]; };
  for (const CsvRow& row : table.rows)
    rows.push_back({file.filename().string() + ":" + std::to_string(row.line), column(row, "quantity"),
                    column(row, "inputs"), column(row, "key"), column(row, "expected"), column(row, "source"),
                    column(row, "clause"), column(row, "tolerance_reason")});
  return rows;
}

inline std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> found;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".csv") found.push_back(entry.path());
  std::sort(found.begin(), found.end());
  return found;
}

inline std::vector<Row> rows_in(const std::filesystem::path& folder) {
  std::vector<Row> rows;
  for (const auto& file : files_in(folder))
    for (auto& row : rows_of(file)) rows.push_back(std::move(row));
  return rows;
}

/// Of both folders.
inline std::vector<Row> all_rows() {
  std::vector<Row> rows = rows_in(outside_folder());
  for (auto& row : rows_in(second_route_folder())) rows.push_back(std::move(row));
  return rows;
}

/// The result that a row is about: "key" of "key[0]", "u_key" and "mc_key".
inline std::string result_key(const Row& row) {
  std::string key = row.key.substr(0, row.key.find('['));
  for (const char* prefix : {"u_", "mc_"})
    if (key.starts_with(prefix)) key.erase(0, std::string(prefix).size());
  return key;
}

inline std::string trimmed(std::string_view text) {
  std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

inline const OptionSpec& option_named(const Quantity& quantity, const std::string& name) {
  for (const auto& option : quantity.options)
    if (name == option.name) return option;
  throw InputError("tests/published", name, "an option of " + std::string(quantity.name));
}

inline double number_in(const std::string& text, const OptionSpec& option) {
  static const Unit dimensionless{"", Dimension::none, 1, 1, 0};
  const Unit* unit = *option.unit ? find_unit(option.unit) : nullptr;
  return parse_quantity(text, unit ? *unit : dimensionless, "--" + std::string(option.name));
}

/// time, voltage and current from a file below tests/second_route.
inline void add_series(const std::string& name, QuantityRequest& request) {
  CsvTable table = read_csv((second_route_folder() / name).string());
  for (const char* column : {"time", "voltage", "current"}) {
    std::vector<double>& series = request.inputs.series[column];
    for (const CsvRow& row : table.rows) {
      double value = 0;
      if (!parse_number(row.fields[table.require(column)], value))
        throw InputError(name, "no number", "a number");
      series.push_back(value);
    }
  }
}

inline void add_input(const Quantity& quantity, const std::string& name, const std::string& text,
                      QuantityRequest& request) {
  if (name.starts_with("u-")) {
    const OptionSpec& option = option_named(quantity, name.substr(2));
    bool relative = text.ends_with('%') && std::string_view(option.unit) != "%";
    auto value = request.inputs.numbers.find(option.name);
    double of_value = value == request.inputs.numbers.end() ? 0 : std::abs(value->second);
    request.standard_uncertainty[option.name] =
        relative ? of_value * std::stod(text) / 100 : number_in(text, option);
    return;
  }
  const OptionSpec& option = option_named(quantity, name);
  switch (option.kind) {
    case OptionKind::number:
      request.inputs.numbers[name] = number_in(text, option);
      return;
    case OptionKind::series:
      add_series(text, request);
      return;
    case OptionKind::text:
    case OptionKind::flag:
      request.inputs.texts[name] = text;
      return;
  }
}

/// What a row's inputs ask. InputError where they aren't the quantity's.
inline QuantityRequest request_of(const Quantity& quantity, const std::string& inputs) {
  QuantityRequest request;
  std::string_view rest = inputs;
  while (!trimmed(rest).empty()) {
    std::size_t end = rest.find(';');
    std::string part = trimmed(rest.substr(0, end));
    std::size_t equals = part.find('=');
    std::string text = equals == std::string::npos ? "yes" : trimmed(part.substr(equals + 1));
    add_input(quantity, trimmed(part.substr(0, equals)), text, request);
    rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
  }
  return request;
}

}  // namespace seamtakt::published
