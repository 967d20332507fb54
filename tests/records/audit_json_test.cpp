#include "records/passes/audit_json.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "audit_fixture.hpp"
#include "base/json/json_node.hpp"
#include "base/units/units.hpp"

namespace seamtakt::test {
namespace {

JsonNode document(const AuditResult& result) {
  std::string text;
  write_audit_json(result, text);
  return parse_json(text, "audit.json");
}

TEST(AuditJson, HasEveryKeyOfThePassRecord) {
  const Plan plan = small_plan();
  const auto root = document(
      audit_text("time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n" + arc_rows("U1,W,S1,1", 0, 50),
                 {}, &plan));
  const JsonNode& pass = root.find("passes")->elements.at(0);
  for (const char* key : {"unit_serial",
                          "weldment",
                          "seam",
                          "pass",
                          "schedule",
                          "samples",
                          "duration_s",
                          "arc_time_s",
                          "arc_starts",
                          "length_mm",
                          "product_power_W",
                          "mean_current_A",
                          "mean_voltage_V",
                          "mean_power_W",
                          "energy_J",
                          "travel_speed_mm_s",
                          "wire_feed_speed_m_min",
                          "arc_energy_kJ_mm",
                          "heat_input_kJ_mm",
                          "U_heat_input_kJ_mm",
                          "cooling_time_s",
                          "verdict",
                          "source_line_first",
                          "source_line_last",
                          "energy_method",
                          "interruptions",
                          "overlap_mm"})
    EXPECT_NE(pass.find(key), nullptr) << key;
  EXPECT_EQ(pass.find("verdict")->string, "pass");
  const JsonNode& unit = root.find("units")->elements.at(0);
  for (const char* key :
       {"complete", "complete_robot", "complete_manual", "missing_passes", "extra_passes", "repeated_passes"})
    EXPECT_NE(unit.find(key), nullptr) << key;
  for (const char* key : {"rejected", "findings", "rows"}) EXPECT_NE(root.find(key), nullptr) << key;
}

TEST(AuditJson, WhatIsMissingIsNull) {
  const auto root = document(audit_text("time_s,current_A,voltage_V\n0,200,25\n1,201,25\n"));
  const JsonNode& pass = root.find("passes")->elements.at(0);
  for (const char* key :
       {"unit_serial", "weldment", "seam", "schedule", "length_mm", "heat_input_kJ_mm", "U_heat_input_kJ_mm",
        "cooling_time_s", "wire_feed_speed_m_min", "travel_speed_mm_s", "verdict"})
    EXPECT_EQ(pass.find(key)->kind, JsonNode::Kind::null) << key;
  EXPECT_EQ(pass.find("pass")->number, 1);
}

/// A torch that weaves 3 mm to either side at 8 mm/s, with its speed logged as 7.5 mm/s.
std::string weaving_log() {
  std::string log =
      "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s,x_mm,y_mm,z_mm\n";
  for (int i = 0; i <= 1000; ++i) {
    const double t = 0.05 * i;
    log += number_text(t) + ",U1,W,S1,1," + (i < 1000 ? "200." + std::to_string(i % 7) : "0") + ",25,7.5," +
           number_text(8 * t) + ',' + number_text(3 * std::sin(2 * std::numbers::pi * 1.5 * t)) + ",0\n";
  }
  return log;
}

TEST(AuditJson, AMeanOfTheLoggedSpeedIsNotTheSpeedThatTheLengthGives) {
  const Plan plan = small_plan();
  const auto with_plan = document(audit_text(weaving_log(), {}, &plan));
  const JsonNode& known = with_plan.find("passes")->elements.at(0);
  EXPECT_NEAR(known.find("travel_speed_mm_s")->number, 8, 0.01);
  EXPECT_EQ(known.find("logged_travel_speed_mm_s"), nullptr);
  // Without a plan nobody knows how long a weaving torch welds.
  const auto without_plan = document(audit_text(weaving_log()));
  const JsonNode& unknown = without_plan.find("passes")->elements.at(0);
  EXPECT_EQ(unknown.find("length_mm")->kind, JsonNode::Kind::null);
  EXPECT_EQ(unknown.find("travel_speed_mm_s")->kind, JsonNode::Kind::null);
  ASSERT_NE(unknown.find("logged_travel_speed_mm_s"), nullptr);
  EXPECT_NEAR(unknown.find("logged_travel_speed_mm_s")->number, 7.5, 1e-12);
}

TEST(AuditJson, RejectedRowsNameFileLineAndReason) {
  const auto root = document(audit_text("time_s,current_A,voltage_V\n0,200,25\nx,\"2\"\"00\",25\n"));
  const JsonNode& row = root.find("rejected")->elements.at(0);
  EXPECT_EQ(row.find("file")->string, "log.csv");
  EXPECT_EQ(row.find("line")->number, 3);
  EXPECT_FALSE(row.find("reason")->string.empty());
  EXPECT_EQ(root.find("rows")->find("rejected")->number, 1);
}

TEST(AuditJson, HostileTextComesBackAsItWas) {
  AuditOptions options;
  options.carry = {"remark"};
  const std::string remark = "=cmd|' /C calc'!A0\t<script>\\u0000\"\"quoted\"\"";
  const auto root = document(
      audit_text("time_s,current_A,voltage_V,remark\n0,200,25,\"" + remark + "\"\n1,201,25,\n", options));
  EXPECT_EQ(root.find("passes")->elements.at(0).find("carried")->find("remark")->string,
            "=cmd|' /C calc'!A0\t<script>\\u0000\"quoted\"");
}

}  // namespace
}  // namespace seamtakt::test
