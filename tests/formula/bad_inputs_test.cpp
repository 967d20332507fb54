// Wrong inputs of the quantities on heat, distortion, rules and decisions: one InputError that
// names the option, never a number.
#include <gtest/gtest.h>

#include <limits>

#include "base/error.hpp"
#include "formula/quantities/quantity.hpp"

namespace seamtakt {
namespace {

struct BadCase {
  const char* name;
  const char* quantity;
  std::map<std::string, double, std::less<>> numbers;
  std::map<std::string, std::string, std::less<>> texts;
  const char* where;     ///< of the error
  const char* expected;  ///< part of what it says was expected
};

void PrintTo(const BadCase& bad, std::ostream* out) {
  *out << bad.name;
}

using Numbers = std::map<std::string, double, std::less<>>;

Numbers with(Numbers base, const char* name, double value) {
  base[name] = value;
  return base;
}

Numbers without(Numbers base, const char* name) {
  base.erase(name);
  return base;
}

const Numbers field = {{"net-power", 4000}, {"travel-speed", 5}, {"x", -20}, {"y", 5}, {"thickness", 8}};
const Numbers ellipsoid_field = {{"net-power", 4000}, {"travel-speed", 5}, {"a", 4},   {"b", 5},
                                 {"c-front", 4},      {"c-rear", 10},      {"time", 5}};
const Numbers zone = {{"heat-input", 0.9}, {"thickness", 6}, {"peak", 730}};
const Numbers weld = {{"throat", 4}, {"length", 150}};
const Numbers measured = {{"value", 10}, {"u", 0.1}, {"lower", 9}, {"upper", 11}};

class BadInputs : public testing::TestWithParam<BadCase> {};

TEST_P(BadInputs, AreRefusedByName) {
  const Quantity* quantity = find_quantity(GetParam().quantity);
  ASSERT_TRUE(quantity);
  QuantityRequest request;
  request.inputs.numbers = GetParam().numbers;
  request.inputs.texts = GetParam().texts;
  try {
    answer(*quantity, request);
    FAIL() << "accepted";
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), GetParam().where) << error.what();
    EXPECT_NE(error.expected().english().find(GetParam().expected), std::string::npos) << error.what();
  }
}

INSTANTIATE_TEST_SUITE_P(
    Heat, BadInputs,
    testing::Values(
        BadCase{"no_power", "temperature", without(field, "net-power"), {}, "--net-power", "a value"},
        BadCase{"negative_power", "temperature", with(field, "net-power", -1), {}, "--net-power", "above 0"},
        BadCase{"no_speed", "temperature", without(field, "travel-speed"), {}, "--travel-speed", "a value"},
        BadCase{"zero_speed", "temperature", with(field, "travel-speed", 0), {}, "--travel-speed", "above 0"},
        BadCase{"infinite_speed",
                "temperature",
                with(field, "travel-speed", std::numeric_limits<double>::infinity()),
                {},
                "--travel-speed",
                "finite"},
        BadCase{"zero_conductivity",
                "temperature",
                with(field, "conductivity", 0),
                {},
                "--conductivity",
                "above 0"},
        BadCase{"thin_without_thickness",
                "temperature",
                without(field, "thickness"),
                {{"model", "thin"}},
                "--thickness",
                "thickness"},
        BadCase{"zero_thickness", "temperature", with(field, "thickness", 0), {}, "--thickness", "above 0"},
        BadCase{"below_the_plate",
                "temperature",
                with(field, "z", 8.5),
                {{"model", "plate"}},
                "--z",
                "within the plate"},
        BadCase{"above_the_plate", "temperature", with(field, "z", -0.5), {}, "--z", "0 or more"},
        BadCase{"unknown_model", "temperature", field, {{"model", "medium"}}, "--model", "ellipsoid"},
        BadCase{
            "below_absolute_zero", "temperature", with(field, "preheat", -300), {}, "--preheat", "-273.15"},
        BadCase{"ellipsoid_without_length",
                "temperature",
                without(ellipsoid_field, "c-rear"),
                {{"model", "ellipsoid"}},
                "--c-rear",
                "a value"},
        BadCase{"ellipsoid_flat",
                "temperature",
                with(ellipsoid_field, "b", 0),
                {{"model", "ellipsoid"}},
                "--b",
                "above 0"},
        BadCase{"ellipsoid_fraction",
                "temperature",
                with(ellipsoid_field, "f-front", 2.5),
                {{"model", "ellipsoid"}},
                "--f-front",
                "from 0 to 2"},
        BadCase{"ellipsoid_before_start",
                "temperature",
                with(ellipsoid_field, "time", -1),
                {{"model", "ellipsoid"}},
                "--time",
                "0 or more"},
        BadCase{"no_heat", "haz-width", without(zone, "heat-input"), {}, "--heat-input", "a value"},
        BadCase{
            "two_ways_at_once", "haz-width", with(zone, "distance", 2), {}, "--distance", "one of the two"},
        BadCase{"peak_below_preheat", "haz-width", with(zone, "peak", 20), {}, "--peak", "above the preheat"},
        BadCase{"peak_above_melting",
                "haz-width",
                with(zone, "peak", 1600),
                {},
                "--peak",
                "not above the melting"},
        BadCase{"melting_below_preheat",
                "haz-width",
                with(zone, "melting", 10),
                {},
                "--melting",
                "above the preheat"},
        BadCase{"negative_distance",
                "haz-width",
                with(without(zone, "peak"), "distance", -1),
                {},
                "--distance",
                "0 or more"},
        BadCase{"no_composition", "haz-hardness", {{"cooling-time", 8}}, {}, "--composition", "mass %"},
        BadCase{"no_carbon",
                "haz-hardness",
                {{"cooling-time", 8}},
                {{"composition", "Mn=1.4"}},
                "--composition",
                "C="},
        BadCase{"zero_cooling_time",
                "haz-hardness",
                {{"cooling-time", 0}},
                {{"composition", "C=0.1"}},
                "--cooling-time",
                "above 0"},
        BadCase{"unknown_method",
                "haz-hardness",
                {},
                {{"composition", "C=0.1"}, {"method", "terasaki"}},
                "--method",
                "dueren"}),
    [](const auto& info) { return std::string(info.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Rules, BadInputs,
    testing::Values(
        BadCase{"no_type", "distortion", {{"leg", 6}}, {}, "--type", "tendon"},
        BadCase{"no_leg",
                "distortion",
                {{"flange-width", 200}, {"thickness", 10}},
                {{"type", "fillet-angular"}},
                "--leg",
                "a value"},
        BadCase{"no_heat_input",
                "distortion",
                {{"length", 200}},
                {{"type", "tendon"}},
                "--heat-input",
                "a value"},
        BadCase{"negative_area",
                "distortion",
                {{"weld-area", -1}, {"thickness", 10}},
                {{"type", "butt-transverse"}},
                "--weld-area",
                "0 or more"},
        BadCase{"no_class", "tolerance", {{"length", 100}}, {}, "--class", "A to H"},
        BadCase{"lower_case_class", "tolerance", {{"length", 100}}, {{"class", "b"}}, "--class", "B"},
        BadCase{"class_of_another_table",
                "tolerance",
                {{"length", 100}},
                {{"class", "F"}, {"kind", "linear"}},
                "--class",
                "A, B, C or D"},
        BadCase{"class_without_straightness",
                "tolerance",
                {{"length", 100}},
                {{"class", "B"}, {"kind", "straightness"}},
                "--class",
                "E, F, G or H"},
        BadCase{"zero_length", "tolerance", {{"length", 0}}, {{"class", "B"}}, "--length", "above 0"},
        BadCase{"no_level", "imperfection", {{"throat", 4}}, {}, "--level", "B, C or D"},
        BadCase{"no_size", "imperfection", {}, {{"level", "C"}}, "--throat", "--face-width"},
        BadCase{"zero_throat", "imperfection", {{"throat", 0}}, {{"level", "C"}}, "--throat", "above 0"},
        BadCase{"zero_plate", "fillet-minimum", {{"thickness", 0}}, {}, "--thickness", "above 0"},
        BadCase{"unknown_hydrogen",
                "fillet-minimum",
                {{"thickness", 5}},
                {{"hydrogen", "none"}},
                "--hydrogen",
                "other"},
        BadCase{"no_steel", "fillet-resistance", weld, {}, "--steel", "--tensile"},
        BadCase{"tensile_alone", "fillet-resistance", with(weld, "tensile", 500), {}, "--beta-w", "--steel"},
        BadCase{"unknown_steel", "fillet-resistance", weld, {{"steel", "S999"}}, "--steel", "S460"},
        BadCase{"half_a_weld",
                "fillet-resistance",
                with(weld, "count", 1.5),
                {{"steel", "S355"}},
                "--count",
                "whole"},
        BadCase{"nothing_tested", "qualification", {}, {}, "--tested-thickness", "--tested-heat-input"},
        BadCase{"throat_of_a_butt",
                "qualification",
                {{"tested-throat", 4}},
                {{"joint", "butt"}},
                "--tested-throat",
                "fillet"},
        BadCase{"unknown_basis",
                "qualification",
                {{"tested-thickness", 4}},
                {{"basis", "asme"}},
                "--basis",
                "iso15614-1"},
        BadCase{"no_limit", "guard-band", {{"value", 10}, {"u", 0.1}}, {}, "--upper", "--lower"},
        BadCase{"no_uncertainty", "guard-band", without(measured, "u"), {}, "--u", "a value"},
        BadCase{"negative_uncertainty", "guard-band", with(measured, "u", -0.1), {}, "--u", "0 or more"},
        BadCase{"limits_crossed",
                "guard-band",
                with(measured, "lower", 12),
                {},
                "--lower",
                "not above the upper"}),
    [](const auto& info) { return std::string(info.param.name); });

}  // namespace
}  // namespace seamtakt
