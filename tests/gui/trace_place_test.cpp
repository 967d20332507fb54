#include <gtest/gtest.h>

#include "plots/trace_limits.hpp"

namespace seamtakt::desk {
namespace {

Excursion excursion(double start_s, double end_s) {
  Excursion each;
  each.quantity = "current_A";
  each.start_s = start_s;
  each.end_s = end_s;
  return each;
}

TEST(TracePlace, OfAFailedPassIsItsLongestExcursion) {
  PassRecord record;
  record.verdict = Verdict::fail;
  record.excursions = {excursion(3, 4), excursion(10, 14), excursion(20, 21)};
  record.interruptions = {{30, 5, 300}};
  const auto stretch = failed_stretch(record);
  ASSERT_TRUE(stretch);
  EXPECT_EQ(stretch->first, 10);
  EXPECT_EQ(stretch->second, 14);
}

TEST(TracePlace, WithoutAnExcursionIsTheLongestInterruption) {
  PassRecord record;
  record.verdict = Verdict::undecided;
  record.interruptions = {{5, 1, 50}, {30, 4, 300}};
  const auto stretch = failed_stretch(record);
  ASSERT_TRUE(stretch);
  EXPECT_EQ(stretch->first, 30);
  EXPECT_EQ(stretch->second, 34);
}

TEST(TracePlace, IsNowhereWhereThePassPassedOrWhatFailedHasNone) {
  PassRecord record;
  record.excursions = {excursion(3, 4)};
  EXPECT_FALSE(failed_stretch(record)) << "not judged";
  record.verdict = Verdict::pass;
  EXPECT_FALSE(failed_stretch(record));
  record.verdict = Verdict::fail;
  record.excursions.clear();
  EXPECT_FALSE(failed_stretch(record));
}

TEST(TracePlace, IsShownWithAsMuchAgainOnBothSides) {
  Trace trace;
  const float values[Trace::channels] = {200, 25, 8, 6};
  for (int i = 0; i <= 1000; ++i) trace.add(50 + i / 10.0, static_cast<std::uint32_t>(i + 2), values, 1u);
  trace.build();
  TraceView view;
  view.setTrace(&trace, 0, trace.size(), {}, "pass");
  view.showStretch(40, 44);
  EXPECT_DOUBLE_EQ(view.from(), 86);
  EXPECT_DOUBLE_EQ(view.to(), 98);
  view.showStretch(40, 40.1);
  EXPECT_NEAR(view.from(), 89, 1e-9);
  EXPECT_NEAR(view.to(), 91.1, 1e-9);
}

}  // namespace
}  // namespace seamtakt::desk
