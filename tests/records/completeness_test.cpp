#include <gtest/gtest.h>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* manual_header = "unit_serial,seam,pass,welder,schedule,date,result\n";

/// All robot passes of one unit of the small plan, from `start_s` on.
std::string all_passes(const std::string& unit, double start_s) {
  return arc_rows(unit + ",W,S1,1", start_s, start_s + 50) +
         arc_rows(unit + ",W,S2,1", start_s + 60, start_s + 82.5) +
         arc_rows(unit + ",W,S3,1", start_s + 90, start_s + 127.5) +
         arc_rows(unit + ",W,S3,2", start_s + 130, start_s + 167.5);
}

const UnitRecord& only_unit(const AuditResult& result) {
  EXPECT_EQ(result.units.size(), 1u);
  return result.units.at(0);
}

TEST(Completeness, NeedsTheRobotsAndTheWeldersSeams) {
  const Plan plan = small_plan();
  AuditOptions options;
  const auto robots_only = audit_text(plain_header + all_passes("U1", 0), options, &plan);
  EXPECT_EQ(only_unit(robots_only).complete, false);
  EXPECT_EQ(only_unit(robots_only).complete_robot, true);
  EXPECT_EQ(only_unit(robots_only).complete_manual, false);
  ASSERT_EQ(only_unit(robots_only).missing_passes.size(), 1u);
  EXPECT_EQ(only_unit(robots_only).missing_passes[0].by, "manual");

  options.manual =
      parse_manual_seams(manual_header + std::string("U1,M1,1,W. Smith,G,2026-11-25,pass\n"), "m.csv");
  const auto both = audit_text(plain_header + all_passes("U1", 0), options, &plan);
  EXPECT_EQ(only_unit(both).complete, true);
  EXPECT_EQ(only_unit(both).complete_manual, true);
  EXPECT_TRUE(only_unit(both).missing_passes.empty());
}

TEST(Completeness, NamesMissingAndExtraPasses) {
  const Plan plan = small_plan();
  const auto result = audit_text(plain_header + arc_rows("U1,W,S1,1", 0, 50) + arc_rows("U1,W,S3,2", 60, 97) +
                                     arc_rows("U1,W,S8,1", 100, 104),
                                 {}, &plan);
  const UnitRecord& unit = only_unit(result);
  ASSERT_EQ(unit.missing_passes.size(), 3u);  // S2, S3/1, M1
  EXPECT_EQ(unit.missing_passes[0].seam, "S2");
  EXPECT_EQ(unit.missing_passes[1].seam, "S3");
  EXPECT_EQ(*unit.missing_passes[1].pass, 1);
  ASSERT_EQ(unit.extra_passes.size(), 1u);
  EXPECT_EQ(unit.extra_passes[0].seam, "S8");
  EXPECT_EQ(findings_of(result, "unit.pass.missing").size(), 3u);
  EXPECT_EQ(findings_of(result, "unit.pass.missing")[0].where, "U1/W/S2/pass 1");
  EXPECT_EQ(unit.complete_robot, false);
}

TEST(Completeness, AFailedPassLeavesItsUnitIncomplete) {
  Plan plan = small_plan();
  plan.schedules[1].limits.emplace();
  plan.schedules[1].limits->current_A = Interval{{}, 150};
  const auto result = audit_text(plain_header + all_passes("U1", 0), {}, &plan);
  EXPECT_EQ(only_unit(result).complete_robot, false);
  EXPECT_EQ(only_unit(result).missing_passes.size(), 1u) << "laid, though not well: only M1 is missing";
}

TEST(Completeness, AManualSeamsResultCounts) {
  const Plan plan = small_plan();
  AuditOptions options;
  options.manual =
      parse_manual_seams(manual_header + std::string("U1,M1,1,W. Smith,G,2026-11-25,Rejected\n"), "m.csv");
  const auto bad = audit_text(plain_header + all_passes("U1", 0), options, &plan);
  EXPECT_EQ(only_unit(bad).complete_manual, false);
  EXPECT_EQ(findings_of(bad, "manual.result.fail").size(), 1u);
  options.manual[0].result = "so-so";
  EXPECT_TRUE(
      has_finding(audit_text(plain_header + all_passes("U1", 0), options, &plan), "manual.result.unclear"));
  options.manual[0] = {"U1", "", "M1", 1, "W. Smith", "F", "2026-11-25", "pass", 2};
  EXPECT_TRUE(
      has_finding(audit_text(plain_header + all_passes("U1", 0), options, &plan), "manual.schedule.other"));
}

TEST(Completeness, FindsPassesWeldedTwice) {
  const Plan plan = small_plan();
  AuditOptions options;
  options.manual = parse_manual_seams(
      manual_header + std::string("U1,M1,1,A,G,2026-11-25,pass\nU1,M1,1,B,G,2026-11-26,pass\n"), "m.csv");
  const auto result = audit_text(plain_header + all_passes("U1", 0), options, &plan);
  ASSERT_EQ(only_unit(result).repeated_passes.size(), 1u);
  EXPECT_EQ(only_unit(result).repeated_passes[0].seam, "M1");
  EXPECT_EQ(findings_of(result, "unit.pass.repeated").size(), 1u);
}

TEST(Completeness, ASeamLaidTwiceInOneRecordIsRepeated) {
  const Plan plan = small_plan();
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
  for (int i = 0; i < 1000; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + fixed(200 + i % 2, 0) + ",25,8\n";
  const auto result = audit_text(log, {}, &plan);  // 800 mm on a seam of 400
  ASSERT_EQ(only_unit(result).repeated_passes.size(), 1u);
  EXPECT_TRUE(has_finding(result, "record.length.long"));
}

TEST(Completeness, AUnitOfWhichNothingIsLoggedIsListed) {
  const Plan plan = small_plan();
  AuditOptions options;
  options.units = parse_unit_times("unit_serial,weldment,start,end\nU1,W,0,200\nU2,W,200,400\n", "units.csv");
  const auto result =
      audit_text("time_s,seam,pass,current_A,voltage_V\n" + arc_rows("S1,1", 0, 50), options, &plan);
  ASSERT_EQ(result.units.size(), 2u);
  EXPECT_EQ(result.units[1].unit_serial, "U2");
  EXPECT_EQ(result.units[1].missing_passes.size(), 5u);
}

TEST(Completeness, IsOpenWithoutAPlan) {
  const auto result = audit_text(plain_header + all_passes("U1", 0));
  EXPECT_FALSE(only_unit(result).complete);
  EXPECT_FALSE(only_unit(result).complete_robot);
  EXPECT_TRUE(only_unit(result).missing_passes.empty());
}

TEST(Completeness, AHandThatThePlanDoesNotHaveIsSaid) {
  const Plan plan = small_plan();
  AuditOptions options;
  options.manual = parse_manual_seams(manual_header + std::string("U1,S1,,A,F,2026-11-25,ok\n"), "m.csv");
  const auto result = audit_text(plain_header + arc_rows("U1,W,M1,1", 0, 12.5), options, &plan);
  EXPECT_EQ(findings_of(result, "unit.pass.other-hand").size(), 2u);
}

TEST(ManualSeams, BadRowsAreRefusedWithTheirPlace) {
  const auto refused = [](const std::string& rows) {
    try {
      parse_manual_seams(manual_header + rows, "m.csv");
    } catch (const InputError& error) {
      return std::string(error.what());
    }
    return std::string("accepted");
  };
  EXPECT_EQ(refused("U1,M1,0,A,G,,pass\n").substr(0, 10), "m.csv:2:7:");
  EXPECT_EQ(refused("U1,M1,one,A,G,,pass\n").substr(0, 10), "m.csv:2:7:");
  EXPECT_EQ(refused(",M1,1,A,G,,pass\n").substr(0, 10), "m.csv:2:1:");
  EXPECT_EQ(refused("U1,,1,A,G,,pass\n").substr(0, 10), "m.csv:2:4:");
  EXPECT_THROW(parse_manual_seams("unit_serial,seam\nU1,M1\n", "m.csv"), InputError);
}

TEST(UnitTimes, BadRowsAreRefused) {
  const std::string head = "unit_serial,weldment,start,end\n";
  EXPECT_THROW(parse_unit_times(head + "U1,W,10,5\n", "u.csv"), InputError);
  EXPECT_THROW(parse_unit_times(head + "U1,W,ten,50\n", "u.csv"), InputError);
  EXPECT_THROW(parse_unit_times(head + "U1,W,0,50\nU2,W,40,80\n", "u.csv"), InputError);
  EXPECT_THROW(
      parse_unit_times(head + "U1,W,0,50\nU2,W,2026-01-01T00:00:00Z,2026-01-01T01:00:00Z\n", "u.csv"),
      InputError);
  EXPECT_THROW(parse_unit_times(head + ",W,0,50\n", "u.csv"), InputError);
  EXPECT_EQ(parse_unit_times(head + "U2,W,50,80\nU1,W,0,50\n", "u.csv")[0].unit_serial, "U1")
      << "sorted by start";
}

}  // namespace
}  // namespace seamtakt::test
