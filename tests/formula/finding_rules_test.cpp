// Findings of the quantities on heat, distortion, rules and decisions: when they are reported and when they
// aren't.
#include <gtest/gtest.h>

#include <algorithm>

#include "formula/quantities/quantity.hpp"

namespace seamtakt {
namespace {

struct FindingCase {
  const char* name;
  const char* quantity;
  std::map<std::string, double, std::less<>> numbers;
  std::map<std::string, std::string, std::less<>> texts;
  const char* rule;
  std::optional<Severity> severity;  ///< empty: the rule must not be found
};

void PrintTo(const FindingCase& c, std::ostream* out) {
  *out << c.name;
}

class FindingRules : public testing::TestWithParam<FindingCase> {};

TEST_P(FindingRules, ComeWhereTheyShould) {
  const FindingCase& c = GetParam();
  QuantityRequest request;
  request.inputs.numbers = c.numbers;
  request.inputs.texts = c.texts;
  const Findings findings = answer(*find_quantity(c.quantity), request).results.findings;
  const auto found =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.rule == c.rule; });
  ASSERT_EQ(found != findings.end(), c.severity.has_value());
  if (found == findings.end()) return;
  EXPECT_EQ(found->severity, *c.severity);
  EXPECT_FALSE(found->source.empty());
  EXPECT_EQ(found->text().back(), '.');
  EXPECT_FALSE(found->where.empty());
}

constexpr std::nullopt_t absent = std::nullopt;
const std::map<std::string, double, std::less<>> far_point = {
    {"net-power", 4000}, {"travel-speed", 5}, {"x", -40}, {"y", 5}, {"thickness", 8}};
const std::map<std::string, double, std::less<>> pool_point = {
    {"net-power", 4000}, {"travel-speed", 5}, {"x", -1}};
const std::map<std::string, double, std::less<>> pool_ellipsoid = {
    {"net-power", 4000}, {"travel-speed", 5}, {"x", -5}, {"time", 6}, {"a", 4}, {"b", 5},
    {"c-front", 4},      {"c-rear", 10}};

INSTANTIATE_TEST_SUITE_P(
    Heat, FindingRules,
    testing::Values(
        FindingCase{"pool", "temperature", pool_point, {}, "temperature.weld-pool", Severity::warn},
        FindingCase{"no_pool", "temperature", far_point, {}, "temperature.weld-pool", absent},
        FindingCase{"pool_ellipsoid",
                    "temperature",
                    pool_ellipsoid,
                    {{"model", "ellipsoid"}},
                    "temperature.weld-pool",
                    Severity::warn},
        FindingCase{"thick_for_thin",
                    "temperature",
                    far_point,
                    {{"model", "thick"}},
                    "temperature.model-thickness",
                    Severity::warn},
        FindingCase{"thin_for_thin",
                    "temperature",
                    far_point,
                    {{"model", "thin"}},
                    "temperature.model-thickness",
                    absent},
        FindingCase{"thin_for_thick",
                    "temperature",
                    {{"net-power", 4000}, {"travel-speed", 5}, {"x", -40}, {"y", 5}, {"thickness", 60}},
                    {{"model", "thin"}},
                    "temperature.model-thickness",
                    Severity::warn},
        FindingCase{
            "thick_haz", "haz-width", {{"heat-input", 1}}, {}, "haz-width.thick-plate", Severity::note},
        FindingCase{"thick_as_thin",
                    "haz-width",
                    {{"heat-input", 1}, {"thickness", 40}},
                    {},
                    "haz-width.thin-plate",
                    Severity::warn},
        FindingCase{"thin_haz",
                    "haz-width",
                    {{"heat-input", 1}, {"thickness", 5}},
                    {},
                    "haz-width.thin-plate",
                    absent},
        FindingCase{"high_carbon",
                    "haz-hardness",
                    {{"cooling-time", 8}},
                    {{"composition", "C=0.9,Mn=1"}},
                    "haz-hardness.C.range",
                    Severity::warn},
        FindingCase{"much_nitrogen",
                    "haz-hardness",
                    {{"cooling-time", 8}},
                    {{"composition", "C=0.1,N=0.02"}},
                    "haz-hardness.N.range",
                    Severity::warn},
        FindingCase{"not_reported",
                    "haz-hardness",
                    {{"cooling-time", 8}},
                    {{"composition", "C=0.1"}},
                    "composition.not-reported",
                    Severity::note},
        FindingCase{"hard",
                    "haz-hardness",
                    {{"cooling-time", 1}},
                    {{"composition", "C=0.2,Mn=1.5"}},
                    "haz-hardness.common-limit",
                    Severity::note},
        FindingCase{"soft",
                    "haz-hardness",
                    {{"cooling-time", 50}},
                    {{"composition", "C=0.05,Mn=0.5"}},
                    "haz-hardness.common-limit",
                    absent},
        FindingCase{"dueren_slow",
                    "haz-hardness",
                    {{"cooling-time", 30}},
                    {{"composition", "C=0.15,Mn=1"}, {"method", "dueren"}},
                    "haz-hardness.cooling-time.range",
                    Severity::warn},
        FindingCase{"no_transition",
                    "haz-hardness",
                    {{"cooling-time", 8}},
                    {{"composition", "C=0.6,Mo=5,Si=3"}},
                    "haz-hardness.no-transition",
                    Severity::warn}),
    [](const auto& info) { return std::string(info.param.name); });

INSTANTIATE_TEST_SUITE_P(
    Rules, FindingRules,
    testing::Values(
        FindingCase{"yielding",
                    "distortion",
                    {{"heat-input", 2}, {"section-area", 1000}},
                    {{"type", "tendon"}},
                    "distortion.tendon-yield",
                    Severity::warn},
        FindingCase{"elastic",
                    "distortion",
                    {{"heat-input", 2}, {"section-area", 10000}},
                    {{"type", "tendon"}},
                    "distortion.tendon-yield",
                    absent},
        FindingCase{"class_g",
                    "tolerance",
                    {{"length", 500}},
                    {{"class", "G"}},
                    "tolerance.recalled",
                    Severity::note},
        FindingCase{
            "class_f", "tolerance", {{"length", 500}}, {{"class", "F"}}, "tolerance.recalled", absent},
        FindingCase{"short_edge",
                    "tolerance",
                    {{"length", 20}},
                    {{"class", "F"}},
                    "tolerance.no-row",
                    Severity::warn},
        FindingCase{"undercut",
                    "imperfection",
                    {{"thickness", 8}},
                    {{"level", "B"}},
                    "imperfection.recalled",
                    Severity::note},
        FindingCase{"undersize_b",
                    "imperfection",
                    {{"throat", 4}},
                    {{"level", "B"}},
                    "imperfection.not-permitted",
                    Severity::note},
        FindingCase{"excess_d",
                    "imperfection",
                    {{"throat", 4}},
                    {{"level", "D"}},
                    "imperfection.unlimited",
                    Severity::note},
        FindingCase{"foil",
                    "imperfection",
                    {{"throat", 0.3}, {"thickness", 0.3}},
                    {{"level", "C"}},
                    "imperfection.thickness.range",
                    Severity::warn},
        FindingCase{"single_pass",
                    "fillet-minimum",
                    {{"thickness", 10}},
                    {{"hydrogen", "other"}},
                    "fillet-minimum.single-pass",
                    Severity::note},
        FindingCase{"annex",
                    "fillet-minimum",
                    {{"thickness", 20}},
                    {},
                    "fillet-minimum.german-annex",
                    Severity::note},
        FindingCase{
            "no_annex", "fillet-minimum", {{"thickness", 10}}, {}, "fillet-minimum.german-annex", absent},
        FindingCase{
            "sheet", "fillet-minimum", {{"thickness", 2}}, {}, "fillet-minimum.thin-plate", Severity::note},
        FindingCase{"cyclic_sheet",
                    "fillet-minimum",
                    {{"thickness", 4}},
                    {{"cyclic", "yes"}},
                    "fillet-minimum.exceeds-plate",
                    Severity::note},
        FindingCase{"inch_plate",
                    "fillet-minimum",
                    {{"thickness", 6.35}},
                    {},
                    "fillet-minimum.inch-plate",
                    Severity::note},
        FindingCase{
            "metric_plate", "fillet-minimum", {{"thickness", 8}}, {}, "fillet-minimum.inch-plate", absent},
        FindingCase{"overloaded",
                    "fillet-resistance",
                    {{"throat", 4}, {"length", 150}, {"force-along-weld", 1e6}},
                    {{"steel", "S355"}},
                    "fillet-resistance.exceeded",
                    Severity::fail},
        FindingCase{"within_directional",
                    "fillet-resistance",
                    {{"throat", 4}, {"length", 150}, {"force-normal-to-weld", 1.6e5}},
                    {{"steel", "S355"}},
                    "fillet-resistance.simplified-exceeded",
                    Severity::note},
        FindingCase{"thin_throat",
                    "fillet-resistance",
                    {{"throat", 2.5}, {"length", 150}},
                    {{"steel", "S355"}},
                    "fillet-resistance.throat",
                    Severity::warn},
        FindingCase{"short_weld",
                    "fillet-resistance",
                    {{"throat", 4}, {"length", 29}},
                    {{"steel", "S355"}},
                    "fillet-resistance.length",
                    Severity::warn},
        FindingCase{"long_lap",
                    "fillet-resistance",
                    {{"throat", 4}, {"length", 700}},
                    {{"steel", "S355"}},
                    "fillet-resistance.long-lap",
                    Severity::note},
        FindingCase{"edition",
                    "fillet-resistance",
                    {},
                    {{"steel", "S460"}, {"edition", "2024"}},
                    "fillet-resistance.edition",
                    Severity::note},
        FindingCase{"recalled",
                    "qualification",
                    {{"tested-thickness", 8}},
                    {},
                    "qualification.recalled",
                    Severity::note},
        FindingCase{"impact",
                    "qualification",
                    {{"tested-thickness", 8}},
                    {},
                    "qualification.impact-thickness",
                    Severity::note},
        FindingCase{"impact_tested",
                    "qualification",
                    {{"tested-thickness", 8}},
                    {{"impact", "yes"}},
                    "qualification.impact-thickness",
                    absent},
        FindingCase{"no_range",
                    "qualification",
                    {{"tested-thickness", 120}},
                    {{"runs", "single"}},
                    "qualification.no-range",
                    Severity::warn},
        FindingCase{"rejected",
                    "guard-band",
                    {{"value", 12}, {"u", 0.1}, {"upper", 11}},
                    {},
                    "guard-band.reject",
                    Severity::fail},
        FindingCase{"inside",
                    "guard-band",
                    {{"value", 10.9}, {"u", 0.1}, {"upper", 11}},
                    {},
                    "guard-band.inside",
                    Severity::warn},
        FindingCase{"accepted",
                    "guard-band",
                    {{"value", 10}, {"u", 0.1}, {"upper", 11}},
                    {},
                    "guard-band.inside",
                    absent},
        FindingCase{"hopeless",
                    "guard-band",
                    {{"value", 10}, {"u", 1}, {"lower", 9}, {"upper", 11}},
                    {},
                    "guard-band.empty",
                    Severity::warn}),
    [](const auto& info) { return std::string(info.param.name); });

}  // namespace
}  // namespace seamtakt
