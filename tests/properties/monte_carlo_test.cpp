// Two routes to one uncertainty: first order and Monte Carlo.
#include <gtest/gtest.h>

#include "formula/uncertainty/propagation.hpp"
#include "properties/every_quantity.hpp"

namespace seamtakt::published {
namespace {

constexpr std::size_t samples = 4000;
/// Five standard deviations of a standard deviation from that many samples.
const double chance = 5 / std::sqrt(2.0 * samples);

/// Whether nothing bends or jumps within four standard uncertainties: there the first order must hold.
bool nearly_linear(const Quantity& quantity, const QuantityRequest& request, const std::string& key,
                   double u) {
  auto at = [&](const std::string& name, double shift) -> std::optional<double> {
    QuantityRequest moved = request;
    moved.inputs.numbers[name] += shift;
    moved.standard_uncertainty.clear();
    moved.monte_carlo_samples = 0;
    try {
      auto results = answer(quantity, moved).results.values;
      auto found = results.find(key);
      return found == results.end() ? std::nullopt : found->second.number;
    } catch (const InputError&) {
      return std::nullopt;
    }
  };
  for (const auto& [name, width] : request.standard_uncertainty) {
    auto middle = at(name, 0);
    for (double sigmas : {1.0, 2.0, 4.0}) {
      auto below = at(name, -sigmas * width), above = at(name, sigmas * width);
      if (!below || !above || !middle) return false;
      if (std::abs(*below + *above - 2 * *middle) > 0.02 * sigmas * u) return false;
    }
  }
  return true;
}

int compare_routes(const Case& each) {
  QuantityRequest request = request_of(*each.quantity, each.inputs);
  request.standard_uncertainty.clear();
  for (const auto& [name, value] : numbers_with_defaults(*each.quantity, request)) {
    request.inputs.numbers[name] = value;
    if (value != 0) request.standard_uncertainty[name] = 1e-3 * std::abs(value);
  }
  if (request.standard_uncertainty.empty()) return 0;
  request.monte_carlo_samples = samples;
  QuantityAnswer answered = answer(*each.quantity, request);
  int compared = 0;
  for (const auto& [key, u] : answered.u) {
    // Below the last digit of the value itself there is nothing to draw.
    double value = *answered.results.values.at(key).number;
    if (u <= 1e-12 * std::abs(value) || !nearly_linear(*each.quantity, request, key, u)) continue;
    EXPECT_TRUE(answered.u_monte_carlo.contains(key)) << key;
    EXPECT_NEAR(answered.u_monte_carlo[key], u, (chance + 0.01) * u) << key;
    ++compared;
  }
  return compared;
}

TEST(MonteCarlo, AgreesWithTheFirstOrderForEveryQuantity) {
  int compared = 0;
  for (const Case& each : one_case_per_form()) {
    SCOPED_TRACE(std::string(each.quantity->name) + " " + each.inputs);
    compared += compare_routes(each);
  }
  EXPECT_GT(compared, 60);
}

TEST(NormalDeviates, HaveMeanZeroVarianceOneAndThinTails) {
  const int n = 200000;
  double sum = 0, squares = 0, cubes = 0, fourths = 0;
  int beyond_three = 0;
  for (int i = 0; i < n; ++i) {
    double x = normal_deviate(7, static_cast<std::uint64_t>(i), 3);
    sum += x;
    squares += x * x;
    cubes += x * x * x;
    fourths += x * x * x * x;
    beyond_three += std::abs(x) > 3;
  }
  EXPECT_NEAR(sum / n, 0, 5 / std::sqrt(n));
  EXPECT_NEAR(squares / n, 1, 5 * std::sqrt(2.0 / n));
  EXPECT_NEAR(cubes / n, 0, 5 * std::sqrt(15.0 / n));
  EXPECT_NEAR(fourths / n, 3, 5 * std::sqrt(96.0 / n));
  EXPECT_NEAR(beyond_three, 0.0026998 * n, 5 * std::sqrt(0.0026998 * n));
}

TEST(NormalDeviates, OfNeighbouringSamplesAndInputsAreUnrelated) {
  const int n = 100000;
  double by_sample = 0, by_input = 0, by_seed = 0;
  for (std::uint64_t i = 0; i < n; ++i) {
    double x = normal_deviate(1, i, 0);
    by_sample += x * normal_deviate(1, i + 1, 0);
    by_input += x * normal_deviate(1, i, 1);
    by_seed += x * normal_deviate(2, i, 0);
  }
  for (double product : {by_sample, by_input, by_seed}) EXPECT_NEAR(product / n, 0, 5 / std::sqrt(n));
}

}  // namespace
}  // namespace seamtakt::published
