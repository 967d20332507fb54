#include "formula/tolerance/qualification_range.hpp"

#include <gtest/gtest.h>

#include "base/error.hpp"

namespace seamtakt {
namespace {

QualifiedTest test_weld(const char* joint, const char* runs) {
  QualifiedTest test;
  test.joint = joint;
  test.runs = runs;
  return test;
}

TEST(QualifiedThickness, AlwaysHoldsTheTestedThicknessItself) {
  for (const char* joint : {"butt", "fillet"})
    for (const char* runs : {"single", "multi"})
      for (double tested = 1; tested <= 150; tested += 0.5) {
        const auto rule = thickness_rule(test_weld(joint, runs), tested);
        if (!rule) {
          EXPECT_TRUE(std::string(joint) == "butt" && std::string(runs) == "single" && tested > 100);
          continue;
        }
        EXPECT_TRUE(is_qualified(qualified_range(*rule, tested), tested))
            << joint << " " << runs << " " << tested;
      }
}

TEST(QualifiedHeatInput, IsOpenWithoutImpactAndHardness) {
  QualifiedTest test = test_weld("butt", "multi");
  EXPECT_FALSE(heat_input_rule(test).has_limit());
  test.impact_tested = test.hardness_tested = true;
  const auto range = qualified_range(heat_input_rule(test), 1.2);
  EXPECT_TRUE(is_qualified(range, 1.5)) << "25 % above is still qualified";
  EXPECT_TRUE(is_qualified(range, 0.9)) << "25 % below is still qualified";
  EXPECT_FALSE(is_qualified(range, 1.5001));
  EXPECT_FALSE(is_qualified(range, 0.8999));
}

TEST(QualifiedThroat, HasNoLimitForSeveralRuns) {
  EXPECT_FALSE(throat_rule(test_weld("fillet", "multi")).has_limit());
  EXPECT_TRUE(throat_rule(test_weld("fillet", "single")).has_limit());
  EXPECT_FALSE(throat_rule(test_weld("butt", "single")).has_limit());
}

TEST(QualifiedRange, OfAnUnknownBasisIsRefused) {
  QualifiedTest test = test_weld("butt", "multi");
  test.basis = "iso15614-99";
  EXPECT_THROW(thickness_rule(test, 10), InputError);
}

}  // namespace
}  // namespace seamtakt
