#include <gtest/gtest.h>

#include <cmath>

#include "audit_fixture.hpp"
#include "records/judge/seam_union.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* header_with_place =
    "time_s,unit_serial,weldment,seam,pass,robot,current_A,voltage_V,x_mm,y_mm,z_mm\n";

/// A stretch of S1 (400 mm, 8 mm/s, ten samples a second), with the arc out at its end.
std::string weld(const std::string& unit, double at_s, double from_mm, double to_mm,
                 const std::string& seam = "S1", const std::string& robot = "R1") {
  std::string text;
  const int rows = static_cast<int>(std::lround((to_mm - from_mm) / 0.8));
  for (int i = 0; i <= rows; ++i)
    text += fixed(at_s + i / 10.0, 1) + "," + unit + ",W," + seam + ",1," + robot + "," +
            (i < rows ? fixed(200 + i % 2, 0) : "0") + "," + fixed(25 + 0.1 * (i % 3), 1) + "," +
            fixed(from_mm + 0.8 * i, 2) + ",0,0\n";
  return text;
}

std::size_t count_of(const AuditResult& result, const char* rule) {
  return findings_of(result, rule).size();
}

AuditOptions closing() {
  AuditOptions options;
  options.close_units = true;
  return options;
}

TEST(LengthJudgement, FortyMillimetresOfASeamAreNoPass) {
  const Plan plan = small_plan();
  const auto open = audit_text(header_with_place + weld("U1", 0, 0, 40), {}, &plan);
  EXPECT_EQ(open.passes[0].verdict, Verdict::undecided);
  EXPECT_EQ(open.passes[0].undecided_by, std::vector<std::string>{"record.length.part"});
  const auto part = findings_of(open, "record.length.part");
  ASSERT_EQ(part.size(), 1u);
  EXPECT_EQ(part[0].severity, Severity::warn);
  EXPECT_NEAR(*part[0].value, 40, 0.01);
  EXPECT_DOUBLE_EQ(*part[0].limit, 400);

  const auto closed = audit_text(header_with_place + weld("U1", 0, 0, 40), closing(), &plan);
  EXPECT_EQ(closed.passes[0].verdict, Verdict::fail);
  EXPECT_EQ(closed.passes[0].failed_by, std::vector<std::string>{"record.length.short"});
  ASSERT_EQ(count_of(closed, "record.length.short"), 1u);
  EXPECT_EQ(findings_of(closed, "record.length.short")[0].severity, Severity::fail);
}

TEST(LengthJudgement, AStoredPartByTheTravelSpeedAllowsTheUnionWhatItIsAllowed) {
  const Plan plan = small_plan();
  AuditOptions options = closing();
  StoredWelds::Part by_speed;
  by_speed.seq = 7;
  by_speed.coverage = coverage_needed(plan.weldments.at(0).seams.at(0));
  by_speed.coverage.welded_mm = 200;
  by_speed.coverage.allowed_short_mm = 20;
  options.stored = [&](const PassRecord&) { return StoredWelds{{by_speed}, false}; };
  const auto together = audit_text(header_with_place + weld("U1", 0, 200, 385), options, &plan);
  EXPECT_EQ(count_of(together, "record.length.short"), 0u);
  by_speed.coverage.allowed_short_mm = 5;
  const auto shorter = audit_text(header_with_place + weld("U1", 0, 200, 380), options, &plan);
  EXPECT_EQ(count_of(shorter, "record.length.short"), 1u);
}

TEST(LengthJudgement, ALaterUnitOnTheRobotClosesTheUnit) {
  const Plan plan = small_plan();
  const auto result = audit_text(header_with_place + weld("U1", 0, 0, 40) + weld("U2", 10, 0, 40), {}, &plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::fail) << "R1 went on to U2";
  EXPECT_EQ(result.passes[1].verdict, Verdict::undecided);
  const auto other =
      audit_text(header_with_place + weld("U1", 0, 0, 40) + weld("U2", 10, 0, 400, "S1", "R2"), {}, &plan);
  EXPECT_EQ(other.passes[0].verdict, Verdict::undecided) << "another robot says nothing";
  const auto back = audit_text(
      header_with_place + weld("U1", 0, 0, 40) + weld("U2", 10, 0, 400) + weld("U1", 70, 0, 400, "S3"), {},
      &plan);
  EXPECT_EQ(back.passes[0].verdict, Verdict::fail) << "though the robot came back to U1";
}

TEST(LengthJudgement, PartsInSeveralLogsCountTogether) {
  const Plan plan = small_plan();
  const auto result = audit(
      memory_logs({header_with_place + weld("U1", 0, 0, 208), header_with_place + weld("U1", 100, 200, 400)}),
      {}, &plan);
  ASSERT_EQ(result.passes.size(), 2u);
  for (const PassRecord& pass : result.passes) {
    EXPECT_EQ(pass.verdict, Verdict::pass);
    EXPECT_TRUE(pass.coverage->is_part);
    EXPECT_NEAR(pass.coverage->covered_mm, 400, 0.01);
  }
  EXPECT_FALSE(has_finding(result, "unit.pass.repeated")) << "one pass in two parts";
  // The first half twice isn't the whole.
  const auto twice = audit(
      memory_logs({header_with_place + weld("U1", 0, 0, 200), header_with_place + weld("U1", 100, 0, 200)}),
      closing(), &plan);
  EXPECT_EQ(twice.passes[0].verdict, Verdict::fail);
  EXPECT_NEAR(*findings_of(twice, "record.length.short")[0].value, 200, 0.01);
  EXPECT_EQ(count_of(twice, "record.length.short"), 1u) << "one finding a pass";
}

TEST(LengthJudgement, WithoutASerialNumberTwoRecordsAreNotOnePass) {
  const Plan plan = small_plan();
  const auto result = audit(
      memory_logs({header_with_place + weld("", 0, 0, 200), header_with_place + weld("", 100, 200, 400)}), {},
      &plan);
  for (const PassRecord& pass : result.passes) EXPECT_EQ(pass.verdict, Verdict::undecided);
}

TEST(LengthJudgement, TenMillimetresAreAllowed) {
  const Plan plan = small_plan();
  EXPECT_EQ(audit_text(header_with_place + weld("U1", 0, 4, 396), closing(), &plan).passes[0].verdict,
            Verdict::pass);
  EXPECT_EQ(audit_text(header_with_place + weld("U1", 0, 8, 396), closing(), &plan).passes[0].verdict,
            Verdict::fail);
  AuditOptions options = closing();
  options.length_short_mm = 20;
  EXPECT_EQ(audit_text(header_with_place + weld("U1", 0, 8, 396), options, &plan).passes[0].verdict,
            Verdict::pass);
  options.length_short_mm = 0;
  EXPECT_EQ(audit_text(header_with_place + weld("U1", 0, 4, 396), options, &plan).passes[0].verdict,
            Verdict::fail);
}

// Source of the value: JCGM 100:2008, 4.3.7 (rectangular) and 5.1.2 (a difference): 2*sqrt(2)*a/sqrt(3).
TEST(LengthJudgement, TheStatedUncertaintyOfPositionsIsAllowedToo) {
  Plan plan = small_plan();
  Instrument robot;
  robot.id = "R1-position";
  robot.quantity = "position";
  robot.half_width_pct = 0.2;
  robot.of = "full-scale";
  robot.full_scale = 1000;  // 2 mm either way
  plan.instruments = {robot};
  const auto result = audit_text(header_with_place + weld("U1", 0, 8, 396), closing(), &plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass) << "12 mm short";
  EXPECT_NEAR(result.passes[0].coverage->allowed_short_mm, 10 + 2 * std::sqrt(2.0) * 2 / std::sqrt(3.0),
              1e-9);
  EXPECT_EQ(result.passes[0].instruments.at(0).id, "R1-position");
  EXPECT_EQ(audit_text(header_with_place + weld("U1", 0, 8, 392), closing(), &plan).passes[0].verdict,
            Verdict::fail);
}

/// S2 has runs of 60 mm from 0, 150 and 300 on.
std::string runs(const std::vector<std::pair<double, double>>& spans) {
  std::string text;
  double at_s = 0;
  for (const auto& [from, to] : spans) {
    text += weld("U1", at_s, from, to, "S2");
    at_s += (to - from) / 8 + 1;
  }
  return text;
}

TEST(LengthJudgement, OfAnIntermittentSeamTheRunsCount) {
  const Plan plan = small_plan();
  const auto judged = [&](const std::vector<std::pair<double, double>>& spans) {
    return audit_text(header_with_place + runs(spans), closing(), &plan);
  };
  EXPECT_EQ(judged({{0, 60}, {150, 210}, {300, 360}}).passes[0].verdict, Verdict::pass);
  const auto two = judged({{0, 60}, {150, 210}});
  EXPECT_EQ(two.passes[0].verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*findings_of(two, "record.length.short")[0].limit, 180);
  EXPECT_NE(findings_of(two, "record.length.short")[0].text().find(
                "(runs: 2) where the seam needs 180 mm (runs: 3)"),
            std::string::npos);
  EXPECT_EQ(judged({{0, 56}, {150, 206}, {300, 356}}).passes[0].verdict, Verdict::fail) << "each 4 mm short";
  EXPECT_EQ(judged({{20, 80}, {170, 230}, {320, 380}}).passes[0].verdict, Verdict::pass) << "moved along";
  EXPECT_EQ(judged({{0, 32}, {60, 92}, {120, 152}, {180, 212}, {240, 272}, {300, 332}}).passes[0].verdict,
            Verdict::fail)
      << "twice as many of half the length";
  const auto through = judged({{0, 400}});
  EXPECT_EQ(through.passes[0].verdict, Verdict::pass);
  EXPECT_TRUE(has_finding(through, "record.length.long"));
}

TEST(LengthJudgement, AGapThatIsTooLongIsSaid) {
  const Plan plan = small_plan();
  const auto wide = audit_text(header_with_place + runs({{0, 60}, {150, 210}, {340, 400}}), closing(), &plan);
  EXPECT_EQ(wide.passes[0].verdict, Verdict::pass);
  ASSERT_EQ(count_of(wide, "record.length.gap"), 1u);
  EXPECT_NEAR(*findings_of(wide, "record.length.gap")[0].value, 130, 0.01);
  EXPECT_FALSE(has_finding(audit_text(header_with_place + runs({{0, 60}, {150, 210}, {300, 360}}), {}, &plan),
                           "record.length.gap"));
}

TEST(LengthJudgement, EachRunOfAnIntermittentSeamCounts) {
  Plan plan = small_plan();
  // Runs of 8 mm at 0, 98, ..., 392: five, 40 mm in all.
  plan.weldments.at(0).seams.at(1).intermittent->length_mm = 8;
  const auto judged = [&](const std::vector<std::pair<double, double>>& spans) {
    return audit_text(header_with_place + runs(spans), closing(), &plan);
  };
  EXPECT_EQ(judged({{0, 8}, {98.4, 106.4}, {196, 204}, {294.4, 302.4}, {392, 400}}).passes[0].verdict,
            Verdict::pass);
  const auto four = judged({{0, 8}, {98.4, 106.4}, {196, 204}, {294.4, 302.4}});
  EXPECT_EQ(four.passes[0].verdict, Verdict::fail) << "8 mm short are allowed, a missing run isn't";
  const auto six = judged({{0, 8}, {80, 88}, {160, 168}, {240, 248}, {320, 328}, {392, 400}});
  EXPECT_EQ(count_of(six, "record.length.runs"), 1u);
}

TEST(LengthJudgement, ARunThatIsTooLongIsSaid) {
  const Plan plan = small_plan();
  const auto result =
      audit_text(header_with_place + runs({{0, 60}, {150, 224}, {300, 360}}), closing(), &plan);
  ASSERT_EQ(count_of(result, "record.length.run"), 1u);
  EXPECT_NEAR(*findings_of(result, "record.length.run")[0].value, 74, 0.9);
  EXPECT_FALSE(has_finding(audit_text(header_with_place + runs({{0, 60}, {150, 210}, {300, 360}}), {}, &plan),
                           "record.length.run"));
}

TEST(LengthJudgement, AClosedSeamNeedsItsOverlap) {
  Plan plan = small_plan();
  Seam& ring = plan.weldments[0].seams[0];
  ring.path_mm = {{0, 0, 0}, {100, 0, 0}, {100, 100, 0}, {0, 100, 0}, {0, 0, 0}};
  ring.overlap_mm = 24;
  const auto round = [](double length_mm) {
    std::string text = header_with_place;
    const int rows = static_cast<int>(std::lround(length_mm / 0.8));
    for (int i = 0; i <= rows; ++i) {
      const double s = std::fmod(0.8 * i, 400),
                   x = s < 100   ? s
                       : s < 200 ? 100
                       : s < 300 ? 300 - s
                                 : 0,
                   y = s < 100   ? 0
                       : s < 200 ? s - 100
                       : s < 300 ? 100
                                 : 400 - s;
      text += fixed(i / 10.0, 1) + ",U1,W,S1,1,R1," + (i < rows ? fixed(200 + i % 2, 0) : "0") + ",25," +
              fixed(x, 2) + "," + fixed(y, 2) + ",0\n";
    }
    return text;
  };
  EXPECT_EQ(audit_text(round(424), closing(), &plan).passes[0].verdict, Verdict::pass);
  EXPECT_EQ(audit_text(round(404), closing(), &plan).passes[0].verdict, Verdict::fail)
      << "20 mm of the overlap are missing";
}

TEST(LengthJudgement, ByTheTravelSpeedTwoPerCentMoreAreAllowed) {
  const Plan plan = small_plan();
  const auto by_speed = [&](int rows) {
    std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
    for (int i = 0; i <= rows; ++i)
      log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < rows ? fixed(200 + i % 2, 0) : "0") + ",25,8\n";
    return audit_text(log, closing(), &plan).passes[0].verdict;
  };
  EXPECT_EQ(by_speed(478), Verdict::pass) << "17.6 mm short";
  EXPECT_EQ(by_speed(475), Verdict::fail) << "20 mm short";
}

TEST(LengthJudgement, ALengthFromTimeAloneJudgesNothing) {
  const Plan plan = small_plan();
  const auto result = audit_text("time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n" +
                                     arc_rows("U1,W,S1,1", 0, 46) + "46.0,U1,W,S1,1,0,0\n",
                                 closing(), &plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass) << "as it was: 8 % short";
  EXPECT_FALSE(result.passes[0].coverage);
}

TEST(LengthJudgement, WhatTheStoreHoldsCounts) {
  const Plan plan = small_plan();
  AuditOptions options = closing();
  int asked = 0;
  StoredWelds stored;
  options.stored = [&](const PassRecord& record) {
    ++asked;
    EXPECT_EQ(record.place(), "U1/W/S1/pass 1");
    return stored;
  };
  const std::string second = header_with_place + weld("U1", 0, 200, 400);
  EXPECT_EQ(audit_text(second, options, &plan).passes[0].verdict, Verdict::fail);
  PassCoverage first = coverage_needed(plan.weldments[0].seams[0]);
  first.spans = {{0, 205}};
  first.welded_mm = 205;
  stored.parts = {{17, first}};
  const auto whole = audit_text(second, options, &plan);
  EXPECT_EQ(whole.passes[0].verdict, Verdict::pass);
  EXPECT_EQ(whole.passes[0].coverage->with_records, std::vector<std::uint64_t>{17});
  stored.parts[0].coverage.path_mm = stored.parts[0].coverage.needed_mm = 410;
  EXPECT_EQ(audit_text(second, options, &plan).passes[0].verdict, Verdict::fail) << "of another path";
  stored = {{}, true};
  EXPECT_EQ(audit_text(second, options, &plan).passes[0].verdict, Verdict::pass) << "a repair is exempt";
  asked = 0;
  audit_text(header_with_place + weld("U1", 0, 0, 400), options, &plan);
  EXPECT_EQ(asked, 0) << "a pass that is long enough by itself asks for nothing";
}

TEST(LengthJudgement, APassThatAUnitsTimeCutsIsUndecidedOnBothSides) {
  const Plan plan = small_plan();
  AuditOptions options;
  options.units = parse_unit_times("unit_serial,weldment,start,end\nU1,W,0,44\nU2,W,44,200\n", "units.csv");
  std::string log = "time_s,seam,pass,robot,current_A,voltage_V,x_mm,y_mm,z_mm\n";
  for (int i = 0; i <= 500; ++i)
    log += fixed(i / 10.0, 1) + ",S1,1,R1," + fixed(i < 500 ? 200 + i % 2 : 0, 0) + ",25," +
           fixed(0.8 * i, 1) + ",0,0\n";
  const auto cut = audit_text(log, options, &plan);
  ASSERT_EQ(cut.passes.size(), 2u);
  for (const PassRecord& pass : cut.passes) {
    EXPECT_EQ(pass.verdict, Verdict::undecided) << pass.place();
    EXPECT_EQ(pass.undecided_by, std::vector<std::string>{"record.unit.border"});
  }
  options.units = parse_unit_times("unit_serial,weldment,start,end\nU1,W,0,60\nU2,W,60,200\n", "units.csv");
  EXPECT_EQ(audit_text(log, options, &plan).passes[0].verdict, Verdict::pass);
}

TEST(LengthJudgement, TheRecordKeepsWhereItWelded) {
  const Plan plan = small_plan();
  const auto result = audit_text(header_with_place + runs({{0, 60}, {150, 210}, {300, 360}}), {}, &plan);
  const PassCoverage& coverage = *result.passes[0].coverage;
  ASSERT_EQ(coverage.spans.size(), 3u);
  EXPECT_NEAR(coverage.spans[1].from_mm, 150, 0.01);
  EXPECT_NEAR(coverage.spans[1].to_mm, 210, 0.01);
  EXPECT_DOUBLE_EQ(coverage.path_mm, 400);
  EXPECT_DOUBLE_EQ(coverage.needed_mm, 180);
  EXPECT_FALSE(coverage.is_part);
}

}  // namespace
}  // namespace seamtakt::test
