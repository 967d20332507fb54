// Calendar, due orders, pull, shared people and units that come later: days worked out by hand.
#include <gtest/gtest.h>

#include <algorithm>

#include "line_plan.hpp"

namespace seamtakt::test {
namespace {

/// 2026-11-30 is a Monday.
Calendar mondays() {
  Calendar calendar;
  calendar.start = "2026-11-30T07:00";
  calendar.shifts = {shift_of({"mon"}, "08:00", "12:00", {{"10:00", "10:30"}})};
  return calendar;
}

TEST(Shop, WorkRestsAtNightAndInBreaksAndThenGoesOn) {
  // An hour each: 08-09, 09-10, (break) 10:30-11:30, and half of the fourth; the rest a week later until
  // 08:30.
  Plan plan = line_plan({timed_stage("weld", 3600)});
  plan.line->calendar = mondays();
  const LineResult line = line_of(plan, "AAAA", request_with({}));
  EXPECT_EQ(ends_of(line), (std::vector<double>{7200, 10800, 16200, 7 * 86400 + 5400}));
  EXPECT_EQ(line.units[0].start_clock, "2026-11-30T08:00:00");
  EXPECT_EQ(line.units[1].end_clock, "2026-11-30T10:00:00");
  EXPECT_EQ(line.units[2].start_clock, "2026-11-30T10:30:00");
  EXPECT_EQ(line.units[3].start_clock, "2026-11-30T11:30:00");
  EXPECT_EQ(line.units[3].end_clock, "2026-12-07T08:30:00");
  EXPECT_EQ(line.calendar_start, "2026-11-30T07:00:00");
  EXPECT_EQ(line.finished_clock, "2026-12-07T08:30:00");
  // Rates count the four hours of work.
  EXPECT_DOUBLE_EQ(line.throughput_per_h, 1);
  EXPECT_DOUBLE_EQ(line.throughput_overall_per_h, 1);
  EXPECT_DOUBLE_EQ(line.figures.working_s, 4 * 3600);
  EXPECT_DOUBLE_EQ(line.stages[0].busy_pct, 100);
  EXPECT_EQ(line.makespan_s, 7 * 86400 + 5400);
  // Monday ends at 12:00.
  EXPECT_EQ(line.first_day, "2026-11-30");
  EXPECT_EQ(line.first_day_clock, "2026-11-30T12:00:00");
  EXPECT_EQ(line.unfinished, std::vector<std::string>{"U4"});
  EXPECT_EQ(line.figures.finished_first_day, 3);
}

TEST(Shop, ANightShiftBelongsToTheDayOnWhichItBegins) {
  Plan plan = line_plan({timed_stage("weld", 3600)});
  Calendar calendar;
  calendar.start = "2026-12-01T00:30";  // a Tuesday, within Monday's night
  calendar.shifts = {shift_of({"mon", "tue"}, "22:00", "06:00")};
  plan.line->calendar = calendar;
  // Until 06:00 five hours and a half, and eight more from 22:00 to Wednesday 06:00: 13 units and a half.
  const LineResult line = line_of(plan, std::string(14, 'A'), request_with({}));
  EXPECT_EQ(line.units[0].end_clock, "2026-12-01T01:30:00");
  EXPECT_EQ(line.units[5].start_clock, "2026-12-01T05:30:00");
  EXPECT_EQ(line.units[5].end_clock, "2026-12-01T22:30:00");
  EXPECT_EQ(line.units[12].end_clock, "2026-12-02T05:30:00");
  EXPECT_EQ(line.first_day_clock, "2026-12-02T06:00:00");
  EXPECT_EQ(line.unfinished, std::vector<std::string>{"U14"});
}

TEST(Shop, DueOrdersAreJudgedByTheClock) {
  Plan plan = line_plan({timed_stage("weld", 3600)});
  plan.line->calendar = mondays();
  std::vector<Order> orders = orders_of("AAAA");
  orders[0].due = orders[0].due_key = "2026-11-30T09:00";  // to the minute
  orders[1].due = orders[1].due_key = "2026-11-30T09:30";  // out at 10:00
  orders[3].due = "2026-11-30";                            // until midnight: 17 h after the start
  orders[3].due_key = "2026-11-30T24";
  const LineResult line = simulate_line(plan, Evaluation{}, release_all(orders), request_with({}));
  EXPECT_FALSE(line.units[0].late_s);
  EXPECT_EQ(line.units[0].late_pct, 0);
  EXPECT_EQ(line.units[1].late_s, 1800);
  EXPECT_FALSE(line.units[2].late_pct) << "it isn't due";
  EXPECT_EQ(line.units[3].late_s, 7 * 86400 + 5400 - 17 * 3600);
  EXPECT_EQ(line.figures.late_orders, 2);
  std::vector<std::string> late;
  for (const Finding& finding : line.findings)
    if (finding.rule == "line.due.late") {
      late.push_back(finding.where);
      EXPECT_EQ(finding.severity, Severity::fail);
    }
  EXPECT_EQ(late, (std::vector<std::string>{"U2", "U4"}));
  EXPECT_EQ(
      finding_of(line, "line.due.late")->text(),
      "The order (A) is late by 0.5 h: due 2026-11-30T09:30:00, out 2026-11-30T10:00:00; late in 100 % of "
      "the runs.");
  plan.line->calendar.reset();
  EXPECT_FALSE(
      finding_of(simulate_line(plan, Evaluation{}, release_all(orders), request_with({})), "line.due.late"))
      << "without a clock nothing is late";
}

TEST(Shop, AnOrderThatMayBeLateWarns) {
  Plan plan = line_plan({timed_stage("weld", 3600)});
  plan.line->calendar = mondays();
  plan.line->stages[0].cv = 0.3;
  std::vector<Order> orders = orders_of("A");
  orders[0].due = orders[0].due_key = "2026-11-30T09:30";
  const LineResult line = simulate_line(plan, Evaluation{}, release_all(orders), request_with({}));
  // P(time > 5400) = 1 - Phi((ln 1.5 + s^2/2)/s), s^2 = ln 1.09: 1 - Phi(1.528) = 0.063; 200 runs: 6.3 +- 1.7
  // %.
  ASSERT_TRUE(line.units[0].late_pct);
  EXPECT_NEAR(*line.units[0].late_pct, 6.3, 3 * 1.7);
  const Finding* finding = finding_of(line, "line.due.late");
  ASSERT_TRUE(finding);
  EXPECT_EQ(finding->severity, Severity::warn);
}

/// Four of 50 s and one of 400 s, takt 100 s: the first is due at 120 s, the mean of them.
LineResult four_short_one_long(const std::string& pull, int buffer) {
  Plan plan = line_plan({named_stage("tack", 1, buffer)});
  plan.line->takt_s = 100;
  plan.line->pull = pull;
  plan.weldments[0].tack_s = 50;
  plan.weldments[1].tack_s = 400;
  return line_of(plan, "AAAAB", request_with({}));
}

TEST(Shop, AssemblyThatPullsMakesTheLastBufferCount) {
  // Free: out at 50, 100, 150, 200, 600; taken at 120, 220, 320, 420, and wanted at 520: 80 s lost.
  // Nothing may wait: each blocks until it is taken, the last begins at 420 and is out at 820: 300 s.
  // One may wait: it begins at 320, when the third is taken: 720, 200 s.
  EXPECT_DOUBLE_EQ(*four_short_one_long("free", 0).takt_lost_s, 80);
  EXPECT_DOUBLE_EQ(*four_short_one_long("takt", 100).takt_lost_s, 80);
  EXPECT_DOUBLE_EQ(*four_short_one_long("takt", 1).takt_lost_s, 200);
  const LineResult line = four_short_one_long("takt", 0);
  EXPECT_DOUBLE_EQ(*line.takt_lost_s, 300);
  EXPECT_EQ(*line.takt_misses, 1);
  EXPECT_EQ(ends_of(line), (std::vector<double>{120, 220, 320, 420, 820}));
  // 70 s, and three times 50 s, of 820.
  EXPECT_NEAR(line.stages[0].blocked_pct, 100 * (70 + 3 * 50) / 820.0, 1e-9);
  EXPECT_EQ(line.units[4].cause.english(), "work at tack");
}

TEST(Shop, WhoLeavesThePullOpenIsToldAndWhoSaysItIsNot) {
  EXPECT_TRUE(finding_of(four_short_one_long("", 0), "line.pull.free"));
  EXPECT_FALSE(finding_of(four_short_one_long("free", 0), "line.pull.free"));
  EXPECT_FALSE(finding_of(four_short_one_long("takt", 0), "line.pull.free"));
  EXPECT_EQ(ends_of(four_short_one_long("", 0)), ends_of(four_short_one_long("free", 7)));
}

TEST(Shop, ALineThatKeepsTaktOnTheWholeIsNotTooSlowForOneMiss) {
  const LineResult line = four_short_one_long("takt", 100);
  // Freely 4 units in 550 s after the first, 26.2 an hour: fewer than the takt's 36.
  ASSERT_TRUE(finding_of(line, "line.takt.rate"));
  Plan plan = line_plan({named_stage("tack", 1, 3)});
  plan.line->takt_s = 100;
  plan.line->pull = "takt";
  plan.weldments[0].tack_s = 50;
  plan.weldments[1].tack_s = 300;
  // A's 50 s and one B in ten: 75 s a unit on the mean, and the B comes late for an empty buffer.
  const LineResult once = line_of(plan, "BAAAAAAAAA", request_with({}));
  EXPECT_FALSE(finding_of(once, "line.takt.rate"));
  ASSERT_TRUE(finding_of(once, "line.takt.missed"));
}

TEST(Shop, OnePersonForTwoStagesGoesDownstreamFirst) {
  // Unit 1: 0-10 and 10-20. Unit 2 is ready at 10 at the first stage, as unit 1 is at the second: it waits.
  Plan plan = line_plan({timed_stage("a", 10, 1, 1), timed_stage("b", 10)});
  plan.line->operators.resize(1);
  plan.line->operators[0].id = "fitter";
  plan.line->operators[0].stages = {"a", "b"};
  const LineResult line = line_of(plan, "AA", request_with({}));
  EXPECT_EQ(ends_of(line), (std::vector<double>{20, 40}));
  EXPECT_EQ(line.units[1].start_s, 10);
  EXPECT_NEAR(*line.stages[0].no_person_pct, 25, 1e-9);
  EXPECT_NEAR(*line.stages[1].no_person_pct, 0, 1e-9);
  for (const StageResult& stage : line.stages)
    EXPECT_NEAR(
        stage.busy_pct + stage.blocked_pct + stage.starved_pct + stage.stopped_pct + *stage.no_person_pct,
        100, 1e-9);
  const auto cure = std::ranges::find_if(
      line.cures, [](const Improvement& one) { return one.change.english() == "1 person more"; });
  ASSERT_NE(cure, line.cures.end());
  EXPECT_EQ(cure->stage, "fitter");
  EXPECT_EQ(cure->figures.makespan_s, 30);
}

TEST(Shop, APersonGoesToWhatHasBeenReadyLongest) {
  // Units 1 and 2 come at 0; unit 1 is worked at until 10, then unit 2, which has waited since 0, until 20.
  // At the second stage unit 1 (ready at 10) goes before unit 3 at the first (ready at 10): 20-24. Then unit
  // 3 (10) goes before unit 2 (ready at the second stage at 24): 24-34; 34-38; 38-42.
  Plan plan = line_plan({timed_stage("a", 10, 2, 1), timed_stage("b", 4)});
  plan.line->operators.resize(1);
  plan.line->operators[0].id = "fitter";
  plan.line->operators[0].stages = {"a", "b"};
  EXPECT_EQ(ends_of(line_of(plan, "AAA", request_with({}))), (std::vector<double>{24, 38, 42}));
}

std::vector<double> ends_with(double second_comes_s) {
  Plan plan = line_plan({timed_stage("weld", 100)});
  Release release = release_all(orders_of("AAA"));
  release.released[1].available_s = second_comes_s;
  return ends_of(simulate_line(plan, Evaluation{}, release, request_with({})));
}

TEST(Shop, AUnitIsBackInItsPlaceOnceItIsComplete) {
  EXPECT_EQ(ends_with(0), (std::vector<double>{100, 200, 300}));
  EXPECT_EQ(ends_with(50), (std::vector<double>{100, 200, 300}));
  EXPECT_EQ(ends_with(150), (std::vector<double>{100, 300, 200}));
  EXPECT_EQ(ends_with(450), (std::vector<double>{100, 550, 200}));
}

TEST(Shop, AMissForPartsThatCameLateNamesThem) {
  Plan plan = line_plan({timed_stage("weld", 100)});
  plan.line->takt_s = 120;
  Release release = release_all(orders_of("AAA"));
  release.released[2].available_s = 450;
  const LineResult line = simulate_line(plan, Evaluation{}, release, request_with({}));
  // Wanted at 100, 220, 340; the third is out at 550.
  EXPECT_EQ(*line.takt_misses, 1);
  EXPECT_EQ(line.units[2].cause.english(), "parts that came late at weld");
  ASSERT_TRUE(line.with_all_carts);
  EXPECT_EQ(line.with_all_carts->makespan_s, 300);
}

TEST(Shop, FixturesAreChangedBetweenWeldments) {
  // One station: A 100 + 500 + 50, B 300 + 500 + 200. 70 s from A to B, 60 s from B to A.
  Plan plan = line_plan({named_stage("cell")});
  plan.cell->changeover_s = 60;
  plan.cell->changeovers.resize(1);
  plan.cell->changeovers[0].from = "A";
  plan.cell->changeovers[0].to = "B";
  plan.cell->changeovers[0].time_s = 70;
  const LineResult line = line_of(plan, "AABA", request_with({{"A", 500}, {"B", 500}}));
  EXPECT_EQ(ends_of(line), (std::vector<double>{650, 1300, 1300 + 70 + 1000, 2370 + 60 + 650}));
  EXPECT_NEAR(line.stages[0].stopped_pct, 100 * 130 / 3080.0, 1e-9);
}

TEST(Shop, OrdersThatComeAgainAreNeitherDueNorWaitedFor) {
  Plan plan = line_plan({timed_stage("weld", 3600)});
  plan.line->calendar = mondays();
  Release release = release_all(orders_of("A"));
  release.released[0].due = release.released[0].due_key = "2026-11-30T09:00";
  LineRequest request = request_with({});
  request.units = 3;
  const LineResult line = simulate_line(plan, Evaluation{}, release, request);
  EXPECT_EQ(line.figures.late_orders, 0);
  EXPECT_TRUE(line.units[0].late_pct);
  EXPECT_FALSE(line.units[1].late_pct);
}

}  // namespace
}  // namespace seamtakt::test
