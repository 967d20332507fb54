#pragma once

#include <map>
#include <string>

#include "formula/quantities/quantity.hpp"

namespace seamtakt::cli {

/// Samples that may be asked for with --monte-carlo.
inline constexpr std::uint64_t least_samples = 2, most_samples = 100'000'000;

/// What a person or a request gave for one quantity, as text: values by the names of the options.
struct CalcArguments {
  std::map<std::string, std::string> given, uncertainty;
  std::size_t monte_carlo = 0;
  bool explain = false;
};

/// InputError at the option whose text can't be used.
QuantityAnswer calc_answer(const Quantity& quantity, const CalcArguments& arguments);

/// The JSON document of `calc QUANTITY --json`.
std::string calc_json(const Quantity& quantity, const QuantityAnswer& answer, bool explain);

}  // namespace seamtakt::cli
