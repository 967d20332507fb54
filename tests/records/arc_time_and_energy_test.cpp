#include <gtest/gtest.h>

#include <cmath>

#include "audit_fixture.hpp"
#include "base/error.hpp"

namespace seamtakt::test {
namespace {

/// Two samples on, one off: every figure by hand.
TEST(ArcTime, AnIntervalCountsWhereItsFirstSampleIsOn) {
  const auto result = audit_text("time_s,current_A,voltage_V\n0,0,0\n1,100,20\n3,200,30\n4,0,10\n5,0,10\n");
  ASSERT_EQ(result.passes.size(), 1u);
  const PassRecord& pass = result.passes[0];
  EXPECT_DOUBLE_EQ(pass.arc_time_s, 3);
  EXPECT_EQ(pass.arc_starts, 1u);
  EXPECT_DOUBLE_EQ(*pass.mean_current_A, (100 * 2 + 200 * 1) / 3.0);
  EXPECT_DOUBLE_EQ(*pass.mean_voltage_V, (20 * 2 + 30 * 1) / 3.0);
  EXPECT_DOUBLE_EQ(*pass.mean_power_W, (2000 * 2 + 6000 * 1) / 3.0);
  EXPECT_DOUBLE_EQ(*pass.product_power_W, *pass.mean_current_A * *pass.mean_voltage_V);
  // Trapezoids: 2 s of (2000 + 6000)/2 and 1 s of (6000 + 0)/2.
  EXPECT_DOUBLE_EQ(*pass.energy_J, 8000 + 3000);
  EXPECT_EQ(pass.samples, 3u);
  EXPECT_DOUBLE_EQ(pass.duration_s, 3);
  EXPECT_EQ(pass.source_line_first, 3u);
  EXPECT_EQ(pass.source_line_last, 5u);
  EXPECT_EQ(result.rows.read, 5u);
  EXPECT_EQ(result.rows.in_passes, 3u);
  EXPECT_EQ(result.rows.arc_off, 2u);
}

TEST(ArcTime, UsesTheLoggedStepsWhateverTheyAre) {
  const auto even = audit_text("time_s,current_A,voltage_V\n0,100,20\n1,101,20\n2,100,20\n3,0,0\n");
  const auto uneven = audit_text("time_s,current_A,voltage_V\n0,100,20\n0.25,101,20\n2,100,20\n3,0,0\n");
  EXPECT_DOUBLE_EQ(*even.passes[0].mean_current_A, 301 / 3.0);
  EXPECT_DOUBLE_EQ(*uneven.passes[0].mean_current_A, (100 * 0.25 + 101 * 1.75 + 100) / 3);
}

TEST(ArcTime, FollowsTheArcCurrentThreshold) {
  const std::string log = "time_s,current_A,voltage_V\n0,5,20\n1,5.1,20\n2,30,20\n3,0,0\n";
  EXPECT_DOUBLE_EQ(audit_text(log).passes[0].arc_time_s, 2);
  AuditOptions options;
  options.arc_current_A = 20;
  EXPECT_DOUBLE_EQ(audit_text(log, options).passes[0].arc_time_s, 1);
}

TEST(Energy, TakesTheLoggedPowerAndNamesMethodC) {
  const auto result = audit_text("time_s,current_A,power_W\n0,100,2000\n1,110,4000\n2,0,0\n");
  const PassRecord& pass = result.passes[0];
  EXPECT_DOUBLE_EQ(*pass.energy_J, 3000 + 2000);
  EXPECT_DOUBLE_EQ(*pass.mean_power_W, 3000);
  EXPECT_FALSE(pass.mean_voltage_V);
  EXPECT_FALSE(pass.product_power_W);
  EXPECT_EQ(pass.energy_method, "C");
}

TEST(Energy, TakesTheEnergyCounterAndSurvivesItsReset) {
  const auto result = audit_text(
      "time_s,current_A,voltage_V,energy_J\n0,100,20,500\n1,110,20,2500\n2,100,20,10\n3,0,0,2010\n");
  const PassRecord& pass = result.passes[0];
  EXPECT_DOUBLE_EQ(*pass.energy_J, 2000 + 0 + 2000);
  EXPECT_EQ(pass.energy_method, "B");
  EXPECT_TRUE(has_finding(result, "record.counter.reset"));
}

TEST(Energy, SaysSoWhereAVoltageIsMissing) {
  const auto result =
      audit_text("time_s,current_A,voltage_V,power_W\n0,100,20,\n1,110,,3000\n2,100,20,2000\n3,0,0,0\n");
  // The power column rules; where it is empty nothing is known of the power.
  EXPECT_TRUE(has_finding(result, "record.power.missing"));
}

TEST(Energy, AveragedSignalsAreMethodAWhateverTheArithmetic) {
  AuditOptions options;
  options.columns = parse_log_columns(R"({"signal": "averaged"})", "columns.json");
  EXPECT_EQ(audit_text("time_s,current_A,voltage_V\n0,100,20\n1,0,0\n", options).passes[0].energy_method,
            "A");
  EXPECT_EQ(audit_text("time_s,current_A,power_W\n0,100,20\n1,0,0\n", options).passes[0].energy_method, "A");
  EXPECT_EQ(audit_text("time_s,current_A,voltage_V\n0,100,20\n1,0,0\n").passes[0].energy_method, "B");
}

TEST(Energy, SaysByWhichArithmeticThePowerCame) {
  AuditOptions averaged;
  averaged.columns = parse_log_columns(R"({"signal": "averaged"})", "columns.json");
  const auto method = [](const char* log, const AuditOptions& options = {}) {
    return audit_text(log, options).passes[0].power_method;
  };
  EXPECT_EQ(method("time_s,current_A,voltage_V\n0,100,20\n1,0,0\n"), "mean product");
  EXPECT_EQ(method("time_s,current_A,voltage_V\n0,100,20\n1,0,0\n", averaged), "product of means");
  EXPECT_EQ(method("time_s,current_A,power_W\n0,100,20\n1,0,0\n"), "logged power");
  EXPECT_EQ(method("time_s,current_A,voltage_V,energy_J\n0,100,20,500\n1,110,20,2500\n2,0,0,4500\n"),
            "energy counter");
}

TEST(Energy, MethodAOnAWaveformControlledScheduleTakesItsFactorAndSaysSo) {
  Plan plan = small_plan();
  plan.schedules[0].waveform = "waveform-controlled";
  plan.schedules[0].waveform_factor = 0.9;
  const std::string log =
      std::string(plain_columns) + "\n" + arc_rows("U1,W,S1,1", 0, 50) + "50.0,U1,W,S1,1,0,0\n";
  AuditOptions options;
  const auto instantaneous = audit_text(log, options, &plan);
  options.columns = parse_log_columns(R"({"signal": "averaged"})", "columns.json");
  const auto averaged = audit_text(log, options, &plan);
  EXPECT_DOUBLE_EQ(*averaged.passes[0].energy_J, 0.9 * *instantaneous.passes[0].energy_J);
  EXPECT_DOUBLE_EQ(*averaged.passes[0].heat_input_kJ_mm, 0.9 * *instantaneous.passes[0].heat_input_kJ_mm);
  EXPECT_DOUBLE_EQ(*averaged.passes[0].waveform_factor, 0.9);
  EXPECT_TRUE(has_finding(averaged, "record.energy.method-a"));
  EXPECT_FALSE(instantaneous.passes[0].waveform_factor);
  EXPECT_TRUE(has_finding(instantaneous, "record.sampling.coarse"));
}

TEST(Energy, TheUncertaintyOfAnAppliedFactorCounts) {
  Plan plan = small_plan();
  plan.measuring = Measuring{};
  plan.measuring->u_current_pct = plan.measuring->u_voltage_pct = plan.measuring->u_travel_speed_pct = 1;
  plan.schedules[0].waveform = "waveform-controlled";
  plan.schedules[0].waveform_factor = 0.9;
  const std::string log =
      std::string(plain_columns) + "\n" + arc_rows("U1,W,S1,1", 0, 50) + "50.0,U1,W,S1,1,0,0\n";
  AuditOptions options;
  const auto recorded = [&] { return audit_text(log, options, &plan).passes.at(0); };
  const PassRecord sampled = recorded();
  ASSERT_TRUE(sampled.U_heat_input_kJ_mm);
  EXPECT_FALSE(sampled.u_waveform_factor_pct) << "the mean product needs no factor";
  options.columns = parse_log_columns(R"({"signal": "averaged"})", "columns.json");
  const auto relative = [](const PassRecord& record) {
    return *record.U_heat_input_kJ_mm / *record.heat_input_kJ_mm;
  };
  // Half-width 10 %, the correction itself: u = 10 %/sqrt(3).
  const PassRecord corrected = recorded();
  EXPECT_NEAR(*corrected.u_waveform_factor_pct, 10 / std::sqrt(3.0), 1e-9);
  EXPECT_NEAR(relative(corrected), std::hypot(relative(sampled), 2 * 0.1 / std::sqrt(3.0)), 1e-9);
  plan.schedules[0].U_waveform_factor_pct = 4;
  EXPECT_NEAR(*recorded().u_waveform_factor_pct, 2, 1e-9);
  EXPECT_NEAR(relative(recorded()), std::hypot(relative(sampled), 0.04), 1e-9);
  // A factor of 1 that nobody has stated an uncertainty for: 3 %.
  plan.schedules[0].U_waveform_factor_pct.reset();
  plan.schedules[0].waveform_factor = 1;
  EXPECT_NEAR(*recorded().u_waveform_factor_pct, 3 / std::sqrt(3.0), 1e-9);
}

TEST(Energy, APulseTakesTwentySamplesAPeriod) {
  // 1 s of arc at `step_us` between samples.
  const auto is_coarse = [](const Plan& plan, int step_us) {
    std::string log = std::string(plain_columns) + "\n";
    for (int us = 0; us <= 1'000'000; us += step_us)
      log += fixed(us / 1e6, 6) + ",U1,W,S1,1," + (us / step_us % 2 == 0 ? "200" : "201") + ",25.0\n";
    log += fixed(1 + step_us / 1e6, 6) + ",U1,W,S1,1,0,0\n";
    return has_finding(audit_text(log, {}, &plan), "record.sampling.coarse");
  };
  Plan plan = small_plan();
  EXPECT_FALSE(is_coarse(plan, 2000)) << "a steady arc";
  plan.schedules[0].pulse = Pulse{400, 80, 2.5, 100, {}};
  EXPECT_TRUE(is_coarse(plan, 600));
  EXPECT_FALSE(is_coarse(plan, 400)) << "0.5 ms are a twentieth of 10 ms";
  // Without its frequency a pulse is taken to be one of 300 Hz: 0.167 ms.
  plan.schedules[0].pulse.reset();
  plan.schedules[0].transfer = "pulsed";
  EXPECT_TRUE(is_coarse(plan, 400));
  EXPECT_FALSE(is_coarse(plan, 160));
}

TEST(FrozenLogger, NoArcTimeAndAFinding) {
  std::string log = std::string(plain_columns) + "\n" + arc_rows("U1,W,S1,1", 0, 2);
  for (int i = 20; i < 60; ++i) log += fixed(i / 10.0, 1) + ",U1,W,S1,1,222.5,26.10\n";
  log += arc_rows("U1,W,S1,1", 6, 8) + "8.0,U1,W,S1,1,0,0\n";
  const auto result = audit_text(log);
  const PassRecord& pass = result.passes[0];
  EXPECT_NEAR(pass.frozen_s, 4.0, 1e-9);
  EXPECT_NEAR(pass.arc_time_s, 4.0, 1e-9);
  EXPECT_NEAR(*pass.mean_current_A, 200, 0.2) << "the frozen values count in no mean";
  ASSERT_TRUE(has_finding(result, "record.logger.frozen"));
  EXPECT_EQ(pass.arc_starts, 1u);
}

TEST(FrozenLogger, TwoSecondsAreStillAllowed) {
  std::string log = std::string(plain_columns) + "\n" + arc_rows("U1,W,S1,1", 0, 2);
  for (int i = 20; i <= 40; ++i) log += fixed(i / 10.0, 1) + ",U1,W,S1,1,222.5,26.10\n";
  log += arc_rows("U1,W,S1,1", 4.1, 6) + "6.0,U1,W,S1,1,0,0\n";
  const auto result = audit_text(log);
  EXPECT_NEAR(result.passes[0].arc_time_s, 6.0, 1e-9);
  EXPECT_FALSE(has_finding(result, "record.logger.frozen"));
}

TEST(FrozenLogger, APassThatIsFrozenThroughoutHasNoArcTimeAndIsUndecided) {
  std::string log = std::string(plain_columns) + "\n";
  for (int i = 0; i < 500; ++i) log += fixed(i / 10.0, 1) + ",U1,W,S1,1,200,25\n";
  const Plan plan = small_plan();
  const auto result = audit_text(log, {}, &plan);
  EXPECT_DOUBLE_EQ(result.passes[0].arc_time_s, 0);
  EXPECT_FALSE(result.passes[0].mean_current_A);
  EXPECT_FALSE(result.passes[0].energy_J);
  EXPECT_EQ(result.passes[0].verdict, Verdict::undecided);
}

TEST(FrozenLogger, AVoltageThatStillMovesIsALiveLogger) {
  std::string log = std::string(plain_columns) + "\n";
  for (int i = 0; i < 50; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1,200," + (i % 2 ? "25.1" : "25.0") + "\n";
  EXPECT_NEAR(audit_text(log).passes[0].arc_time_s, 4.9, 1e-9);
}

TEST(TimeOrder, GoingBackwardsWithinAPassFails) {
  const std::string log = std::string(plain_columns) +
                          "\n0,U1,W,S1,1,200,25\n1,U1,W,S1,1,201,25\n0.5,U1,W,S1,1,202,25\n1.5,U1,W,S1,1,203,"
                          "25\n2,U1,W,S1,1,0,0\n";
  const Plan plan = small_plan();
  const auto result = audit_text(log, {}, &plan);
  const auto found = findings_of(result, "record.time.backwards");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::fail);
  EXPECT_EQ(result.passes[0].verdict, Verdict::fail);
  EXPECT_EQ(result.passes[0].arc_starts, 1u) << "disorder is no arc start";
}

TEST(TimeOrder, AWindowPutsSmallDisorderRight) {
  const std::string sorted = std::string(plain_columns) +
                             "\n0,U1,W,S1,1,200,25\n0.5,U1,W,S1,1,202,25\n1,U1,W,S1,1,201,25\n1.5,U1,W,S1,1,"
                             "203,25\n2,U1,W,S1,1,0,0\n";
  const std::string mixed = std::string(plain_columns) +
                            "\n0,U1,W,S1,1,200,25\n1,U1,W,S1,1,201,25\n0.5,U1,W,S1,1,202,25\n1.5,U1,W,S1,1,"
                            "203,25\n2,U1,W,S1,1,0,0\n";
  AuditOptions options;
  options.sort_window = 2;
  const auto right = audit_text(sorted), put_right = audit_text(mixed, options);
  EXPECT_FALSE(has_finding(put_right, "record.time.backwards"));
  EXPECT_EQ(*right.passes[0].energy_J, *put_right.passes[0].energy_J);
  EXPECT_EQ(right.passes[0].arc_time_s, put_right.passes[0].arc_time_s);
}

TEST(TimeOrder, EqualTimesAddNothingAndAreNoted) {
  const auto result =
      audit_text(std::string(plain_columns) +
                 "\n0,U1,W,S1,1,200,25\n1,U1,W,S1,1,201,25\n1,U1,W,S1,1,301,25\n2,U1,W,S1,1,0,0\n");
  EXPECT_DOUBLE_EQ(result.passes[0].arc_time_s, 2);
  EXPECT_DOUBLE_EQ(*result.passes[0].mean_current_A, (200 + 301) / 2.0);
  EXPECT_TRUE(has_finding(result, "record.time.equal"));
}

TEST(TimeOrder, AStepWithoutSamplesIsNoArcTime) {
  const std::string log = std::string(plain_columns) + "\n" + arc_rows("U1,W,S1,1", 0, 3) +
                          arc_rows("U1,W,S1,1", 33, 36) + "36.0,U1,W,S1,1,0,0\n";
  const auto result = audit_text(log);
  ASSERT_EQ(result.passes.size(), 1u);
  EXPECT_NEAR(result.passes[0].arc_time_s, 2.9 + 3.0, 1e-9);
  EXPECT_EQ(result.passes[0].arc_starts, 2u);
  ASSERT_EQ(result.passes[0].interruptions.size(), 1u);
  EXPECT_NEAR(result.passes[0].interruptions[0].duration_s, 30.1, 1e-9);
  EXPECT_TRUE(has_finding(result, "record.samples.hole"));
}

TEST(TimeOrder, ASlowLoggersStepsAreNoHoles) {
  std::string log = "time_s,current_A,voltage_V\n";
  for (int i = 0; i < 20; ++i) log += std::to_string(5 * i) + "," + std::to_string(200 + i % 3) + ",25\n";
  EXPECT_DOUBLE_EQ(audit_text(log).passes[0].arc_time_s, 95);
}

TEST(WireCounter, IsComparedAndDecidesNothing) {
  Plan plan = small_plan();
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,wire_used_mm\n";
  for (int i = 0; i <= 500; ++i)  // 8 m/min would be 133.3 mm/s; the counter says 50 mm/s
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 500 ? fixed(200 + i % 2, 0) : "0") + ",25," +
           fixed(i * 5, 1) + "\n";
  const auto result = audit_text(log, {}, &plan);
  EXPECT_NEAR(*result.passes[0].wire_counter_m_min, 3.0, 1e-9);
  EXPECT_FALSE(result.passes[0].wire_feed_speed_m_min);
  EXPECT_TRUE(has_finding(result, "record.wire.counter"));
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
}

}  // namespace
}  // namespace seamtakt::test
