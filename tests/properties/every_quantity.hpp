#pragma once

#include <set>

#include "published/published_rows.hpp"

namespace seamtakt::published {

/// A working set of inputs of one quantity: the rows' inputs, outside and recalculated, each once.
struct Case {
  const Quantity* quantity;
  std::string inputs;
};

inline std::vector<Case> every_case() {
  std::vector<Case> cases;
  std::set<std::string> seen;
  for (const Row& row : all_rows())
    if (row.expected != no_value && seen.insert(row.quantity + " " + row.inputs).second)
      cases.push_back({find_quantity(row.quantity), row.inputs});
  return cases;
}

/// One case for each set of options that a quantity is used with.
inline std::vector<Case> one_case_per_form() {
  std::vector<Case> cases;
  std::set<std::string> seen;
  for (const Case& each : every_case()) {
    QuantityRequest request = request_of(*each.quantity, each.inputs);
    std::string form = each.quantity->name;
    for (const auto& [name, value] : request.inputs.numbers) form += " " + name;
    for (const auto& [name, text] : request.inputs.texts)
      form += " " + name + (name == "composition" || name == "process" ? "" : "=" + text);
    if (seen.insert(form).second) cases.push_back(each);
  }
  return cases;
}

/// The numbers that a quantity computes with, defaults included.
inline std::map<std::string, double, std::less<>> numbers_with_defaults(const Quantity& quantity,
                                                                        const QuantityRequest& request) {
  auto numbers = request.inputs.numbers;
  for (const auto& option : quantity.options)
    if (option.kind == OptionKind::number && option.default_text && !numbers.contains(option.name))
      numbers[option.name] = number_in(option.default_text, option);
  return numbers;
}

}  // namespace seamtakt::published
