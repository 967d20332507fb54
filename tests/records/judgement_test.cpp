#include <gtest/gtest.h>

#include <cmath>

#include "audit_fixture.hpp"
#include "formula/heat/cooling_time.hpp"
#include "plan/evaluate/instrument_uncertainty.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* header_with_speed =
    "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";

/// A pass over S1 at 8 mm/s with `amperes` and 25 V: 50 s.
std::string pass_at(double amperes, double volts = 25, double speed = 8) {
  std::string log = header_with_speed;
  for (int i = 0; i <= 500; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 500 ? fixed(amperes + (i % 2 ? 0.5 : -0.5), 2) : "0") +
           "," + fixed(volts, 3) + "," + fixed(speed, 3) + "\n";
  return log;
}

Plan with_limit(std::optional<Interval> ScheduleLimits::*limit, Interval interval) {
  Plan plan = small_plan();
  plan.schedules[0].limits.emplace();
  (*plan.schedules[0].limits).*limit = interval;
  return plan;
}

TEST(Judgement, InsideTheLimitsPasses) {
  const Plan plan = with_limit(&ScheduleLimits::current_A, {190, 210});
  const auto result = audit_text(pass_at(200), {}, &plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
  EXPECT_EQ(result.passes[0].schedule, "F");
  for (const auto& finding : result.findings)
    if (finding.where == "U1/W/S1/pass 1") {
      EXPECT_NE(finding.severity, Severity::fail) << finding.rule;
    }
}

TEST(Judgement, OutsideTheLimitsFailsAndSaysWhich) {
  const Plan plan = with_limit(&ScheduleLimits::current_A, {190, 210});
  const auto high = audit_text(pass_at(215), {}, &plan);
  EXPECT_EQ(high.passes[0].verdict, Verdict::fail);
  const auto found = findings_of(high, "record.current.high");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].where, "U1/W/S1/pass 1");
  EXPECT_NEAR(*found[0].value, 215, 0.01);
  EXPECT_DOUBLE_EQ(*found[0].limit, 210);
  EXPECT_EQ(found[0].unit, "A");
  EXPECT_EQ(findings_of(audit_text(pass_at(180), {}, &plan), "record.current.low").size(), 1u);
}

TEST(Judgement, EveryLimitOfAScheduleIsJudged) {
  struct Case {
    std::optional<Interval> ScheduleLimits::*limit;
    Interval interval;
    const char* rule;
  };
  const Case cases[] = {
      {&ScheduleLimits::current_A, {{}, 100}, "record.current.high"},
      {&ScheduleLimits::voltage_V, {26, {}}, "record.voltage.low"},
      {&ScheduleLimits::wire_feed_speed_m_min, {{}, 7}, "record.wire-feed-speed.high"},
      {&ScheduleLimits::travel_speed_mm_s, {9, {}}, "record.travel-speed.low"},
      {&ScheduleLimits::gas_flow_l_min, {18, {}}, "record.gas-flow.low"},
      {&ScheduleLimits::interpass_C, {{}, 100}, "record.interpass.high"},
      {&ScheduleLimits::heat_input_kJ_mm, {{}, 0.4}, "record.heat-input.high"},
      {&ScheduleLimits::cooling_time_s, {30, {}}, "record.cooling-time.low"},
  };
  std::string log =
      "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s,wire_feed_speed_m_min,gas_"
      "flow_l_min,interpass_C\n";
  for (int i = 0; i <= 500; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 500 ? fixed(200 + i % 2, 0) : "0") + ",25,8,8,15,140\n";
  for (const Case& each : cases) {
    const Plan plan = with_limit(each.limit, each.interval);
    const auto result = audit_text(log, {}, &plan);
    EXPECT_EQ(findings_of(result, each.rule).size(), 1u) << each.rule;
    EXPECT_EQ(result.passes[0].verdict, Verdict::fail) << each.rule;
  }
}

TEST(Judgement, ALimitOnWhatIsNotLoggedIsANote) {
  const Plan plan = with_limit(&ScheduleLimits::gas_flow_l_min, {12, 18});
  const auto result = audit_text(pass_at(200), {}, &plan);
  EXPECT_EQ(findings_of(result, "record.limit.not-logged").size(), 1u);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
}

TEST(Judgement, UsesTheSteadyPartForMeansAndTheWholePassForHeatInput) {
  Plan plan = with_limit(&ScheduleLimits::current_A, {195, 205});
  plan.schedules[0].arc_start_s = 1;
  plan.schedules[0].crater_fill_s = 2;
  std::string log = header_with_speed;
  for (int i = 0; i <= 500; ++i) {
    const double amperes = i < 10 ? 300 : i >= 480 ? 120 : 200;
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 500 ? fixed(amperes + (i % 2 ? 0.5 : -0.5), 1) : "0") +
           ",25,8\n";
  }
  const auto result = audit_text(log, {}, &plan);
  const PassRecord& pass = result.passes[0];
  EXPECT_NEAR(pass.steady.time_s, 47, 1e-9);
  EXPECT_NEAR(*pass.steady.current_A, 200, 0.02);
  EXPECT_NEAR(*pass.mean_current_A, (300 * 1 + 200 * 47 + 120 * 2) / 50.0, 0.02);
  EXPECT_EQ(pass.verdict, Verdict::pass);
  EXPECT_NEAR(*pass.heat_input_kJ_mm, 0.8 * *pass.energy_J / *pass.length_mm / 1000, 1e-12);
}

TEST(Judgement, CutsStartAndCraterOffEveryArc) {
  Plan plan = small_plan();
  plan.schedules[0].arc_start_s = 1;
  plan.schedules[0].crater_fill_s = 1;
  std::string log = header_with_speed;
  for (int i = 0; i <= 300; ++i) {
    const bool on = i % 100 < 75 && i < 300;
    log += fixed(i / 10.0, 1) + ",U1,W,S2,1," + (on ? fixed(200 + i % 2, 0) : "0") + ",25,8\n";
  }
  const auto result = audit_text(log, {}, &plan);
  EXPECT_NEAR(result.passes[0].arc_time_s, 22.5, 1e-9);
  EXPECT_NEAR(result.passes[0].steady.time_s, 3 * 5.5, 1e-9);
}

TEST(Judgement, TakesTheRobotsTimesWhereTheScheduleHasNone) {
  Plan plan = small_plan();
  Robot first, second;
  first.id = "R1";
  first.arc_start_s = 1;
  second.id = "R2";
  second.arc_start_s = 3;
  plan.cell.emplace();
  plan.cell->robots = {first, second};
  plan.weldments[0].seams[0].robots = {"R2"};
  EXPECT_NEAR(audit_text(pass_at(200), {}, &plan).passes[0].steady.time_s, 47, 1e-9);
}

TEST(Judgement, AnArcShorterThanStartAndCraterIsUndecided) {
  Plan plan = with_limit(&ScheduleLimits::current_A, {190, 210});
  plan.schedules[0].arc_start_s = 30;
  plan.schedules[0].crater_fill_s = 30;
  const auto result = audit_text(pass_at(200), {}, &plan);
  EXPECT_TRUE(has_finding(result, "record.steady.none"));
  EXPECT_EQ(result.passes[0].verdict, Verdict::undecided);
}

// Source of the rule: ILAC-G8:09/2019, 4.2.2, guard band w = U; JCGM 100:2008, 4.3.7 and 5.1.6.
TEST(Judgement, WithinTheGuardBandIsUndecidedOnlyUnderAGuardedDecision) {
  Plan plan = with_limit(&ScheduleLimits::current_A, {{}, 210});
  plan.measuring = Measuring{};
  plan.measuring->u_current_pct = 2;  // U = 8 A at 200 A
  const auto simple = audit_text(pass_at(204), {}, &plan);
  EXPECT_EQ(simple.passes[0].verdict, Verdict::pass);
  plan.measuring->decision = "guarded";
  const auto guarded = audit_text(pass_at(204), {}, &plan);
  EXPECT_EQ(guarded.passes[0].verdict, Verdict::undecided);
  const auto found = findings_of(guarded, "record.current.guard-band");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_EQ(audit_text(pass_at(200), {}, &plan).passes[0].verdict, Verdict::pass);
  EXPECT_EQ(audit_text(pass_at(211), {}, &plan).passes[0].verdict, Verdict::fail);
}

TEST(Judgement, HeatInputCarriesTheInstrumentsUncertainty) {
  Plan plan = small_plan();
  plan.measuring = Measuring{};
  plan.measuring->u_current_pct = 1.5;
  plan.measuring->u_voltage_pct = 1;
  plan.measuring->u_travel_speed_pct = 0.5;
  const auto result = audit_text(pass_at(200), {}, &plan);
  const double relative = std::sqrt(1.5 * 1.5 + 1 * 1 + 0.5 * 0.5) / 100;
  EXPECT_NEAR(*result.passes[0].U_heat_input_kJ_mm, 2 * relative * *result.passes[0].heat_input_kJ_mm, 1e-12);
  EXPECT_FALSE(audit_text(pass_at(200)).passes[0].U_heat_input_kJ_mm);
}

TEST(Judgement, AnInstrumentsHalfWidthIsRectangular) {
  Plan plan;
  Instrument clamp;
  clamp.id = "I-1";
  clamp.quantity = "current";
  clamp.half_width_pct = 2.5;
  clamp.of = "full-scale";
  clamp.full_scale = 500;
  Instrument of_robot = clamp;
  of_robot.id = "I-2";
  of_robot.robot = "R2";
  of_robot.of = "reading";
  plan.instruments = {clamp, of_robot};
  EXPECT_NEAR(*relative_uncertainty(plan, "R1", "current", 250), 0.05 / std::sqrt(3.0), 1e-15);
  EXPECT_NEAR(*relative_uncertainty(plan, "R2", "current", 250), 0.025 / std::sqrt(3.0), 1e-15);
  EXPECT_FALSE(relative_uncertainty(plan, "R1", "voltage", 25));
  plan.measuring = Measuring{};
  plan.measuring->u_voltage_pct = 1;
  EXPECT_DOUBLE_EQ(*relative_uncertainty(plan, "R1", "voltage", 25), 0.01);
}

TEST(Judgement, AnOverdueInstrumentLeavesItUndecidedWhereTheLogHasDates) {
  Plan plan = small_plan();
  Instrument meter;
  meter.id = "V-7";
  meter.quantity = "voltage";
  meter.half_width_pct = 1;
  meter.due = "2026-03-31";
  plan.instruments = {meter};
  const auto log_on = [](const char* date) {
    std::string log = "timestamp,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
    for (int i = 0; i <= 50; ++i)
      log += std::string(date) + "T08:00:" + (i < 10 ? "0" : "") + std::to_string(i) + "Z,U1,W,S1,1," +
             (i < 50 ? std::to_string(200 + i % 2) : "0") + ",25,8\n";
    return log;
  };
  EXPECT_EQ(audit_text(log_on("2026-03-31"), {}, &plan).passes[0].verdict, Verdict::pass)
      << "due on the day is in time";
  const auto late = audit_text(log_on("2026-04-01"), {}, &plan);
  EXPECT_EQ(late.passes[0].verdict, Verdict::undecided);
  EXPECT_TRUE(has_finding(late, "record.instrument.overdue"));
  EXPECT_FALSE(has_finding(audit_text(pass_at(200), {}, &plan), "record.instrument.overdue"))
      << "seconds tell no date";
}

TEST(Judgement, TheCoolingTimeIsTheFormulasForTheThinnerPlate) {
  const Plan plan = small_plan();
  const auto result = audit_text(pass_at(200), {}, &plan);
  const PassRecord& pass = result.passes[0];
  EXPECT_DOUBLE_EQ(*pass.cooling_time_s, cooling_time(*pass.heat_input_kJ_mm, 8.0, 20.0, 0.67, 0.67).time_s);
}

TEST(Judgement, RequiredColumnsMustBeThere) {
  Plan plan = small_plan();
  plan.record_requires = {"wire_lot", "seam"};
  const auto without = audit_text(pass_at(200), {}, &plan);
  EXPECT_EQ(findings_of(without, "record.required.missing").size(), 1u);
  EXPECT_EQ(without.passes[0].verdict, Verdict::fail);
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s,Wire_Lot\n";
  for (int i = 0; i <= 500; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 500 ? fixed(200 + i % 2, 0) : "0") + ",25,8,L-1\n";
  const auto with = audit_text(log, {}, &plan);
  EXPECT_FALSE(has_finding(with, "record.required.missing"));
  EXPECT_EQ(with.passes[0].carried[0].values, std::vector<std::string>{"L-1"});
}

TEST(Judgement, AnotherScheduleRevisionLeavesItUndecided) {
  const Plan plan = small_plan();
  std::string log = "time_s,unit_serial,weldment,seam,pass,schedule_revision,current_A,voltage_V\n" +
                    arc_rows("U1,W,S1,1,2", 0, 50) + "50.0,U1,W,S1,1,2,0,0\n";
  const auto result = audit_text(log, {}, &plan);
  EXPECT_TRUE(has_finding(result, "record.schedule.revision"));
  EXPECT_EQ(result.passes[0].verdict, Verdict::undecided);
}

TEST(Judgement, AValueOffByAUnitsFactorIsSuspected) {
  const Plan plan = small_plan();
  const auto found = findings_of(audit_text(pass_at(200, 25, 48), {}, &plan), "record.unit.suspect");
  ASSERT_EQ(found.size(), 1u) << "48 cm/min is 8 mm/s";
  EXPECT_FALSE(has_finding(audit_text(pass_at(200, 25, 8.3), {}, &plan), "record.unit.suspect"));
}

TEST(Judgement, LoggedArcOnIsComparedButTheCurrentDecides) {
  const auto result = audit_text("time_s,current_A,voltage_V,arc_on\n0,200,25,1\n1,201,25,0\n2,0,0,0\n");
  EXPECT_DOUBLE_EQ(result.passes[0].arc_time_s, 2);
  EXPECT_TRUE(has_finding(result, "record.arc-on.disagrees"));
}

}  // namespace
}  // namespace seamtakt::test
