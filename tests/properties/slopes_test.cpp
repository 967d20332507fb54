// The derivatives from which uncertainty follows, against central differences, for every quantity and option.
#include <gtest/gtest.h>

#include "properties/every_quantity.hpp"

namespace seamtakt::published {
namespace {

using Numbers = std::map<std::string, double, std::less<>>;

/// Results that are numbers, at one value of one option; empty where it isn't accepted there.
std::optional<Numbers> results_at(const Quantity& quantity, QuantityRequest request, const std::string& name,
                                  double value) {
  request.inputs.numbers[name] = value;
  request.standard_uncertainty.clear();
  try {
    Numbers numbers;
    for (const auto& [key, result] : answer(quantity, request).results.values)
      if (result.number) numbers[key] = *result.number;
    return numbers;
  } catch (const InputError&) {
    return std::nullopt;
  }
}

struct Difference {
  double left, right, noise;
  double central() const { return (left + right) / 2; }
  /// Left and right slopes differ at a kink or a step: there no derivative is claimed.
  bool smooth() const {
    double scale = std::max(std::abs(left), std::abs(right));
    return std::abs(left - right) <= 0.01 * scale + noise;
  }
};

Difference difference(double below, double at, double above, double step) {
  double size = std::max({std::abs(below), std::abs(at), std::abs(above)});
  return {(at - below) / step, (above - at) / step, 1e-13 * size / step};
}

struct SlopesTally {
  int compared = 0, kinks = 0;
};

void compare_slopes(const Case& each, const std::string& name, double value, SlopesTally& tally) {
  QuantityRequest request = request_of(*each.quantity, each.inputs);
  request.standard_uncertainty = {{name, 1.0}};
  request.inputs.numbers[name] = value;
  QuantityAnswer answered = answer(*each.quantity, request);
  double step = 1e-5 * std::max(std::abs(value), 1e-3);
  auto below = results_at(*each.quantity, request, name, value - step);
  auto at = results_at(*each.quantity, request, name, value);
  auto above = results_at(*each.quantity, request, name, value + step);
  if (!below || !above) return;
  for (const auto& [key, u] : answered.u) {
    if (!below->contains(key) || !above->contains(key)) continue;
    Difference by_steps = difference(below->at(key), at->at(key), above->at(key), step);
    if (!by_steps.smooth()) {
      ++tally.kinks;
      continue;
    }
    ++tally.compared;
    EXPECT_NEAR(u, std::abs(by_steps.central()), 1e-5 * std::abs(by_steps.central()) + by_steps.noise)
        << "d " << key << "/d " << name << " at " << value;
  }
}

TEST(Slopes, AgreeWithCentralDifferencesForEveryOptionOfEveryQuantity) {
  SlopesTally tally;
  std::set<std::string> seen;
  for (const Case& each : every_case()) {
    SCOPED_TRACE(std::string(each.quantity->name) + " " + each.inputs);
    QuantityRequest request = request_of(*each.quantity, each.inputs);
    for (const auto& [name, value] : numbers_with_defaults(*each.quantity, request)) {
      compare_slopes(each, name, value, tally);
      seen.insert(std::string(each.quantity->name) + " --" + name);
    }
  }
  EXPECT_GT(tally.compared, 500);
  EXPECT_LT(tally.kinks, tally.compared / 20);
  for (const Quantity* quantity : quantities())
    for (const auto& option : quantity->options)
      if (option.kind == OptionKind::number) {
        EXPECT_TRUE(seen.contains(std::string(quantity->name) + " --" + option.name))
            << quantity->name << " --" << option.name;
      }
}

TEST(Slopes, AddUpInSquaresWhereInputsAreIndependent) {
  for (const Case& each : one_case_per_form()) {
    SCOPED_TRACE(std::string(each.quantity->name) + " " + each.inputs);
    QuantityRequest request = request_of(*each.quantity, each.inputs);
    Numbers squares;
    request.standard_uncertainty.clear();
    QuantityRequest together = request;
    for (const auto& [name, value] : numbers_with_defaults(*each.quantity, request)) {
      double u = 0.01 * std::max(std::abs(value), 1e-3);
      request.standard_uncertainty = {{name, u}};
      together.standard_uncertainty[name] = u;
      for (const auto& [key, part] : answer(*each.quantity, request).u) squares[key] += part * part;
    }
    if (together.standard_uncertainty.empty()) continue;
    for (const auto& [key, u] : answer(*each.quantity, together).u)
      EXPECT_NEAR(u, std::sqrt(squares[key]), 1e-12 * u) << key;
  }
}

}  // namespace
}  // namespace seamtakt::published
