// Stretches outside the limits of gas flow, travel speed and voltage, each with a way of its own.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "base/json/json_node.hpp"
#include "excursion_fixture.hpp"
#include "records/passes/audit_json.hpp"

namespace seamtakt::test {
namespace {

TEST(ExcursionsOfEachQuantity, GasFlowHasAWindowOfThreeSeconds) {
  ScheduleLimits limits;
  limits.gas_flow_l_min = Interval{12, 18};
  const Plan plan = plan_with(limits);
  const auto dip_of = [](double for_s) {
    return [=](double t) { return t >= 21 - 1e-9 && t < 21 + for_s - 1e-9 ? 9.0 : 15.0; };
  };
  EXPECT_TRUE(audited({.gas = dip_of(1)}, plan).passes[0].excursions.empty()) << "(9 + 2 x 15) / 3 = 13";
  AuditOptions options;
  options.excursions.gas_window_s = 1;
  EXPECT_EQ(audited({.gas = dip_of(1)}, plan, options).passes[0].excursions.size(), 1u);
  const auto longer = audited({.gas = dip_of(3)}, plan);
  ASSERT_EQ(longer.passes[0].excursions.size(), 1u);
  EXPECT_STREQ(longer.passes[0].excursions[0].quantity, "gas_flow_l_min");
  EXPECT_DOUBLE_EQ(longer.passes[0].excursions[0].start_s, 21);
  EXPECT_DOUBLE_EQ(longer.passes[0].excursions[0].end_s, 24);
  EXPECT_EQ(longer.passes[0].undecided_by, std::vector<std::string>{"record.gas-flow.excursion"});
}

/// Positions along S1 at 8 mm/s, `slow_mm_s` from 20 to 25 s; the torch stands from `stop_s` on.
std::string positions_log(double slow_mm_s, double to_s, double stop_s) {
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,x_mm,y_mm,z_mm\n";
  double x_mm = 0;
  const int rows = static_cast<int>(std::lround(to_s * 10));
  for (int i = 0; i <= rows; ++i) {
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < rows ? fixed(301 + i % 2, 0) : "0") + ",25," +
           fixed(x_mm, 2) + ",0,0\n";
    const double moves_s = std::clamp(stop_s - i / 10.0, 0.0, 0.1);
    x_mm += moves_s * (i >= 200 && i < 250 ? slow_mm_s : 8);
  }
  return log;
}

TEST(ExcursionsOfEachQuantity, TravelSpeedIsThatOfThePositionsWhereTheyTellTheLength) {
  ScheduleLimits limits;
  limits.travel_speed_mm_s = Interval{7.2, 8.8};
  const Plan plan = plan_with(limits);
  const auto result = audit_text(positions_log(4, 52.5, 60), {}, &plan);
  const PassRecord& pass = result.passes[0];
  ASSERT_EQ(pass.excursions.size(), 1u);
  EXPECT_STREQ(pass.excursions[0].quantity, "travel_speed_mm_s");
  EXPECT_DOUBLE_EQ(pass.excursions[0].start_s, 20);
  EXPECT_DOUBLE_EQ(pass.excursions[0].end_s, 25);
  EXPECT_NEAR(pass.excursions[0].length_mm, 20, 1e-9);
  EXPECT_NEAR(pass.excursions[0].value, 4, 1e-9);
  EXPECT_EQ(pass.verdict, Verdict::undecided) << "20 mm in one stretch";
}

TEST(ExcursionsOfEachQuantity, PositionsTellASmallLossOfSpeedWithinAnArc) {
  ScheduleLimits limits;
  limits.travel_speed_mm_s = Interval{7.2, 8.8};
  const Plan plan = plan_with(limits);
  const auto result = audit_text(positions_log(6.9, 50.7, 60), {}, &plan);
  ASSERT_EQ(result.passes[0].excursions.size(), 1u);
  EXPECT_NEAR(result.passes[0].excursions[0].length_mm, 34.5, 1e-9);
  EXPECT_EQ(result.passes[0].failed_by, std::vector<std::string>{"record.travel-speed.excursion"});
}

TEST(ExcursionsOfEachQuantity, WhereBetweenTwoSamplesTheTorchStoppedIsNoExcursion) {
  ScheduleLimits limits;
  limits.travel_speed_mm_s = Interval{7.4, 8.6};
  const Plan plan = plan_with(limits);
  const auto result = audit_text(positions_log(8, 50, 49.91), {}, &plan);
  EXPECT_EQ(result.passes[0].length_source, "positions");
  EXPECT_TRUE(result.passes[0].excursions.empty());
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
}

TEST(ExcursionsOfEachQuantity, AVoltageIsJudgedBehindItsLeads) {
  ScheduleLimits limits;
  limits.voltage_V = Interval{24, 26};
  Plan plan = plan_with(limits);
  const Weld weld{.volts = [](double t) { return t >= 20 && t < 25 ? 27.5 : 26.7; }};
  EXPECT_EQ(audited(weld, plan).passes[0].failed_by, std::vector<std::string>{"record.voltage.high"});
  Instrument meter;
  meter.id = "V-1";
  meter.quantity = "voltage";
  meter.lead_resistance_mOhm = 4;  // 1.204 V at 301 A
  plan.instruments = {meter};
  const auto result = audited(weld, plan);
  const PassRecord& pass = result.passes[0];
  EXPECT_EQ(pass.failed_by, std::vector<std::string>{"record.voltage.excursion"}) << "40 mm";
  ASSERT_EQ(pass.excursions.size(), 1u);
  EXPECT_DOUBLE_EQ(pass.excursions[0].start_s, 20);
  EXPECT_DOUBLE_EQ(pass.excursions[0].end_s, 25);
  EXPECT_NEAR(pass.excursions[0].value, 27.5 - 1.204, 1e-9);
}

TEST(ExcursionsOfEachQuantity, TheRecordsVoltageAndHeatInputAreThoseOfTheArcBehindTheLeads) {
  Plan plan = small_plan();
  const Weld weld{.volts = [](double) { return 26; }};
  const PassRecord logged = audited(weld, plan).passes[0];
  EXPECT_FALSE(logged.lead_resistance_mOhm);
  Instrument meter;
  meter.id = "V-1";
  meter.quantity = "voltage";
  meter.lead_resistance_mOhm = 4;
  plan.instruments = {meter};
  const PassRecord arc = audited(weld, plan).passes[0];
  EXPECT_DOUBLE_EQ(*arc.lead_resistance_mOhm, 4);
  EXPECT_NEAR(*arc.mean_voltage_V, 26 - 1.204, 1e-9);
  EXPECT_NEAR(*arc.steady.voltage_V, 26 - 1.204, 1e-9);
  const double squared = 301 * 301 + 0.25;  // of 300.5 and 301.5 A
  EXPECT_NEAR(*arc.mean_power_W, *logged.mean_power_W - 0.004 * squared, 1e-6);
  EXPECT_NEAR(*arc.energy_J, *logged.energy_J - 0.004 * squared * 50, 1e-4);
  EXPECT_NEAR(*arc.heat_input_kJ_mm / *logged.heat_input_kJ_mm, *arc.energy_J / *logged.energy_J, 1e-12);
  EXPECT_DOUBLE_EQ(*arc.max_voltage_V, 26) << "of single samples, as logged";
  // The voltmeter's 1 % are of 26 V, and of the 1.204 V lost 20 % may be off (half width).
  EXPECT_FALSE(arc.U_heat_input_kJ_mm) << "no instrument states its limits";
  plan.instruments[0].half_width_pct = 1;
  plan.instruments[0].of = "reading";
  const PassRecord certain = audited(weld, plan).passes[0];
  const double arc_V = 26 - 1.204;
  const double u = std::hypot(0.01 / std::sqrt(3.0) * 26 / arc_V, 0.2 / std::sqrt(3.0) * 1.204 / arc_V);
  EXPECT_NEAR(*certain.u_voltage_pct, 100 * u, 1e-9);
  EXPECT_NEAR(*certain.U_heat_input_kJ_mm, 2 * u * *certain.heat_input_kJ_mm, 1e-12);
  std::string text;
  write_audit_json(audited(weld, plan), text);
  const JsonNode root = parse_json(text, "audit.json");
  EXPECT_EQ(root.find("passes")->elements.at(0).find("lead_resistance_mOhm")->number, 4);
}

}  // namespace
}  // namespace seamtakt::test
