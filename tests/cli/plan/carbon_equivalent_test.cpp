// A metal's carbon equivalent: the certificate's, and the one that its standard allows at most.
#include <gtest/gtest.h>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// Two plates of S355J2, every element at the standard's maximum: CE = 0.2 + 1.6/6 + 0.55/15 = 0.5033.
Plan at_maxima(const std::string& basis = "standard-maximum") {
  Plan plan = tee();
  set_metals(plan, {{"C", 0.2}, {"Si", 0.55}, {"Mn", 1.6}, {"Cu", 0.55}});
  for (BaseMetal& metal : plan.base_metals) {
    metal.composition_basis = basis;
    metal.standard = "EN 10025-2 S355J2";
  }
  return plan;
}

double pass_value(const JsonNode& document, const char* key) {
  return first_pass(document).find(key)->number;
}

}  // namespace

TEST_F(Judgement, MaximaOfAStandardAreHeldByItsCarbonEquivalent) {
  const JsonNode free = evaluated(at_maxima("certificate"));
  EXPECT_NEAR(pass_value(free, "CE_IIW"), 0.503333, 1e-6);
  const JsonNode held = evaluated(at_maxima());
  EXPECT_NEAR(pass_value(held, "CE_IIW"), 0.45, 1e-9);
  // f = 0.25/0.30333: CET = 0.2 + 0.824176*(1.6/10 + 0.55/20).
  EXPECT_NEAR(pass_value(held, "CET"), 0.354533, 1e-6);
  EXPECT_LT(pass_value(held, "preheat_needed_C"), pass_value(free, "preheat_needed_C") - 10);
  // The hardness is that of a certificate with these figures.
  Plan certified = at_maxima("certificate");
  set_metals(certified,
             {{"C", 0.2}, {"Si", 0.55}, {"Mn", 1.6 * 0.25 / 0.91 * 3}, {"Cu", 0.55 * 0.25 / 0.91 * 3}});
  EXPECT_NEAR(pass_value(held, "haz_hardness_HV"), pass_value(evaluated(certified), "haz_hardness_HV"), 1e-6);
  EXPECT_LT(pass_value(held, "haz_hardness_HV"), pass_value(free, "haz_hardness_HV"));
}

TEST_F(Judgement, AStandardsLimitOfCarbonEquivalentHoldsUpToItsThicknessAndForItsGrade) {
  Plan thick = at_maxima();
  seam_of(thick).thickness_mm = {40, 40};
  EXPECT_NEAR(pass_value(evaluated(thick), "CE_IIW"), 0.503333, 1e-6);
  Plan nameless = at_maxima();
  for (BaseMetal& metal : nameless.base_metals) metal.standard.clear();
  EXPECT_NEAR(pass_value(evaluated(nameless), "CE_IIW"), 0.503333, 1e-6);
  // The grade may be the metal's name.
  Plan by_id = at_maxima();
  for (BaseMetal& metal : by_id.base_metals) metal.standard = "EN 10025-2";
  by_id.base_metals[0].id = "S355J2";
  by_id.base_metals.resize(1);
  seam_of(by_id).base_metals = {"S355J2", "S355J2"};
  EXPECT_NEAR(pass_value(evaluated(by_id), "CE_IIW"), 0.45, 1e-9);
}

TEST_F(Judgement, TheCertificatesCarbonEquivalentGoesBeforeTheCompositions) {
  Plan plan = at_maxima("certificate");
  const JsonNode without = evaluated(plan);
  for (BaseMetal& metal : plan.base_metals) metal.CEV = 0.42;
  const JsonNode with = evaluated(plan);
  EXPECT_EQ(pass_value(with, "CE_IIW"), 0.42);
  // A certificate's composition is taken as it is.
  EXPECT_EQ(pass_value(with, "CET"), pass_value(without, "CET"));
  EXPECT_EQ(pass_value(with, "haz_hardness_HV"), pass_value(without, "haz_hardness_HV"));
  EXPECT_NE(
      run_program({"evaluate", saved(plan), "--explain", "X/S1/pass 1.CE_IIW"}).output.find("CE = 0.42"),
      std::string::npos);
  // The standard's maxima are held by it: f = 0.22/0.30333, CET = 0.2 + f*0.1875.
  for (BaseMetal& metal : plan.base_metals) metal.composition_basis = "standard-maximum";
  const JsonNode held = evaluated(plan);
  EXPECT_EQ(pass_value(held, "CE_IIW"), 0.42);
  EXPECT_NEAR(pass_value(held, "CET"), 0.335989, 1e-6);
}

TEST_F(Judgement, TheHeldCarbonEquivalentIsExplained) {
  const ProgramRun explained =
      run_program({"evaluate", saved(at_maxima()), "--explain", "X/S1/pass 1.CE_IIW"});
  EXPECT_NE(explained.output.find("f = (0.45 - 0.2)/(0.5033333333 - 0.2)"), std::string::npos)
      << explained.output;
  EXPECT_NE(explained.output.find("its maximum times f"), std::string::npos) << explained.output;
}

TEST_F(Judgement, ARangeOfCompositionsIsJudgedOnWhatIsComputedWith) {
  // S460N at its maxima: 0.2 % vanadium is beyond CET's 0.18, what the carbon equivalent leaves isn't.
  Plan plan = tee();
  set_metals(plan, {{"C", 0.2},
                    {"Si", 0.6},
                    {"Mn", 1.7},
                    {"Cu", 0.55},
                    {"Cr", 0.3},
                    {"Ni", 0.8},
                    {"Mo", 0.1},
                    {"V", 0.2}});
  for (BaseMetal& metal : plan.base_metals) {
    metal.composition_basis = "standard-maximum";
    metal.standard = "EN 10025-3 S460N";
  }
  const JsonNode held = evaluated(plan);
  EXPECT_FALSE(is_null(first_pass(held), "CET"));
  EXPECT_TRUE(found(held, "composition.cet-range").empty());
  seam_of(plan).thickness_mm = {80, 8};
  EXPECT_TRUE(is_null(first_pass(evaluated(plan)), "CET"));
  EXPECT_FALSE(found(evaluated(plan), "composition.cet-range").empty());
}
