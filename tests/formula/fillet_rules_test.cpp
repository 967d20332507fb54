#include <gtest/gtest.h>

#include "formula/fillet_minimum.hpp"
#include "formula/fillet_resistance.hpp"
#include "formula/imperfection.hpp"

namespace seamtakt {
namespace {

TEST(FilletMinimum, NeverFallsWithThickness) {
  double before = 0;
  for (double thickness = 0.5; thickness < 60; thickness += 0.25) {
    const double leg = fillet_leg_min_mm({thickness, thickness, true, false});
    EXPECT_GE(leg, before);
    EXPECT_LE(leg, thickness);
    before = leg;
  }
}

TEST(FilletMinimum, DoesNotDependOnWhichPlateIsNamedFirst) {
  for (double one : {3.0, 8.0, 25.0})
    for (double other : {5.0, 15.0, 40.0})
      for (bool low : {true, false})
        EXPECT_EQ(fillet_leg_min_mm({one, other, low, false}), fillet_leg_min_mm({other, one, low, false}));
}

TEST(FilletMinimum, GermanAnnexAddsToTheEurocodeForThickPlates) {
  EXPECT_NEAR(*fillet_throat_min_german_annex_mm({20, 30, true, false}), std::sqrt(30.0) - 0.5, 1e-12);
  EXPECT_FALSE(fillet_throat_min_german_annex_mm({2, 2, true, false}));
}

TEST(FilletResistance, DirectionalMethodGainsTheRootOfOnePointFiveAcrossAndNothingAlong) {
  const FilletSteel steel = *fillet_steel("S355", FilletEdition::ed2005, TensileTable::design);
  const double strength = weld_shear_strength_MPa(steel.tensile_MPa, steel.beta_w);
  const double area = fillet_throat_area_mm2(4.0, 150.0, 2.0);
  const auto ratio = [&](double normal, double along) {
    return simplified_utilisation(area, normal, along, strength) /
           directional_utilisation(fillet_stress(area, normal, along), steel.tensile_MPa, steel.beta_w);
  };
  EXPECT_NEAR(ratio(1e5, 0), std::sqrt(1.5), 1e-12);
  EXPECT_NEAR(ratio(0, 1e5), 1, 1e-12);
  EXPECT_NEAR(ratio(-1e5, 0), ratio(1e5, 0), 1e-12);
  EXPECT_GT(ratio(1e5, 1e5), 1);
}

TEST(FilletResistance, StressesHaveTheForceAsTheirResultant) {
  // Across: normal and shear stress on the throat, at right angles, add up to N over the throat's area.
  const FilletStress<double> stress = fillet_stress(1200.0, 1e5, 4e4);
  EXPECT_NEAR(std::hypot(stress.normal_MPa, stress.shear_across_MPa) * 1200, 1e5, 1e-6);
  EXPECT_NEAR(stress.normal_MPa, 58.93, 0.005);
  EXPECT_NEAR(stress.shear_along_MPa * 1200, 4e4, 1e-6);
}

TEST(FilletResistance, LongLapFactorBeginsAtOne) {
  EXPECT_EQ(long_lap_factor(600, 4), 1);
  EXPECT_NEAR(long_lap_factor(1200, 4), 0.8, 1e-12);
  EXPECT_EQ(long_lap_factor(1e6, 4), 0);
}

TEST(FilletResistance, KnowsNoOtherGrade) {
  EXPECT_FALSE(fillet_steel("S690", FilletEdition::ed2005, TensileTable::design));
}

double limit_mm(const char* imperfection, const char* level, double size) {
  const auto judged = judge_imperfection(imperfection, {level, 8, true});
  return judged.permission == Permission::limited ? imperfection_limit_mm(*judged.rule, size) : 0;
}

TEST(Imperfection, IsNeverLargerAtAStricterLevel) {
  for (const char* imperfection : {"convexity", "unequal_legs", "root_gap", "undercut", "undersize_throat", "excess_throat"})
    for (double size : {3.0, 8.0, 40.0}) {
      EXPECT_LE(limit_mm(imperfection, "B", size), limit_mm(imperfection, "C", size)) << imperfection;
      // Level D doesn't limit an excess of throat.
      if (std::string_view(imperfection) != "excess_throat") {
        EXPECT_LE(limit_mm(imperfection, "C", size), limit_mm(imperfection, "D", size)) << imperfection;
      }
    }
}

TEST(Imperfection, SaysWhyThereIsNoLimit) {
  EXPECT_EQ(judge_imperfection("excess_throat", {"D", 8, false}).permission, Permission::unlimited);
  EXPECT_EQ(judge_imperfection("undersize_throat", {"B", 8, true}).permission, Permission::not_permitted);
  EXPECT_EQ(judge_imperfection("undersize_throat", {"C", 8, false}).permission, Permission::only_if_short);
  EXPECT_EQ(judge_imperfection("root_gap", {"C", 2, false}).permission, Permission::no_row);
  EXPECT_EQ(judge_imperfection("undercut", {"D", 0.5, true}).permission, Permission::limited);
}

}  // namespace
}  // namespace seamtakt
