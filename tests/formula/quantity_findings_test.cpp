// An engineering judgement comes with the value, never instead of it.
#include <gtest/gtest.h>

#include "published/published_rows.hpp"

namespace seamtakt {
namespace {

struct Judged {
  const char *quantity, *inputs, *rule;
  Severity severity;
};

const Finding* find_rule(const Findings& findings, std::string_view rule) {
  for (const auto& finding : findings)
    if (finding.rule == rule) return &finding;
  return nullptr;
}

Findings findings_of(const char* name, const std::string& inputs, std::size_t least_values = 1) {
  const Quantity& quantity = *find_quantity(name);
  Results<double> results = answer(quantity, published::request_of(quantity, inputs)).results;
  EXPECT_GE(results.values.size(), least_values) << name << " " << inputs;
  return results.findings;
}

const Judged judged[] = {
    {"melting-rate", "current=250; extension=15; wire-diameter=2.4; wire-material=mild-steel",
     "melting.diameter.range", Severity::warn},
    {"melting-rate", "current=250; extension=40; alpha=0.3; beta=5e-5", "melting.extension.range",
     Severity::warn},
    {"melting-rate", "current=600; extension=15; alpha=0.3; beta=5e-5", "melting.current.range",
     Severity::warn},
    {"melting-rate", "wire-feed=0.5; extension=15; alpha=0.3; beta=5e-5", "melting.current.range",
     Severity::warn},
    {"melting-rate", "wire-feed=8; extension=15; alpha=0.3; beta=5e-5; arc=pulsed", "melting.arc",
     Severity::warn},
    {"melting-rate", "current=150; rms-current=180; extension=15; alpha=0.3; beta=5e-5; arc=controlled-dip",
     "melting.arc", Severity::warn},
    {"deposition", "wire-diameter=1.2; wire-feed=9; density=2.7; efficiency=0.98; travel-speed=7",
     "deposition.weld-metal-density", Severity::warn},
    {"fillet", "leg=6; dihedral=50", "fillet.dihedral.range", Severity::warn},
    {"fillet", "leg=6; dihedral=50", "fillet.dihedral.z-loss", Severity::note},
    {"fillet", "leg=6; dihedral=140", "fillet.dihedral.range", Severity::warn},
    {"fillet", "leg=6; gap=1", "fillet.gap.deducted", Severity::note},
    {"fillet", "leg=12; gap=6", "fillet.gap.greatest", Severity::warn},
    {"fillet", "leg=5; gap=5", "fillet.throat.none", Severity::fail},
    {"fillet", "leg=5; convexity=2.5", "fillet.convexity.limit", Severity::warn},
    {"fillet", "leg=12; leg-2=4; dihedral=45", "fillet.throat.shorter-leg", Severity::note},
    {"penetration", "current=400; voltage=30; travel-speed=7; coefficient=0.003",
     "penetration.coefficient.range", Severity::warn},
    {"transfer", "wire-material=mild-steel; gas=M21; wire-diameter=1.2; current=300", "transfer.gas.no-spray",
     Severity::note},
    {"transfer", "wire-material=mild-steel; gas=M13-ArO-1; wire-diameter=1.2; current=300",
     "transfer.gas.other-mix", Severity::note},
    {"transfer", "wire-material=mild-steel; gas=90Ar 10CO2; wire-diameter=1.14; current=300",
     "transfer.gas.indicative", Severity::note},
    {"carbon-equivalent", "composition=C=0.17,Mn=1.45", "composition.not-reported", Severity::note},
    {"carbon-equivalent", "composition=C=0.4,Mn=1.45", "cet.C.range", Severity::warn},
    {"carbon-equivalent", "composition=C=0.1,Mn=1.45,Ni=9", "cet.Ni.range", Severity::warn},
    {"preheat", "cet=0.33; thickness=8; hydrogen=5; heat-input=1.5", "preheat.thickness.range",
     Severity::warn},
    {"preheat", "cet=0.6; thickness=20; hydrogen=5; heat-input=1.5", "preheat.cet.range", Severity::warn},
    {"preheat", "cet=0.3; thickness=20; hydrogen=0.5; heat-input=1.5", "preheat.hydrogen.range",
     Severity::warn},
    {"preheat", "cet=0.3; thickness=20; hydrogen=5; heat-input=5", "preheat.heat-input.range",
     Severity::warn},
    {"preheat", "cet=0.2; thickness=10; hydrogen=2; heat-input=2", "preheat.none-needed", Severity::note},
    {"preheat", "composition=C=0.17,Mn=1.45; thickness=20; hydrogen=5; heat-input=1",
     "composition.not-reported", Severity::note},
    {"preheat", "method=aws-hydrogen; pcm=0.3; hydrogen-level=H1; restraint=low; thickness=20",
     "preheat.group", Severity::note},
    {"preheat", "method=aws-hydrogen; pcm=0.6; hydrogen-level=H3; restraint=low; thickness=20",
     "preheat.index.range", Severity::warn},
    {"duty-cycle", "rated-current=350; rated-duty=60; current=200", "duty-cycle.continuous", Severity::note},
};

TEST(Findings, StandBesideTheValueTheyJudge) {
  for (const Judged& each : judged) {
    SCOPED_TRACE(std::string(each.quantity) + " " + each.inputs);
    Findings findings = findings_of(each.quantity, each.inputs);
    const Finding* finding = find_rule(findings, each.rule);
    ASSERT_TRUE(finding) << each.rule;
    EXPECT_EQ(finding->severity, each.severity);
    EXPECT_TRUE(finding->text().ends_with('.')) << finding->text();
    EXPECT_FALSE(finding->where.empty());
    EXPECT_FALSE(finding->source.empty());
  }
}

TEST(Findings, OfARangeNameValueLimitAndUnit) {
  Findings findings = findings_of("preheat", "cet=0.33; thickness=100; hydrogen=5; heat-input=1.5", 3);
  const Finding* finding = find_rule(findings, "preheat.thickness.range");
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->value, 100);
  EXPECT_EQ(finding->limit, 90);
  EXPECT_EQ(finding->unit, "mm");
}

TEST(Findings, AreNotMadeOfOrdinaryInput) {
  for (auto [quantity, inputs] :
       {std::pair{"heat-input", "voltage=25; current=200; travel-speed=5; process=135"},
        {"melting-rate", "current=250; extension=15; wire-diameter=1.2; wire-material=mild-steel"},
        {"melting-rate", "current=150; rms-current=180; extension=15; alpha=0.3; beta=5e-5; arc=pulsed"},
        {"deposition", "wire-diameter=1.2; wire-feed=9; density=7.85; efficiency=0.95; travel-speed=7"},
        {"fillet", "leg=6"},
        {"fillet", "leg=6; gap=3; convexity=1"},
        {"groove", "type=single-v; thickness=12; gap=2; root-face=1; angle=60"},
        {"penetration", "current=400; voltage=30; travel-speed=7"},
        {"transfer", "wire-material=mild-steel; gas=98Ar 2O2; wire-diameter=1.2; current=300"},
        {"cooling-time", "heat-input=1; thickness=12; joint=tee"},
        {"preheat", "cet=0.33; thickness=30; hydrogen=5; heat-input=1.5"},
        {"interpass", "heat-input=1; thickness=12; interpass=150"},
        {"duty-cycle", "rated-current=350; rated-duty=60; current=400"},
        {"move-time", "distance=500; speed=1000; acceleration=4000"},
        {"takt", "available=8; demand=24"}})
    EXPECT_TRUE(findings_of(quantity, inputs).empty()) << quantity << " " << inputs;
}

TEST(Findings, DoNotWarnOnTheBoundsOfARange) {
  EXPECT_TRUE(findings_of("preheat", "cet=0.5; thickness=90; hydrogen=20; heat-input=0.5").empty());
}

TEST(CoolingTime, IsOnePointWhereTheFactorsAreGiven) {
  const Quantity& quantity = *find_quantity("cooling-time");
  auto span =
      answer(quantity, published::request_of(quantity, "heat-input=1.4; thickness=8; joint=tee; f2=0.5"))
          .results.values["cooling_time_span_s"];
  ASSERT_EQ(span.list.size(), 2u);
  EXPECT_EQ(span.list[0], span.list[1]);
}

TEST(Efficiency, GivenOverridesTheProcessesAndServesProcessesWithoutOne) {
  const Quantity& quantity = *find_quantity("heat-input");
  auto k = [&](const char* inputs) {
    return answer(quantity, published::request_of(quantity, inputs))
        .results.values["thermal_efficiency"]
        .number;
  };
  EXPECT_EQ(k("power=5000; travel-speed=5; process=135; efficiency=0.75"), 0.75);
  EXPECT_EQ(k("power=5000; travel-speed=5; process=52; efficiency=0.75"), 0.75);
  EXPECT_EQ(k("power=5000; travel-speed=5"), std::nullopt);
}

}  // namespace
}  // namespace seamtakt
