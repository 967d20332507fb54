#include <gtest/gtest.h>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

AuditOptions with_columns(const std::string& json) {
  AuditOptions options;
  options.columns = parse_log_columns(json, "columns.json");
  return options;
}

std::string refusal(const std::string& json) {
  try {
    parse_log_columns(json, "columns.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

TEST(LogColumns, NamesUnitsAndScalesAreTaken) {
  const auto options = with_columns(R"({
    "time": {"column": "ms", "unit": "ms"},
    "current_A": {"column": "Strom", "unit": "kA"},
    "voltage_V": {"column": "Spannung", "scale": 0.1},
    "travel_speed_mm_s": {"column": "v", "unit": "cm/min"},
    "interpass_C": {"column": "T", "unit": "F"}})");
  const auto result =
      audit_text("ms;Strom;Spannung;v;T\n0;0,2;250;48;212\n500;0,201;250;48;212\n1000;0;0;0;0\n", options);
  const PassRecord& pass = result.passes[0];
  EXPECT_DOUBLE_EQ(pass.arc_time_s, 1);
  EXPECT_DOUBLE_EQ(*pass.mean_current_A, 200.5);
  EXPECT_DOUBLE_EQ(*pass.mean_voltage_V, 25);
  EXPECT_NEAR(*pass.length_mm, 8, 1e-12);
  EXPECT_NEAR(*pass.interpass_C, 100, 1e-9);
}

TEST(LogColumns, NumbersStandForColumnsOfALogWithoutHeader) {
  const auto options = with_columns(
      R"({"header": "absent", "time": {"column": 1, "unit": "s"}, "current_A": 3, "voltage_V": {"column": 2},
    "seam": 4})");
  const auto result = audit_text("0,25,200,S1\n1,25,201,S1\n2,0,0,S1\n", options);
  ASSERT_EQ(result.passes.size(), 1u);
  EXPECT_EQ(result.rows.read, 3u) << "the first row is data";
  EXPECT_DOUBLE_EQ(*result.passes[0].mean_current_A, 200.5);
  EXPECT_EQ(result.passes[0].seam, "S1");
  EXPECT_EQ(result.passes[0].source_line_first, 1u);
}

TEST(LogColumns, SeveralTimeColumnsAreJoined) {
  const auto options =
      with_columns(R"({"time": {"columns": ["Date", "Time"], "format": "%m/%d/%Y %H:%M:%S"}})");
  const auto result = audit_text(
      "Date,Time,current_A,voltage_V\n9/9/2022,04:41:14.028,200,25\n9/9/2022,04:41:14.528,201,25\n", options);
  EXPECT_DOUBLE_EQ(result.passes[0].arc_time_s, 0.5);
  EXPECT_EQ(result.passes[0].started, "2022-09-09T04:41:14.028Z");
  EXPECT_TRUE(has_finding(result, "record.time.no-offset"));
}

TEST(LogColumns, SeveralFormatsAreTriedInTurn) {
  const auto options =
      with_columns(R"({"time": {"column": "t", "format": ["%d.%m.%Y %H:%M:%S", "%Y-%m-%d %H:%M:%S"]}})");
  const auto result =
      audit_text("t,current_A,voltage_V\n7.3.2026 06:00:00,200,25\n2026-03-07 06:00:01,201,25\n", options);
  EXPECT_DOUBLE_EQ(result.passes[0].arc_time_s, 1);
  EXPECT_EQ(result.rows.rejected, 0u);
}

TEST(LogColumns, ShortRowsAreTakenOnlyWhereTheFileSaysSo) {
  const std::string log = "time_s,current_A,voltage_V,note\n0,200,25\n1,201,25,x\n2,0,0\n";
  EXPECT_EQ(audit_text(log).rows.rejected, 2u);
  EXPECT_EQ(audit_text(log, with_columns(R"({"short_rows": "accept"})")).rows.rejected, 0u);
  EXPECT_EQ(audit_text(log, with_columns(R"({"short_rows": "reject"})")).rows.rejected, 2u);
  EXPECT_EQ(
      audit_text("time_s,current_A,voltage_V\n0,200,25,9\n", with_columns(R"({"short_rows": "accept"})"))
          .rows.rejected,
      1u)
      << "a field too many is never guessed at";
}

TEST(LogColumns, WhatTheFileDoesNotMentionIsFoundByTheStandardNames) {
  const auto result = audit_text("time_s,I,voltage_V,unit_serial\n0,200,25,U1\n1,201,25,U1\n",
                                 with_columns(R"({"current_A": "I"})"));
  EXPECT_EQ(result.passes[0].unit_serial, "U1");
}

TEST(LogColumns, ANamedColumnMustBeInTheLog) {
  EXPECT_THROW(audit_text("time_s,current_A,voltage_V\n0,1,2\n", with_columns(R"({"current_A": "Strom"})")),
               InputError);
  EXPECT_THROW(audit_text("time_s,current_A,voltage_V\n0,1,2\n", with_columns(R"({"current_A": 4})")),
               InputError);
  EXPECT_THROW(
      audit_text("0,1,2\n",
                 with_columns(R"({"header": "absent", "time": 1, "current_A": "I", "voltage_V": 3})")),
      InputError);
}

TEST(LogColumns, BadFilesAreRefusedWithTheirPlace) {
  EXPECT_EQ(refusal("{\n  \"curent_A\": \"I\"}").substr(0, 17), "columns.json:2:15");
  EXPECT_NE(refusal(R"({"curent_A": "I"})").find("(at /curent_A)"), std::string::npos);
  EXPECT_NE(refusal(R"({"current_A": {"column": "I", "unit": "V"}})").find("A or kA"), std::string::npos);
  for (const char* bad : {R"([])",
                          R"({"current_A": {}})",
                          R"({"current_A": {"column": 0}})",
                          R"({"current_A": {"column": 1.5}})",
                          R"({"current_A": ""})",
                          R"({"current_A": {"column": "I", "scale": 0}})",
                          R"({"current_A": {"column": "I", "scale": "2"}})",
                          R"({"current_A": {"column": "I", "factor": 2}})",
                          R"({"time": {"format": "%Y"}})",
                          R"({"time": {"columns": []}})",
                          R"({"time": {"column": "t", "format": "%H:%M"}})",
                          R"({"time": {"column": "t", "unit": "mm"}})",
                          R"({"time": {"columns": ["a", "b"], "unit": "s"}})",
                          R"({"time": {"column": "t", "unit": "s", "format": "%s"}})",
                          R"({"signal": "smooth"})",
                          R"({"signal": 1})",
                          R"({"short_rows": true})",
                          R"({"header": "maybe"})",
                          R"({"job": {"values": {}}})",
                          R"({"job": {"column": "j", "values": {"1": {"pass": 0}}}})",
                          R"({"job": {"column": "j", "values": {"1": {"seam": 3}}}})",
                          R"({"job": {"column": "j", "values": {"1": {"sem": "S"}}}})",
                          R"({)"})
    EXPECT_NE(refusal(bad), "accepted") << bad;
}

TEST(LogColumns, FreeKeysAreFree) {
  EXPECT_EQ(refusal(R"({"x_about": "where this log comes from", "current_A": {"column": "I", "x_note": 1}})"),
            "accepted");
}

TEST(LogColumns, EveryShippedFileIsReadable) {
  const std::string path = source_path("/reference/arc-log-columns/two-column-time.json");
  const LogColumns columns = load_log_columns(path);
  EXPECT_EQ(columns.time.size(), 2u);
  EXPECT_TRUE(columns.accept_short_rows);
}

TEST(LogColumns, TheShippedFileSaysWhichOpenDataSetItsHeadingsComeFrom) {
  const std::string path = source_path("/reference/arc-log-columns/two-column-time.json");
  const JsonNode file = parse_json(read_file(path, JsonLimits{}.bytes), path);
  const JsonNode* source = file.find("x_source");
  ASSERT_TRUE(source);
  EXPECT_NE(source->string.find("Robotic Welding Multimodal Dataset"), std::string::npos) << source->string;
}

TEST(LogHeader, NamesStandInAnyOrderAndAnyCase) {
  const auto result = audit_text("VOLTAGE_V, Current_a ,TIME_S\n25,200,0\n25,201,1\n");
  EXPECT_DOUBLE_EQ(*result.passes[0].mean_current_A, 200);
}

TEST(LogHeader, AKnownNameWithAnotherUnitIsNotPassedOver) {
  for (const char* header :
       {"time_s,current_kA,voltage_V", "time_s,current_A,voltage_V,travel_speed_cm_min",
        "time_s,current_A,voltage_mV", "time_s,current_A,voltage_V,wire_feed_speed_in_min",
        "time_ms,current_A,voltage_V"})
    EXPECT_THROW(audit_text(std::string(header) + "\n0,1,2,3\n"), InputError) << header;
  EXPECT_NO_THROW(audit_text("time_s,current_A,voltage_V,current_max,voltage_min\n0,1,2,3,4\n"));
  EXPECT_NO_THROW(audit_text(
      "time_s,current_A,voltage_V,travel_speed_cm_min\n0,1,2,3\n",
      with_columns(R"({"travel_speed_mm_s": {"column": "travel_speed_cm_min", "unit": "cm/min"}})")));
}

}  // namespace
}  // namespace seamtakt::test
