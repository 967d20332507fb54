#include <gtest/gtest.h>
#include <tuple>
#include <utility>

#include "formula/size/fillet_minimum.hpp"
#include "formula/strength/fillet_resistance.hpp"
#include "formula/tolerance/imperfection.hpp"

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
  for (const char* imperfection :
       {"convexity", "unequal_legs", "root_gap", "undercut", "undersize_throat", "excess_throat"})
    for (double size : {3.0, 8.0, 40.0}) {
      EXPECT_LE(limit_mm(imperfection, "B", size), limit_mm(imperfection, "C", size)) << imperfection;
      // Level D doesn't limit an excess of throat.
      if (std::string_view(imperfection) != "excess_throat") {
        EXPECT_LE(limit_mm(imperfection, "C", size), limit_mm(imperfection, "D", size)) << imperfection;
      }
    }
}

/// Limit where the imperfection may be long, and the plate's thickness decides which row holds.
double limit_of_plate_mm(const char* imperfection, const char* level, double size, double thickness,
                         bool is_short) {
  const auto judged = judge_imperfection(imperfection, {level, thickness, is_short});
  return judged.permission == Permission::limited ? imperfection_limit_mm(*judged.rule, size) : -1;
}

/// Where a limit of constant + factor * size meets its cap, the two are one: no jump, straight before, level
/// after.
void expect_straight_up_to_the_cap(const char* imperfection, const char* level, double constant, double cap) {
  const double one = limit_mm(imperfection, level, 1) - constant, meets = (cap - constant) / one;
  ASSERT_GT(one, 0) << imperfection << level;
  for (double share : {0.1, 0.5, 0.9, 0.999})
    EXPECT_NEAR(limit_mm(imperfection, level, meets * share), constant + share * (cap - constant), 1e-9)
        << imperfection << level;
  for (double more : {1.0, 1.001, 2.0, 50.0})
    EXPECT_NEAR(limit_mm(imperfection, level, meets * more), cap, 1e-12) << imperfection << level;
}

// The allowed convexity grows with the face's width; a face of width 0 may still be 1 mm convex.
TEST(Imperfection, ConvexityGrowsWithTheFaceAloneFromOneMillimetreToItsCap) {
  for (const auto& [level, cap] : {std::pair("D", 5.0), std::pair("C", 4.0), std::pair("B", 3.0)}) {
    expect_straight_up_to_the_cap("convexity", level, 1, cap);
    for (const double thickness : {0.5, 2.0, 3.0, 8.0, 60.0})
      EXPECT_EQ(limit_of_plate_mm("convexity", level, 12, thickness, false),
                limit_of_plate_mm("convexity", level, 12, 8, true));
  }
}

// Excess throat isn't a weakness: the largest total throat rises with the required one, and the allowed
// excess share falls.
TEST(Imperfection, ExcessThroatIsASmallerShareTheThickerTheWeld) {
  for (const auto& [level, cap] : {std::pair("C", 4.0), std::pair("B", 3.0)}) {
    expect_straight_up_to_the_cap("excess_throat", level, 1, cap);
    double share_before = 1e9, whole_before = 0;
    for (double throat = 0.5; throat < 60; throat *= 1.3) {
      const double excess = limit_mm("excess_throat", level, throat);
      EXPECT_LT(excess / throat, share_before);
      EXPECT_GT(throat + excess, whole_before);
      share_before = excess / throat;
      whole_before = throat + excess;
    }
  }
}

// A small throat lacks strength: the remainder must be most of the throat from 1 mm on, and more for a larger
// weld.
TEST(Imperfection, AnUndersizeThroatLeavesMostOfTheThroat) {
  for (const auto& [level, cap] : {std::pair("D", 2.0), std::pair("C", 1.0)}) {
    expect_straight_up_to_the_cap("undersize_throat", level, 0.3, cap);
    double left_before = 0;
    for (double throat = 1; throat < 80; throat *= 1.2) {
      const double left = throat - limit_mm("undersize_throat", level, throat);
      EXPECT_GE(left, 0.6 * throat - 1e-12);
      EXPECT_GT(left, left_before);
      left_before = left;
      EXPECT_EQ(limit_of_plate_mm("undersize_throat", level, throat, 8, false), -1)
          << "only where it is short";
    }
  }
  // Up to 3 mm of plate: 0.2 + 0.1a at D, 0.2 mm whatever the throat at C (recalled).
  for (const double throat : {1.0, 2.0, 4.0}) {
    EXPECT_NEAR(limit_of_plate_mm("undersize_throat", "D", throat, 2, true), 0.2 + 0.1 * throat, 1e-12);
    EXPECT_NEAR(limit_of_plate_mm("undersize_throat", "C", throat, 2, true), 0.2, 1e-12);
    EXPECT_EQ(limit_of_plate_mm("undersize_throat", "C", throat, 2, false), -1);
  }
}

// The one limit without a cap: legs may differ by more the larger the weld, and level C by half a millimetre
// more than B.
TEST(Imperfection, UnequalLegsHaveNoCapAndOneSlopeAtLevelsBAndC) {
  for (const double throat : {1.0, 4.0, 20.0, 300.0}) {
    EXPECT_NEAR(limit_mm("unequal_legs", "C", throat) - limit_mm("unequal_legs", "B", throat), 0.5, 1e-12);
    for (const char* level : {"B", "C", "D"}) {
      const double one = limit_mm("unequal_legs", level, throat),
                   two = limit_mm("unequal_legs", level, 2 * throat),
                   three = limit_mm("unequal_legs", level, 3 * throat);
      EXPECT_NEAR(two - one, three - two, 1e-9 * three) << level;
      EXPECT_GT(three - two, 0.14 * throat) << level;
    }
  }
}

// A gap at the root takes throat away on one side only: it stays below the throat from 2 mm on, and up to 3
// mm of plate a stricter row holds.
TEST(Imperfection, ARootGapStaysBelowTheThroatAndIsSmallerUpToThreeMillimetresOfPlate) {
  for (const auto& [level, constant, cap] :
       {std::tuple("D", 1.0, 4.0), std::tuple("C", 0.5, 3.0), std::tuple("B", 0.5, 2.0)}) {
    expect_straight_up_to_the_cap("root_gap", level, constant, cap);
    for (double throat = 2; throat < 40; throat *= 1.2)
      EXPECT_LT(limit_mm("root_gap", level, throat), throat) << level;
    const double thin = limit_of_plate_mm("root_gap", level, 5, 3, false);
    EXPECT_LT(thin, limit_of_plate_mm("root_gap", level, 5, 3.001, false)) << level;
    EXPECT_EQ(limit_of_plate_mm("root_gap", level, 5, 0.5, false), thin) << level;
    EXPECT_EQ(limit_of_plate_mm("root_gap", level, 5, 0.49, false), -1) << level;
  }
}

// Undercut is a share of the plate, without a constant: twice the plate, twice the limit; and the row for
// thin plate, where only short ones are permitted, equals that for thick plate at 3 mm.
TEST(Imperfection, UndercutIsAShareOfThePlateAndThinPlatesRowJoinsThickPlates) {
  for (const auto& [level, cap] : {std::pair("D", 1.0), std::pair("C", 0.5), std::pair("B", 0.5)}) {
    expect_straight_up_to_the_cap("undercut", level, 0, cap);
    EXPECT_NEAR(limit_mm("undercut", level, 4.8), 2 * limit_mm("undercut", level, 2.4), 1e-12) << level;
  }
  for (const char* level : {"C", "D"}) {
    EXPECT_NEAR(limit_of_plate_mm("undercut", level, 3, 3, true),
                limit_of_plate_mm("undercut", level, 3, 3.0001, true), 1e-12);
    EXPECT_EQ(limit_of_plate_mm("undercut", level, 3, 3, false), -1);
  }
}

TEST(Imperfection, SaysWhyThereIsNoLimit) {
  EXPECT_EQ(judge_imperfection("excess_throat", {"D", 8, false}).permission, Permission::unlimited);
  EXPECT_EQ(judge_imperfection("undersize_throat", {"B", 8, true}).permission, Permission::not_permitted);
  EXPECT_EQ(judge_imperfection("undersize_throat", {"C", 8, false}).permission, Permission::only_if_short);
  EXPECT_EQ(judge_imperfection("root_gap", {"C", 0.4, false}).permission, Permission::no_row);
  EXPECT_EQ(judge_imperfection("undersize_throat", {"B", 2, true}).permission, Permission::not_permitted);
  EXPECT_EQ(judge_imperfection("undercut", {"D", 0.5, true}).permission, Permission::limited);
}

}  // namespace
}  // namespace seamtakt
