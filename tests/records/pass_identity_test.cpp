#include <gtest/gtest.h>

#include <set>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* bare_header = "time_s,current_A,voltage_V\n";

std::string bare(double from_s, double to_s, bool on) {
  std::string text = arc_rows("", from_s, to_s, on), out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    out += text[i];
    if (text[i] == ',' && text[i + 1] == ',') ++i;  // the empty identity goes
  }
  return out;
}

TEST(PassIdentity, GapsWithinALoggedIdentityDoNotSplitIt) {
  const std::string id = "U1,W,S2,1";
  const std::string log = std::string(plain_header) + arc_rows(id, 0, 7.5) + arc_rows(id, 7.5, 12.5, false) +
                          arc_rows(id, 12.5, 20) + arc_rows(id, 20, 25, false) + arc_rows(id, 25, 32.5) +
                          arc_rows(id, 32.5, 33, false);
  const Plan plan = small_plan();
  const auto result = audit_text(log, {}, &plan);
  ASSERT_EQ(result.passes.size(), 1u);
  const PassRecord& pass = result.passes[0];
  EXPECT_EQ(pass.arc_starts, 3u);
  ASSERT_EQ(pass.interruptions.size(), 2u);
  EXPECT_NEAR(pass.interruptions[0].start_s, 7.5, 1e-9);
  EXPECT_NEAR(pass.interruptions[0].duration_s, 5, 1e-9);
  EXPECT_EQ(pass.interruptions[0].line, 77u);
  EXPECT_NEAR(pass.arc_time_s, 22.5, 1e-9);
  EXPECT_EQ(pass.samples, 330u) << "arc-off rows with the pass's identity are the pass's";
  EXPECT_NEAR(pass.duration_s, 32.9, 1e-9);
  EXPECT_EQ(pass.length_source, "plan");
  EXPECT_DOUBLE_EQ(*pass.length_mm, 180);
}

TEST(PassIdentity, IsOnePassWhereverTheLogHasIt) {
  // Two robots in one log, row by row, and a return to the first pass later.
  std::string log = plain_header;
  const std::string first = arc_rows("U1,W,S1,1", 0, 10), second = arc_rows("U2,W,S3,2", 0.05, 10.05);
  for (std::size_t a = 0, b = 0; a < first.size();) {
    const auto a_end = first.find('\n', a) + 1, b_end = second.find('\n', b) + 1;
    log += first.substr(a, a_end - a) + second.substr(b, b_end - b);
    a = a_end, b = b_end;
  }
  log += arc_rows("U1,W,S3,1", 20, 22) + arc_rows("U1,W,S1,1", 30, 32);
  const auto result = audit_text(log);
  ASSERT_EQ(result.passes.size(), 3u);
  EXPECT_EQ(result.passes[0].place(), "U1/W/S1/pass 1");
  EXPECT_EQ(result.passes[1].place(), "U2/W/S3/pass 2");
  EXPECT_EQ(result.passes[2].place(), "U1/W/S3/pass 1");
  EXPECT_EQ(result.passes[0].samples, 120u);
  EXPECT_EQ(result.passes[1].samples, 100u);
}

TEST(PassIdentity, WithoutOneALongGapBeginsANewPass) {
  const std::string log = bare_header + bare(0, 5, true) + bare(5, 5.5, false) + bare(5.5, 8, true) +
                          bare(8, 10, false) + bare(10, 12, true) + bare(12, 14, false);
  const auto result = audit_text(log);
  ASSERT_EQ(result.passes.size(), 2u);
  EXPECT_EQ(*result.passes[0].pass, 1);
  EXPECT_EQ(*result.passes[1].pass, 2);
  EXPECT_EQ(result.passes[0].arc_starts, 2u);
  EXPECT_NEAR(result.passes[0].arc_time_s, 7.5, 1e-9);
  EXPECT_NEAR(result.passes[1].arc_time_s, 2, 1e-9);
  EXPECT_TRUE(result.passes[0].unit_serial.empty());
  // Each pass ends with the row in which the arc is out; the other arc-off rows belong to none.
  EXPECT_EQ(result.rows.in_passes, 81u + 21u);
  EXPECT_EQ(result.rows.arc_off, 140u - 102u);
}

TEST(PassIdentity, TheGapThatSplitsIsAnOption) {
  const std::string log = bare_header + bare(0, 5, true) + bare(5, 8, false) + bare(8, 10, true);
  AuditOptions options;
  options.arc_off_s = 5;
  EXPECT_EQ(audit_text(log).passes.size(), 2u);
  EXPECT_EQ(audit_text(log, options).passes.size(), 1u);
}

TEST(PassIdentity, AGapOfExactlyTheLimitDoesNotSplit) {
  const std::string log = bare_header + bare(0, 5, true) + bare(5, 6, false) + bare(6, 8, true);
  EXPECT_EQ(audit_text(log).passes.size(), 1u);
}

TEST(PassIdentity, ComesFromOptionsWhereTheLogHasNone) {
  const std::string log = bare_header + bare(0, 5, true) + bare(5, 8, false) + bare(8, 10, true);
  AuditOptions options;
  options.unit_serial = "U9";
  options.weldment = "W";
  options.seam = "S3";
  const auto numbered = audit_text(log, options);
  ASSERT_EQ(numbered.passes.size(), 2u);
  EXPECT_EQ(numbered.passes[1].place(), "U9/W/S3/pass 2");
  options.pass = 1;
  const auto given = audit_text(log, options);
  ASSERT_EQ(given.passes.size(), 1u) << "a pass that is named isn't split";
  EXPECT_EQ(given.passes[0].arc_starts, 2u);
}

TEST(PassIdentity, RobotsWithoutIdentityAreNumberedApartByTime) {
  std::string log = "time_s,robot,current_A,voltage_V\n";
  for (int i = 0; i < 100; ++i)
    for (const char* robot : {"R1", "R2"}) {
      const bool on = robot[1] == '1' ? i < 40 || i >= 60 : i >= 20 && i < 80;
      log += fixed(i / 10.0, 1) + "," + robot + "," + (on ? fixed(200 + i % 2, 0) : "0") + ",25\n";
    }
  const auto result = audit_text(log);
  ASSERT_EQ(result.passes.size(), 3u);
  EXPECT_EQ(result.passes[0].robot, "R1");
  EXPECT_EQ(result.passes[1].robot, "R2");
  EXPECT_EQ(result.passes[2].robot, "R1");
  std::set<int> numbers;
  for (const auto& pass : result.passes) numbers.insert(*pass.pass);
  EXPECT_EQ(numbers, (std::set<int>{1, 2, 3}));
}

TEST(PassIdentity, UnitsComeByTime) {
  AuditOptions options;
  options.units = parse_unit_times("unit_serial,weldment,start,end\nU1,W,0,20\nU2,W,20,40\n", "units.csv");
  std::string log = "time_s,seam,pass,current_A,voltage_V\n";
  log += arc_rows("S1,1", 0, 10) + arc_rows("S1,1", 25, 30) + arc_rows("S1,1", 50, 52);
  const auto result = audit_text(log, options);
  ASSERT_EQ(result.passes.size(), 3u);
  EXPECT_EQ(result.passes[0].place(), "U1/W/S1/pass 1");
  EXPECT_EQ(result.passes[1].place(), "U2/W/S1/pass 1");
  EXPECT_EQ(result.passes[2].place(), "-/-/S1/pass 1") << "outside of every unit's time";
  EXPECT_EQ(result.units.size(), 2u);
}

TEST(PassIdentity, UnitsTimesMustBeOfTheLogsKind) {
  AuditOptions options;
  options.units = parse_unit_times(
      "unit_serial,weldment,start,end\nU1,W,2026-01-01T00:00:00Z,2026-01-02T00:00:00Z\n", "units.csv");
  EXPECT_THROW(audit_text(std::string(bare_header) + bare(0, 1, true), options), InputError);
}

TEST(PassIdentity, JobNumbersStandForSeamAndPass) {
  AuditOptions options;
  options.columns = parse_log_columns(
      R"({"job": {"column": "prog", "values": {"17": {"seam": "S1", "pass": 1}, "18": {"seam": "S3", "pass": 2}}}})",
      "c.json");
  std::string log = "time_s,prog,current_A,voltage_V\n";
  log += arc_rows("17", 0, 5) + arc_rows("17", 5, 6, false) + arc_rows("18", 6, 8) + arc_rows("17", 20, 25) +
         arc_rows("99", 30, 32) + arc_rows("0", 40, 41, false);
  const auto result = audit_text(log, options);
  // The same job again after another one is another unit's: nothing else tells them apart.
  ASSERT_EQ(result.passes.size(), 4u);
  EXPECT_EQ(result.passes[0].place(), "-/-/S1/pass 1");
  EXPECT_EQ(result.passes[1].place(), "-/-/S3/pass 2");
  EXPECT_EQ(result.passes[2].place(), "-/-/S1/pass 1");
  EXPECT_EQ(result.passes[3].place(), "-/-/-/pass 1");
  const auto unknown = findings_of(result, "record.job.unknown");
  ASSERT_EQ(unknown.size(), 1u);
  EXPECT_NE(unknown[0].text().find("99"), std::string::npos);
  EXPECT_TRUE(result.rows.add_up());
  EXPECT_EQ(result.rows.in_passes + result.rows.arc_off, 160u);
}

TEST(PassIdentity, AJobBegunAgainAfterALongPauseIsAnotherUnits) {
  AuditOptions options;
  options.columns = parse_log_columns(
      R"({"job": {"column": "job", "values": {"1": {"seam": "S2", "pass": 1}}}})", "c.json");
  std::string log = "time_s,job,current_A,voltage_V\n";
  log += arc_rows("1", 0, 7) + arc_rows("1", 7, 12, false) + arc_rows("1", 12, 19) +
         arc_rows("1", 19, 70, false) + arc_rows("1", 70, 77);
  const auto result = audit_text(log, options);
  ASSERT_EQ(result.passes.size(), 2u);
  EXPECT_EQ(result.passes[0].arc_starts, 2u) << "an intermittent seam stays one pass";
}

TEST(PassIdentity, JobNumbersOfThePlanStandForSeamAndPass) {
  Plan plan = small_plan();
  plan.weldments[0].seams[0].jobs = {"17"};
  plan.weldments[0].seams[2].jobs = {"18", "19"};
  std::string log = "time_s,unit_serial,Job,current_A,voltage_V\n";
  log += arc_rows("U1,17", 0, 50) + arc_rows("U1,18", 60, 97) + arc_rows("U1,19", 100, 137);
  const auto result = audit_text(log, {}, &plan);
  ASSERT_EQ(result.passes.size(), 3u);
  EXPECT_EQ(result.passes[0].place(), "U1/W/S1/pass 1");
  EXPECT_EQ(result.passes[1].place(), "U1/W/S3/pass 1");
  EXPECT_EQ(result.passes[2].place(), "U1/W/S3/pass 2");
  EXPECT_EQ(result.passes[2].schedule, "G");
  EXPECT_FALSE(has_finding(result, "record.columns.ignored"));
}

TEST(PassIdentity, AColumnsFilesOwnJobsGoBeforeThePlans) {
  Plan plan = small_plan();
  plan.weldments[0].seams[0].jobs = {"17"};
  AuditOptions options;
  options.columns = parse_log_columns(
      R"({"job": {"column": "job", "values": {"17": {"seam": "S3", "pass": 2}}}})", "c.json");
  const std::string log = "time_s,unit_serial,job,current_A,voltage_V\n" + arc_rows("U1,17", 0, 37);
  const auto result = audit_text(log, options, &plan);
  ASSERT_EQ(result.passes.size(), 1u);
  EXPECT_EQ(result.passes[0].place(), "U1/W/S3/pass 2");
}

TEST(PassIdentity, AJobOfTwoWeldmentsLeavesTheWeldmentToTheUnitsTimes) {
  Plan plan = small_plan();
  plan.weldments[0].seams[0].jobs = {"17"};
  plan.weldments.push_back(plan.weldments[0]);
  plan.weldments[1].id = "V";
  AuditOptions options;
  options.units = parse_unit_times("unit_serial,weldment,start,end\nU1,W,0,55\nU2,V,55,200\n", "units.csv");
  const std::string log =
      "time_s,job,current_A,voltage_V\n" + arc_rows("17", 0, 50) + arc_rows("17", 60, 110);
  const auto result = audit_text(log, options, &plan);
  ASSERT_EQ(result.passes.size(), 2u);
  EXPECT_EQ(result.passes[0].place(), "U1/W/S1/pass 1");
  EXPECT_EQ(result.passes[1].place(), "U2/V/S1/pass 1");
}

TEST(PassIdentity, ColumnsThatAreIgnoredAreNamed) {
  const std::string log = "time_s,unit_serial,weldment,seam,pass,job,Shift,current_A,voltage_V\n" +
                          arc_rows("U1,W,S1,1,17,early", 0, 50);
  const Plan plan = small_plan();
  const auto notes = findings_of(audit_text(log, {}, &plan), "record.columns.ignored");
  ASSERT_EQ(notes.size(), 1u);
  EXPECT_EQ(notes[0].severity, Severity::note);
  EXPECT_EQ(
      notes[0].text(),
      "Columns of the log that aren't used: job, Shift. A columns file, the plan's job numbers or --carry "
      "give them a meaning.");
  AuditOptions carried;
  carried.carry = {"job", "Shift"};
  EXPECT_FALSE(has_finding(audit_text(log, carried, &plan), "record.columns.ignored"));
}

TEST(PassIdentity, AMissingWeldmentIsThePlansOnlyOne) {
  const Plan plan = small_plan();
  const std::string log = "time_s,unit_serial,seam,current_A,voltage_V\n" + arc_rows("U1,S1", 0, 50);
  const auto result = audit_text(log, {}, &plan);
  ASSERT_EQ(result.passes.size(), 1u);
  EXPECT_EQ(result.passes[0].place(), "U1/W/S1/pass 1") << "a seam of one pass needs no pass number";
  EXPECT_TRUE(has_finding(result, "record.weldment.inferred"));
  EXPECT_EQ(audit_text(log).passes[0].place(), "U1/-/S1/pass -");
}

TEST(PassIdentity, APassThatThePlanDoesNotKnowFailsWithoutVerdict) {
  const Plan plan = small_plan();
  const auto result =
      audit_text(plain_header + arc_rows("U1,W,S9,1", 0, 5) + arc_rows("U1,W,S1,2", 5, 9), {}, &plan);
  ASSERT_EQ(result.passes.size(), 2u);
  for (const auto& pass : result.passes) {
    EXPECT_TRUE(pass.schedule.empty());
    EXPECT_FALSE(pass.verdict);
  }
  const auto found = findings_of(result, "record.pass.unknown");
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].severity, Severity::fail);
}

TEST(PassIdentity, ALogCutInTwoWhileAPassRunsIsOnePass) {
  const auto logs = memory_logs(
      {plain_header + arc_rows("U1,W,S1,1", 0, 20), plain_header + arc_rows("U1,W,S1,1", 20, 50)});
  const auto result = audit(logs, {}, nullptr);
  ASSERT_EQ(result.passes.size(), 1u);
  EXPECT_EQ(result.passes[0].source, "log1");
  EXPECT_EQ(result.passes[0].source_last, "log2");
  EXPECT_NEAR(result.passes[0].arc_time_s, 49.9, 1e-9);
}

TEST(PassIdentity, TheSamePassInAnotherLogIsRepeated) {
  const auto logs =
      memory_logs({plain_header + arc_rows("U1,W,S1,1", 0, 50), plain_header + arc_rows("U1,W,S1,1", 0, 50)});
  const auto result = audit(logs, {}, nullptr);
  ASSERT_EQ(result.passes.size(), 2u);
  ASSERT_EQ(result.units.size(), 1u);
  ASSERT_EQ(result.units[0].repeated_passes.size(), 1u);
  EXPECT_EQ(result.units[0].repeated_passes[0].seam, "S1");
}

TEST(PassIdentity, RowsWhoseArcNeverIsOnAreArcOff) {
  const auto result = audit_text(plain_header + arc_rows("U1,W,S1,1", 0, 5, false));
  EXPECT_TRUE(result.passes.empty());
  EXPECT_EQ(result.rows.arc_off, 50u);
  EXPECT_TRUE(has_finding(result, "record.arc.never"));
}

TEST(PassIdentity, CarriedColumnsAreKeptWordForWord) {
  AuditOptions options;
  options.carry = {"wire_lot", "operator"};
  const std::string log = "time_s,unit_serial,weldment,seam,pass,wire_lot,operator,current_A,voltage_V\n" +
                          arc_rows("U1,W,S1,1,L-007,\"O'Neil, J.\"", 0, 1) +
                          arc_rows("U1,W,S1,1,L-008,", 1, 2);
  const auto result = audit_text(log, options);
  const auto& carried = result.passes[0].carried;
  ASSERT_EQ(carried.size(), 2u);
  EXPECT_EQ(carried[0].values, (std::vector<std::string>{"L-007", "L-008"}));
  EXPECT_EQ(carried[1].values, (std::vector<std::string>{"O'Neil, J."}));
}

TEST(PassIdentity, MemoryDoesNotHoldBackPassesOfManyRobots) {
  // More passes open at once than are kept in memory: none may lose a row.
  std::string log = plain_header;
  for (int i = 0; i < 20; ++i)
    for (int unit = 0; unit < 150; ++unit)
      log += fixed(i / 10.0, 1) + ",U" + std::to_string(unit) + ",W,S1,1," + fixed(200 + i % 2, 0) + ",25\n";
  const Plan plan = small_plan();
  const auto result = audit_text(log, {}, &plan);
  ASSERT_EQ(result.passes.size(), 150u);
  for (const auto& pass : result.passes) {
    EXPECT_EQ(pass.samples, 20u);
    EXPECT_NEAR(pass.arc_time_s, 1.9, 1e-9);
  }
}

TEST(PassIdentity, TooManyPassesAreRefusedRatherThanMemoryFilled) {
  AuditOptions options;
  options.reader.limits.passes = 10;
  std::string log = plain_header;
  for (int unit = 0; unit < 20; ++unit) log += "0,U" + std::to_string(unit) + ",W,S1,1,200,25\n";
  EXPECT_THROW(audit_text(log, options), InputError);
}

}  // namespace
}  // namespace seamtakt::test
