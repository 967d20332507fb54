// The carbon equivalent that a product standard allows holds its composition "at the maxima" back.
#include <gtest/gtest.h>

#include "formula/metal/cev_limit.hpp"

namespace seamtakt {
namespace {

using Pairs = std::vector<std::pair<std::string, double>>;

// EN 10025-2, Tables 2 and 6: S355J2 to 30 mm. By hand: CE = 0.2 + 1.6/6 + 0.55/15 = 0.50333;
// f = (0.45 - 0.2)/(0.50333 - 0.2) = 0.82418.
TEST(CevLimit, HoldsS355AtItsStandardsMaximum) {
  const auto steel = composition_of<double>(Pairs{{"C", 0.2}, {"Si", 0.55}, {"Mn", 1.6}, {"Cu", 0.55}});
  EXPECT_NEAR(carbon_equivalent_iiw_pct(steel), 0.503333, 1e-6);
  const double share = alloy_share(steel, 0.45);
  EXPECT_NEAR(share, 0.824176, 1e-6);
  const auto held = with_alloy_share(steel, share);
  EXPECT_NEAR(carbon_equivalent_iiw_pct(held), 0.45, 1e-12);
  EXPECT_NEAR(held.Mn, 1.318681, 1e-6);
  EXPECT_NEAR(held.Cu, 0.453297, 1e-6);
  EXPECT_EQ(held.C, 0.2);
  EXPECT_EQ(held.Si, 0.55);
  EXPECT_TRUE(held.was_reported("Mn"));
  EXPECT_FALSE(held.was_reported("Cr"));
}

TEST(CevLimit, LeavesALeanSteelAsItIs) {
  const auto steel = composition_of<double>(Pairs{{"C", 0.15}, {"Mn", 1.2}});
  EXPECT_EQ(alloy_share(steel, 0.45), 1);
  EXPECT_EQ(alloy_share(steel, carbon_equivalent_iiw_pct(steel)), 1);
  // No alloy is left where carbon alone is as much.
  EXPECT_EQ(alloy_share(steel, 0.15), 0);
}

TEST(CevLimit, IsLookedUpByGradeUpToItsThickness) {
  EXPECT_EQ(cev_limit_pct("EN 10025-2 S355J2", 30), 0.45);
  EXPECT_EQ(cev_limit_pct("S275J2", 8), 0.40);
  EXPECT_EQ(cev_limit_pct("S235JR", 8), 0.35);
  EXPECT_FALSE(cev_limit_pct("EN 10025-2 S355J2", 31));
  EXPECT_FALSE(cev_limit_pct("EN 10149-2 S700MC", 8)) << "the standard has no limit";
  EXPECT_FALSE(cev_limit_pct("1.4301", 8));
  EXPECT_FALSE(cev_limit_pct("", 8));
  EXPECT_FALSE(cev_limit_pct("EN 10025-2", 8)) << "no grade";
}

}  // namespace
}  // namespace seamtakt
