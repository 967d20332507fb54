// First-order uncertainty rests on slopes by automatic differentiation: each is compared with a central
// difference of the very same quantity.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "formula/quantities/quantity.hpp"

namespace seamtakt {
namespace {

struct SlopeCase {
  const char* name;  ///< of the test
  const char* quantity;
  std::map<std::string, double, std::less<>> numbers;
  std::map<std::string, std::string, std::less<>> texts;
  /// Results whose slope is 0 everywhere (steps of a table).
  bool only_steps = false;
};

void PrintTo(const SlopeCase& slope, std::ostream* out) {
  *out << slope.name;
}

QuantityRequest request_of(const SlopeCase& slope) {
  QuantityRequest request;
  request.inputs.numbers = slope.numbers;
  request.inputs.texts = slope.texts;
  return request;
}

std::optional<double> result_of(const Quantity& quantity, QuantityRequest request, const std::string& input,
                                const std::string& key, double value) {
  request.inputs.numbers[input] = value;
  const QuantityAnswer answered = answer(quantity, request);
  const auto found = answered.results.values.find(key);
  return found == answered.results.values.end() ? std::nullopt : found->second.number;
}

class Slopes : public testing::TestWithParam<SlopeCase> {};

TEST_P(Slopes, EqualCentralDifferences) {
  const Quantity* quantity = find_quantity(GetParam().quantity);
  ASSERT_TRUE(quantity);
  const QuantityRequest base = request_of(GetParam());
  int compared = 0;
  for (const auto& [input, value] : GetParam().numbers) {
    QuantityRequest one = base;
    one.standard_uncertainty[input] = 1;
    const double step = 1e-5 * std::max(1e-3, std::abs(value));
    for (const auto& [key, u] : answer(*quantity, one).u) {
      const auto above = result_of(*quantity, base, input, key, value + step);
      const auto below = result_of(*quantity, base, input, key, value - step);
      ASSERT_TRUE(above && below) << input << " -> " << key;
      const double slope = std::abs(*above - *below) / (2 * step);
      // The difference itself has rounding of some 1e-16 of the result over the step.
      const double rounding = 1e-12 * (std::abs(*above) + 1) / step;
      EXPECT_NEAR(u, slope, 1e-5 * slope + rounding) << input << " -> " << key;
      compared += slope > rounding;
    }
  }
  if (GetParam().only_steps)
    EXPECT_EQ(compared, 0);
  else
    EXPECT_GE(compared, 1);
}

const std::map<std::string, double, std::less<>> ellipsoid = {{"net-power", 4000},
                                                              {"travel-speed", 5},
                                                              {"x", -9},
                                                              {"y", 2},
                                                              {"z", 1.5},
                                                              {"time", 4},
                                                              {"a", 4},
                                                              {"b", 5},
                                                              {"c-front", 4},
                                                              {"c-rear", 10},
                                                              {"f-front", 0.6},
                                                              {"preheat", 100},
                                                              {"conductivity", 0.035},
                                                              {"heat-capacity", 0.0048}};
const std::map<std::string, double, std::less<>> point_source = {{"net-power", 4000},
                                                                 {"travel-speed", 5},
                                                                 {"x", -25},
                                                                 {"y", 5},
                                                                 {"z", 2},
                                                                 {"thickness", 8},
                                                                 {"preheat", 100},
                                                                 {"conductivity", 0.035},
                                                                 {"heat-capacity", 0.0048}};

INSTANTIATE_TEST_SUITE_P(
    Quantities, Slopes,
    testing::Values(
        SlopeCase{"thick", "temperature", point_source, {{"model", "thick"}}},
        SlopeCase{"thin", "temperature", point_source, {{"model", "thin"}}},
        SlopeCase{"plate", "temperature", point_source, {{"model", "plate"}}},
        SlopeCase{"ellipsoid", "temperature", ellipsoid, {{"model", "ellipsoid"}}},
        SlopeCase{"haz_width_thin",
                  "haz-width",
                  {{"heat-input", 0.9},
                   {"thickness", 6},
                   {"preheat", 25},
                   {"peak", 730},
                   {"melting", 1510},
                   {"heat-capacity", 0.0044}},
                  {}},
        SlopeCase{"haz_peak_thin",
                  "haz-width",
                  {{"heat-input", 0.9}, {"thickness", 6}, {"preheat", 25}, {"distance", 3}},
                  {}},
        SlopeCase{"haz_width_thick", "haz-width", {{"heat-input", 1.4}, {"preheat", 90}, {"peak", 900}}, {}},
        SlopeCase{"haz_peak_thick", "haz-width", {{"heat-input", 1.4}, {"preheat", 90}, {"distance", 3}}, {}},
        SlopeCase{"yurioka",
                  "haz-hardness",
                  {{"cooling-time", 8}},
                  {{"composition", "C=0.16,Si=0.35,Mn=1.45,Cr=0.2"}}},
        SlopeCase{"dueren",
                  "haz-hardness",
                  {{"cooling-time", 8}},
                  {{"composition", "C=0.16,Si=0.35,Mn=1.45"}, {"method", "dueren"}}},
        SlopeCase{"fillet_angular",
                  "distortion",
                  {{"flange-width", 200}, {"leg", 6}, {"thickness", 12}},
                  {{"type", "fillet-angular"}}},
        SlopeCase{"longitudinal_bow",
                  "distortion",
                  {{"weld-area", 80}, {"length", 4000}, {"eccentricity", 70}, {"second-moment", 5e7}},
                  {{"type", "longitudinal-bow"}}},
        SlopeCase{"butt_transverse",
                  "distortion",
                  {{"weld-area", 80}, {"thickness", 10}},
                  {{"type", "butt-transverse"}}},
        SlopeCase{"tendon",
                  "distortion",
                  {{"heat-input", 1},
                   {"length", 4000},
                   {"eccentricity", 100},
                   {"second-moment", 5e7},
                   {"section-area", 5000},
                   {"modulus", 205000}},
                  {{"type", "tendon"}}},
        SlopeCase{"angular_tolerance", "tolerance", {{"length", 750}}, {{"class", "B"}, {"kind", "angular"}}},
        SlopeCase{"linear_tolerance", "tolerance", {{"length", 750}}, {{"class", "B"}}, true},
        SlopeCase{"imperfection",
                  "imperfection",
                  {{"throat", 4}, {"thickness", 8}, {"face-width", 7}},
                  {{"level", "C"}, {"short", "yes"}}},
        SlopeCase{"fillet_resistance",
                  "fillet-resistance",
                  {{"throat", 4},
                   {"length", 150},
                   {"tensile", 470},
                   {"beta-w", 0.9},
                   {"force-normal-to-weld", 80000},
                   {"force-along-weld", 50000}},
                  {{"steel", "S355"}}},
        SlopeCase{"conformity_two_sided",
                  "guard-band",
                  {{"value", 9.3}, {"u", 0.4}, {"lower", 9}, {"upper", 11}},
                  {}},
        SlopeCase{"conformity_upper", "guard-band", {{"value", 10.9}, {"u", 0.4}, {"upper", 11}}, {}},
        SlopeCase{"conformity_lower", "guard-band", {{"value", 8.7}, {"u", 0.4}, {"lower", 9}}, {}},
        SlopeCase{"fillet_minimum", "fillet-minimum", {{"thickness", 10}}, {}, true}),
    [](const testing::TestParamInfo<SlopeCase>& info) { return std::string(info.param.name); });

}  // namespace
}  // namespace seamtakt
