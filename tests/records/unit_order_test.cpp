#include <gtest/gtest.h>

#include "audit_fixture.hpp"

namespace seamtakt::test {
namespace {

TEST(UnitOrder, APassBegunBeforeTheOneUnderItFails) {
  const Plan plan = small_plan();
  const auto good = audit_text(plain_header + arc_rows("U1,W,S3,1", 0, 37.5) +
                                   arc_rows("U1,W,S3,1", 37.5, 38, false) + arc_rows("U1,W,S3,2", 60, 97.5),
                               {}, &plan);
  EXPECT_FALSE(has_finding(good, "record.order.passes"));
  const auto bad = audit_text(plain_header + arc_rows("U1,W,S3,2", 0, 37.5) +
                                  arc_rows("U1,W,S3,2", 37.5, 38, false) + arc_rows("U1,W,S3,1", 60, 97.5),
                              {}, &plan);
  const auto found = findings_of(bad, "record.order.passes");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].where, "U1/W/S3/pass 2");
  EXPECT_EQ(found[0].severity, Severity::fail);
}

TEST(UnitOrder, ASeamBegunBeforeOneThatComesBeforeItIsAWarning) {
  Plan plan = small_plan();
  plan.weldments[0].seams[2].after = {"S1"};
  const std::string first = arc_rows("U1,W,S1,1", 0, 50), then = arc_rows("U1,W,S3,1", 60, 97.5);
  EXPECT_FALSE(has_finding(audit_text(plain_header + first + then, {}, &plan), "record.order.seams"));
  const auto swapped =
      audit_text(plain_header + arc_rows("U1,W,S3,1", 0, 37.5) + arc_rows("U1,W,S1,1", 60, 110), {}, &plan);
  EXPECT_EQ(findings_of(swapped, "record.order.seams").size(), 1u);
  const auto other_unit =
      audit_text(plain_header + arc_rows("U1,W,S3,1", 0, 37.5) + arc_rows("U2,W,S1,1", 60, 110), {}, &plan);
  EXPECT_FALSE(has_finding(other_unit, "record.order.seams")) << "another unit's seam";
}

TEST(UnitOrder, APassBegunTooSoonForTheInterpassLimitIsAWarning) {
  Plan plan = small_plan();
  plan.schedules[1].limits.emplace();
  plan.schedules[1].limits->interpass_C = Interval{std::nullopt, 100};
  const auto soon = audit_text(plain_header + arc_rows("U1,W,S3,1", 0, 37.5) +
                                   arc_rows("U1,W,S3,1", 37.5, 37.6, false) + arc_rows("U1,W,S3,2", 38, 75.5),
                               {}, &plan);
  const auto found = findings_of(soon, "record.interpass.soon");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(*found[0].value, 0.5, 1e-9);
  EXPECT_GT(*found[0].limit, 5);
  const auto late =
      audit_text(plain_header + arc_rows("U1,W,S3,1", 0, 37.5) + arc_rows("U1,W,S3,1", 37.5, 37.6, false) +
                     arc_rows("U1,W,S3,2", 37.5 + *found[0].limit + 1, 75.5 + *found[0].limit + 1),
                 {}, &plan);
  EXPECT_FALSE(has_finding(late, "record.interpass.soon"));
}

TEST(Contradictions, WireFedAgainstCurrentAndArea) {
  Plan plan = small_plan();
  plan.wires[0].alpha_mm_s_A = 0.3;
  plan.wires[0].beta_per_s_A2 = 5e-5;
  plan.wires[0].density_g_cm3 = 7.85;
  plan.wires[0].deposition_efficiency = 0.95;
  const auto with_feed = [&](const char* feed) {
    std::string log =
        "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,wire_feed_speed_m_min,travel_speed_mm_s\n";
    for (int i = 0; i <= 500; ++i)
      log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 500 ? fixed(230 + (i % 2), 1) : "0") + ",25," + feed +
             ",8\n";
    return audit_text(log, {}, &plan);
  };
  // 230 A melt 0.06 * (0.3 * 230 + 5e-5 * 18 * 230^2) = 7.0 m/min.
  const auto good = with_feed("7.0");
  EXPECT_FALSE(has_finding(good, "record.contradiction.current"));
  EXPECT_FALSE(has_finding(good, "record.contradiction.area"));
  const auto bad = with_feed("12.0");
  EXPECT_EQ(findings_of(bad, "record.contradiction.current").size(), 1u);
  EXPECT_EQ(findings_of(bad, "record.contradiction.area").size(), 1u) << "1.5 times the schedule's 8 m/min";
}

TEST(Statistics, OfAScheduleChartItsPassesAgainstItsLimits) {
  Plan plan = small_plan();
  plan.schedules[0].limits.emplace();
  plan.schedules[0].limits->current_A = Interval{190, 210};
  std::string log = plain_header;
  for (int unit = 0; unit < 12; ++unit)
    log += arc_rows("U" + std::to_string(unit) + ",W,S1,1", unit * 100, unit * 100 + 50);
  const auto result = audit_text(log, {}, &plan);
  ASSERT_FALSE(result.statistics.quantities.empty());
  const auto& current = result.statistics.quantities[0];
  EXPECT_EQ(current.schedule, "F");
  EXPECT_EQ(current.quantity, "current_A");
  EXPECT_EQ(current.values.size(), 12u);
  EXPECT_NEAR(current.chart.centre, 200, 0.01);
  ASSERT_TRUE(current.capability);
  const auto few = audit_text(plain_header + arc_rows("U1,W,S1,1", 0, 50), {}, &plan);
  EXPECT_TRUE(few.statistics.quantities.empty()) << "one pass is no chart";
}

}  // namespace
}  // namespace seamtakt::test
