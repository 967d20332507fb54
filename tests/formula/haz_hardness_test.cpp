#include "formula/metal/haz_hardness.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace seamtakt {
namespace {

HardeningElements structural_steel() {
  HardeningElements steel;
  steel.C = 0.16;
  steel.Si = 0.35;
  steel.Mn = 1.45;
  return steel;
}

TEST(HazHardness, FallsWithCoolingTimeBetweenMartensiteAndBainite) {
  const HardeningElements steel = structural_steel();
  double yurioka_before = 1000, dueren_before = 1000;
  for (double time = 0.05; time < 2000; time *= 1.3) {
    const double yurioka = *yurioka_hardness_HV(steel, time), dueren = dueren_hardness_HV(steel, time);
    EXPECT_LE(yurioka, yurioka_before);
    EXPECT_LE(dueren, dueren_before);
    EXPECT_LE(yurioka, yurioka_limits(steel).martensite_HV);
    EXPECT_GE(yurioka, yurioka_limits(steel).bainite_HV);
    yurioka_before = yurioka, dueren_before = dueren;
  }
  EXPECT_EQ(yurioka_before, yurioka_limits(steel).bainite_HV);
  EXPECT_EQ(dueren_before, dueren_limits(steel).bainite_HV);
  EXPECT_EQ(*yurioka_hardness_HV(steel, 1e-4), yurioka_limits(steel).martensite_HV);
}

TEST(HazHardness, IsHalfWayAtTheMiddleOfTheTransition) {
  const HardeningElements steel = structural_steel();
  const TransformationTimes times = yurioka_times(steel);
  const HardnessLimits limits = yurioka_limits(steel);
  EXPECT_NEAR(*yurioka_hardness_HV(steel, std::sqrt(times.martensite_s * times.bainite_s)),
              (limits.martensite_HV + limits.bainite_HV) / 2, 1e-9);
}

TEST(HazHardness, RisesWithEachAlloyingElementAtOrdinaryCoolingTimes) {
  for (double HardeningElements::*element :
       {&HardeningElements::C, &HardeningElements::Mn, &HardeningElements::Si, &HardeningElements::Cr,
        &HardeningElements::Mo, &HardeningElements::Ni, &HardeningElements::Cu}) {
    HardeningElements richer = structural_steel();
    richer.*element += 0.1;
    EXPECT_GT(*yurioka_hardness_HV(richer, 8.0), *yurioka_hardness_HV(structural_steel(), 8.0));
  }
}

TEST(BoronHardenability, FollowsItsStepsAndStopsWhereNitrogenBindsTheBoron) {
  const double expected[] = {0, 0, 0.03, 0.06, 0.09, 0.09};
  for (int ppm = 0; ppm <= 5; ++ppm) EXPECT_NEAR(boron_hardenability(ppm * 1e-4, 0), expected[ppm], 1e-12);
  EXPECT_NEAR(boron_hardenability(4e-4, 0.01), 0.045, 1e-12);
  EXPECT_EQ(boron_hardenability(4e-4, 0.05), 0);
}

TEST(EffectiveCarbon, HasNoStepAtThreeTenthsOfAPercent) {
  EXPECT_NEAR(effective_carbon(0.3), effective_carbon(0.3 + 1e-12), 1e-9);
  EXPECT_NEAR(effective_carbon(0.6), 0.35, 1e-12);
}

TEST(HazHardness, HasNoValueWhereTheFormulaHasNoTransition) {
  HardeningElements maraging;
  maraging.C = 0.6;
  maraging.Mo = 5;
  maraging.Si = 3;
  ASSERT_LE(yurioka_times(maraging).bainite_s, yurioka_times(maraging).martensite_s);
  EXPECT_FALSE(yurioka_hardness_HV(maraging, 10.0));
}

RC_GTEST_PROP(HazHardness, StaysBetweenItsLimitsForAnySteel, ()) {
  const auto pct = [](int thousandths) { return *rc::gen::inRange(0, thousandths) / 1000.0; };
  HardeningElements steel;
  steel.C = pct(500), steel.Si = pct(800), steel.Mn = pct(2000), steel.Cr = pct(2500), steel.Ni = pct(2500);
  steel.Mo = pct(900), steel.Cu = pct(700), steel.V = pct(200), steel.Nb = pct(60), steel.B = pct(5),
  steel.N = pct(15);
  const double time = *rc::gen::inRange(1, 100000) / 100.0;
  const auto yurioka = yurioka_hardness_HV(steel, time);
  if (yurioka) {
    RC_ASSERT(*yurioka <= yurioka_limits(steel).martensite_HV);
    RC_ASSERT(*yurioka >= yurioka_limits(steel).bainite_HV);
  }
  const double dueren = dueren_hardness_HV(steel, time);
  RC_ASSERT(dueren <= dueren_limits(steel).martensite_HV);
  RC_ASSERT(dueren >= std::min(dueren_limits(steel).bainite_HV, dueren_limits(steel).martensite_HV));
}

}  // namespace
}  // namespace seamtakt
