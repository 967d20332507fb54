#include "formula/tolerance/general_tolerance.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "base/error.hpp"

namespace seamtakt {
namespace {

double tolerance_mm(ToleranceKind kind, const char* tolerance_class, double length) {
  return general_tolerance(kind, tolerance_class, length)->tolerance_mm.value();
}

TEST(GeneralTolerance, NeverFallsWithLengthAndWidensFromClassToClass) {
  for (double length : {31.0, 130.0, 500.0, 1500.0, 3000.0, 6000.0, 10000.0, 14000.0, 18000.0, 30000.0}) {
    for (const char* pair : {"AB", "BC", "CD"}) {
      const std::string finer(1, pair[0]), coarser(1, pair[1]);
      EXPECT_LE(tolerance_mm(ToleranceKind::linear, finer.c_str(), length),
                tolerance_mm(ToleranceKind::linear, coarser.c_str(), length));
    }
    for (const char* pair : {"EF", "FG", "GH"}) {
      const std::string finer(1, pair[0]), coarser(1, pair[1]);
      EXPECT_LT(tolerance_mm(ToleranceKind::straightness, finer.c_str(), length),
                tolerance_mm(ToleranceKind::straightness, coarser.c_str(), length));
    }
    for (const char* tolerance_class : {"A", "B", "C", "D"})
      EXPECT_LE(tolerance_mm(ToleranceKind::linear, tolerance_class, length / 2),
                tolerance_mm(ToleranceKind::linear, tolerance_class, length));
  }
}

TEST(GeneralTolerance, RoundsTheTangentOfTheAngleToHalfAMillimetreAMetre) {
  for (const char* tolerance_class : {"A", "B", "C", "D"})
    for (double leg : {300.0, 700.0, 2000.0}) {
      const GeneralTolerance tolerance = *general_tolerance(ToleranceKind::angular, tolerance_class, leg);
      const double tangent = 1000 * std::tan(*tolerance.tolerance_deg * std::numbers::pi / 180);
      EXPECT_NEAR(*tolerance.tolerance_mm_per_m, tangent, 0.56);
    }
}

TEST(GeneralTolerance, StatesAnglesInWholeMinutes) {
  EXPECT_DOUBLE_EQ(*general_tolerance(ToleranceKind::angular, "A", 100)->tolerance_deg, 20.0 / 60);
  EXPECT_DOUBLE_EQ(*general_tolerance(ToleranceKind::angular, "A", 2000)->tolerance_deg, 10.0 / 60);
}

TEST(GeneralTolerance, TakesTheKindFromTheClass) {
  EXPECT_EQ(kind_of_class("B"), ToleranceKind::linear);
  EXPECT_EQ(kind_of_class("F"), ToleranceKind::straightness);
  EXPECT_FALSE(kind_of_class("BF"));
  EXPECT_FALSE(kind_of_class("J"));
  EXPECT_FALSE(kind_of_class(""));
  EXPECT_THROW(general_tolerance(ToleranceKind::linear, "J", 100), InputError);
}

}  // namespace
}  // namespace seamtakt
