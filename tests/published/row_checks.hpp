#pragma once

#include <gtest/gtest.h>

#include <set>

#include "published/published_rows.hpp"
#include "support/source_path.hpp"

// What the tests of tests/published and of tests/second_route do with their rows.
namespace seamtakt::published {

/// Half of the last printed digit: "4.554" -> 0.0005, "1.2e3" -> 50.
inline double half_of_last_digit(const std::string& printed) {
  std::size_t exponent_mark = printed.find_first_of("eE");
  std::string mantissa = printed.substr(0, exponent_mark);
  int exponent = exponent_mark == std::string::npos ? 0 : std::stoi(printed.substr(exponent_mark + 1));
  std::size_t point = mantissa.find('.');
  int decimals = point == std::string::npos ? 0 : static_cast<int>(mantissa.size() - point - 1);
  return 0.5 * std::pow(10.0, exponent - decimals);
}

/// A reason begins with the tolerance that it is for: "2 %: ..." or "0.3: ..." in the result's unit.
inline double tolerance(const Row& row) {
  double printed = half_of_last_digit(row.expected);
  // A value that is just between two printed ones may be rounded either way.
  double between = 1e-9 * std::abs(std::stod(row.expected));
  if (row.tolerance_reason.empty()) return printed + between;
  std::size_t end = 0;
  double given = std::stod(row.tolerance_reason, &end);
  bool relative = row.tolerance_reason.substr(end).starts_with(" %");
  return relative ? given / 100 * std::abs(std::stod(row.expected)) : given;
}

struct Found {
  bool null = true;
  std::optional<double> number;
  std::string text;
};

inline Found of_value(const ResultValue<double>& value, int element) {
  if (element >= 0) {
    if (static_cast<std::size_t>(element) >= value.list.size()) return {};
    const auto& at = value.list[static_cast<std::size_t>(element)];
    return {!at, at, ""};
  }
  if (value.number) return {false, value.number, ""};
  if (value.text) return {false, std::nullopt, *value.text};
  if (value.boolean) return {false, std::nullopt, *value.boolean ? "true" : "false"};
  return {};
}

/// The row's key in an answer: "key", "key[0]", "u_key" (first order) or "mc_key" (Monte Carlo).
inline Found found_in(const QuantityAnswer& answered, std::string key) {
  for (auto [prefix, uncertainties] :
       {std::pair{"u_", &answered.u}, std::pair{"mc_", &answered.u_monte_carlo}})
    if (key.starts_with(prefix)) {
      auto at = uncertainties->find(key.substr(std::string(prefix).size()));
      return at == uncertainties->end() ? Found{} : Found{false, at->second, ""};
    }
  int element = -1;
  if (std::size_t bracket = key.find('['); bracket != std::string::npos) {
    element = std::stoi(key.substr(bracket + 1));
    key.resize(bracket);
  }
  auto at = answered.results.values.find(key);
  return at == answered.results.values.end() ? Found{} : of_value(at->second, element);
}

inline bool is_number(const std::string& text) {
  double value = 0;
  return parse_number(text, value);
}

inline void expect_number(const Row& row, const Found& found) {
  ASSERT_TRUE(found.number) << row.key << " isn't a number here";
  double expected = std::stod(row.expected), allowed = tolerance(row), error = *found.number - expected;
  EXPECT_LE(std::abs(error), allowed)
      << row.key << ": expected " << row.expected << ", got " << number_text(*found.number) << ", off by "
      << error << ", allowed " << allowed;
}

/// The row through the same function that the program calls.
inline void check(const Row& row) {
  const Quantity* quantity = find_quantity(row.quantity);
  ASSERT_TRUE(quantity) << "no such quantity";
  if (row.expected == no_value) {
    EXPECT_FALSE(row.clause.empty()) << "where was a check value looked for?";
    return;
  }
  QuantityAnswer answered = answer(*quantity, request_of(*quantity, row.inputs));
  Found found = found_in(answered, row.key);
  if (row.expected == "null") {
    EXPECT_TRUE(found.null);
    return;
  }
  ASSERT_FALSE(found.null) << row.key << " is null, expected " << row.expected;
  if (is_number(row.expected)) {
    expect_number(row, found);
  } else {
    EXPECT_EQ(found.text, row.expected) << row.key;
  }
}

inline void expect_reproduced(const std::filesystem::path& file) {
  for (const Row& row : rows_of(file)) {
    SCOPED_TRACE(row.place + " " + row.quantity + " " + row.inputs + " (" + row.source + ", " + row.clause +
                 ")");
    try {
      check(row);
    } catch (const InputError& error) {
      ADD_FAILURE() << error.what();
    }
  }
}

inline void expect_listed_sources(const std::vector<Row>& rows) {
  CsvTable sources = read_csv((std::filesystem::path(source_path()) / "reference/sources.csv").string());
  std::set<std::string> keys;
  for (const CsvRow& row : sources.rows) keys.insert(row.fields[sources.require("key")]);
  for (const Row& row : rows) EXPECT_TRUE(keys.contains(row.source)) << row.place << ": " << row.source;
}

inline void expect_reasons_for_tolerances(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    if (row.tolerance_reason.empty()) continue;
    std::size_t colon = row.tolerance_reason.find(": ");
    EXPECT_TRUE(colon != std::string::npos && row.tolerance_reason.size() > colon + 10) << row.place;
  }
}

inline void expect_known_keys(const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    const Quantity* quantity = find_quantity(row.quantity);
    ASSERT_TRUE(quantity) << row.place << ": " << row.quantity;
    bool known = std::any_of(quantity->results.begin(), quantity->results.end(),
                             [&](const ResultSpec& result) { return result_key(row) == result.key; });
    EXPECT_TRUE(known) << row.place << ": " << row.key;
  }
}

inline std::string table_name(const testing::TestParamInfo<std::filesystem::path>& info) {
  std::string name = info.param.stem().string();
  std::replace_if(
      name.begin(), name.end(), [](char c) { return !std::isalnum(static_cast<unsigned char>(c)); }, '_');
  return name;
}

}  // namespace seamtakt::published
