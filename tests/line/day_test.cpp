// A plan's line: the times of its stages, the cell with two stations, changes by arc time, levelling,
// waiting.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "line/levelling.hpp"
#include "line_plan.hpp"

namespace seamtakt::test {
namespace {

TEST(LineOfPlan, AStageAtA20MinTaktGives3UnitsAnHour) {
  Plan plan = line_plan({timed_stage("weld", 1200)});
  plan.line->takt_s = 1200;
  const LineResult line = line_of(plan, std::string(24, 'A'), request_with({}));
  EXPECT_EQ(line.throughput_per_h, 3);
  EXPECT_EQ(line.throughput_overall_per_h, 3);
  EXPECT_EQ(line.makespan_s, 24 * 1200);
  EXPECT_EQ(line.takt_misses, 0);
  EXPECT_EQ(line.bottleneck, "weld");
  EXPECT_DOUBLE_EQ(line.stages[0].busy_pct, 100);
  // A takt, and nothing said of how assembly takes the units.
  ASSERT_EQ(line.findings.size(), 1u);
  EXPECT_EQ(line.findings[0].rule, "line.pull.free");
  EXPECT_EQ(line.findings[0].severity, Severity::note);
}

TEST(LineOfPlan, NamedStagesTakeTheWeldmentsTimes) {
  Plan plan = line_plan({named_stage("kit"), named_stage("tack"), named_stage("manual"),
                         named_stage("measure"), named_stage("inspect"), timed_stage("paint", 7)});
  plan.weldments[0].tack_s = 11;
  plan.weldments[0].manual_s = 13;
  plan.weldments[0].measure_s = 17;
  plan.weldments[0].inspect_s = 19;
  EXPECT_EQ(line_of(plan, "A", request_with({})).makespan_s, 11 + 13 + 17 + 19 + 7);
}

TEST(LineOfPlan, OneStationLoadsWeldsAndUnloads) {
  EXPECT_EQ(line_of(line_plan({named_stage("cell")}), "A", request_with({{"A", 500}})).makespan_s,
            100 + 500 + 50);
}

TEST(LineOfPlan, AStageForLoadingTakesItFromTheCell) {
  const LineResult line =
      line_of(line_plan({named_stage("load"), named_stage("cell")}), "A", request_with({{"A", 500}}));
  EXPECT_EQ(line.makespan_s, 100 + (500 + 50));
}

TEST(LineOfPlan, TwoStationsLoadTheNextUnitMeanwhile) {
  // A: weld 400; B: weld 200. A before B: max(400 + 10, 300 + 50 + 10) = 410; B before A: max(200 + 10, 100 +
  // 200 + 10) = 310; A before A: max(410, 160) = 410; A last: max(410, 60) = 410; B before B: max(210, 300 +
  // 200 + 10) = 510.
  const Plan plan = line_plan({named_stage("cell")}, 2);
  const LineRequest request = request_with({{"A", 400}, {"B", 200}});
  EXPECT_EQ(ends_of(line_of(plan, "ABA", request)), (std::vector<double>{410, 720, 1130}));
  EXPECT_EQ(ends_of(line_of(plan, "AAB", request)), (std::vector<double>{410, 820, 1030}));
  EXPECT_EQ(ends_of(line_of(plan, "BBA", request)), (std::vector<double>{510, 820, 1230}));
}

TEST(LineOfPlan, ALoadStageBesideTwoStationsTakesNoTimeAndIsSaid) {
  const LineResult line =
      line_of(line_plan({named_stage("load"), named_stage("cell")}, 2), "A", request_with({{"A", 400}}));
  EXPECT_EQ(line.makespan_s, 410);
  ASSERT_EQ(line.findings.size(), 2u);
  EXPECT_EQ(line.findings[0].rule, "line.load.two-stations");
}

TEST(LineOfPlan, PlanningShareOfTaktIsWhatUnitsAreJudgedOn) {
  Plan plan = line_plan({timed_stage("weld", 950)});
  EXPECT_EQ(line_of(plan, "AAAA", request_with({})).takt_misses, 0);
  plan.line->planning_pct = 90;
  const LineResult line = line_of(plan, "AAAA", request_with({}));
  EXPECT_EQ(line.takt_limit_s, 900);
  EXPECT_EQ(line.takt_misses, 3);
  ASSERT_EQ(line.misses_by_cause.size(), 1u);
  EXPECT_EQ(line.misses_by_cause[0].stage, "weld");
  EXPECT_EQ(line.misses_by_cause[0].cause, MissCause::work);
  EXPECT_NEAR(line.misses_by_cause[0].lost_s, 150, 1e-9);
  EXPECT_EQ(line.findings.at(0).rule, "line.takt.rate");
  EXPECT_EQ(line.findings.at(0).severity, Severity::fail);
}

TEST(LineOfPlan, WithoutTaktThereAreNoMisses) {
  Plan plan = line_plan({timed_stage("weld", 950)});
  plan.line->takt_s.reset();
  const LineResult line = line_of(plan, "AAAA", request_with({}));
  EXPECT_FALSE(line.takt_misses.has_value());
  EXPECT_TRUE(line.findings.empty());
  EXPECT_FALSE(line.cures.empty());
}

TEST(LineOfPlan, SharesOfAStageMakeAHundredAndLittlesLawHolds) {
  Plan plan = line_plan({timed_stage("a", 700, 2, 1), timed_stage("b", 400, 1, 1), timed_stage("c", 300)});
  plan.line->stages[1].availability = 0.9;
  plan.line->stages[1].repair_s = 200;
  plan.line->stages[2].yield_pct = 90;
  plan.line->stages[2].rework_to = "a";
  plan.line->stages[2].rework_s = 300;
  LineRequest request = request_with({});
  request.units = 500;
  for (std::uint64_t seed = 1; seed <= 5; ++seed) {
    request.seed = seed;
    const LineResult line = line_of(plan, "ABB", request);
    for (const StageResult& stage : line.stages) {
      EXPECT_NEAR(stage.busy_pct + stage.blocked_pct + stage.starved_pct + stage.stopped_pct, 100, 1e-9);
      EXPECT_GE(stage.starved_pct, 0);
    }
    // L = lambda*W over the whole run.
    const double rate_per_s = static_cast<double>(line.units.size()) / line.makespan_s;
    EXPECT_NEAR(line.units_in_line, rate_per_s * line.flow_time_mean_s, 1e-9 * line.units_in_line);
    EXPECT_GT(line.reworks, 0);
  }
}

TEST(LineOfPlan, OrdersComeAgainUntilThereAreEnoughUnits) {
  LineRequest request = request_with({});
  request.units = 5;
  const LineResult line = line_of(line_plan({timed_stage("weld", 10)}), "AB", request);
  ASSERT_EQ(line.units.size(), 5u);
  EXPECT_EQ(line.units[1].serial, "U2");
  EXPECT_EQ(line.units[2].serial, "U1/2");
  EXPECT_EQ(line.units[4].serial, "U1/3");
  EXPECT_EQ(line.units[3].weldment, "B");
}

TEST(LineOfPlan, TipsAndWirePackagesAreChangedByUse) {
  // Each unit: 100 s of arc by R1, and 2 kg. A tip lasts 250 s: before units 3, 5 (at 250 and 500 the limit
  // is reached, not passed), 8. A package of 5 kg: the same beat.
  Plan plan = line_plan({named_stage("cell")});
  plan.weldments = {weldment_of("A", 0, 0)};
  plan.cell->robots.resize(1);
  plan.cell->robots[0].id = "R1";
  Evaluation evaluation;
  PassEvaluation pass;
  pass.weldment = "A";
  pass.seam = "S";
  pass.arc_time_s = 100;
  pass.wire_g = 2000;
  evaluation.passes = {pass};
  LineRequest request;
  request.cycle_of = [](const Weldment&) {
    CycleResult cycle;
    cycle.weldment = "A";
    cycle.weld_s = 100;
    Move arc;
    arc.robot = "R1";
    arc.seam = "S";
    arc.pass = 1;
    arc.kind = MoveKind::arc;
    arc.end_s = 100;
    cycle.moves = {arc};
    return cycle;
  };
  request.changes.tip_every_arc_s = 250;
  request.changes.tip_change_s = 7;
  const LineResult tips = simulate_line(plan, evaluation, release_all(orders_of("AAAAAAAA")), request);
  EXPECT_EQ(ends_of(tips), (std::vector<double>{100, 200, 307, 407, 507, 614, 714, 821}));
  request.changes = {};
  request.changes.wire_package_kg = 4;
  request.changes.wire_package_change_s = 60;
  const LineResult packages = simulate_line(plan, evaluation, release_all(orders_of("AAAAA")), request);
  EXPECT_EQ(ends_of(packages), (std::vector<double>{100, 200, 360, 460, 620}));
  EXPECT_NEAR(packages.stages[0].stopped_pct, 100 * 120 / 620.0, 1e-9);
  // The same as the plan says it of the robot.
  request.changes = {};
  plan.cell->robots[0].tip_change = TipChange{250, 7, {}};
  EXPECT_EQ(ends_of(simulate_line(plan, evaluation, release_all(orders_of("AAAAAAAA")), request)),
            (std::vector<double>{100, 200, 307, 407, 507, 614, 714, 821}));
  plan.cell->robots[0].tip_change.reset();
  plan.cell->robots[0].spool_kg = 4;
  plan.cell->robots[0].spool_change_s = 60;
  EXPECT_EQ(ends_of(simulate_line(plan, evaluation, release_all(orders_of("AAAAA")), request)),
            (std::vector<double>{100, 200, 360, 460, 620}));
}

TEST(LineOfPlan, ChangingBackAfterAUnitIsInTheCellsTime) {
  LineRequest request = request_with({{"A", 400}});
  const auto plain = request.cycle_of;
  request.cycle_of = [plain](const Weldment& weldment) {
    CycleResult cycle = plain(weldment);
    cycle.findings.push_back(
        {"cycle.wire-change.back", Severity::note, "A/R1", 90, std::nullopt, "s", {}, "plan"});
    return cycle;
  };
  const LineResult line = line_of(line_plan({named_stage("cell")}), "AA", request);
  EXPECT_EQ(line.makespan_s, 2 * (100 + 400 + 90 + 50));
  EXPECT_EQ(line.findings.at(0).rule, "line.wire-change.back");
}

TEST(LineOfPlan, APlanWithoutLineIsRefused) {
  Plan plan = line_plan({});
  EXPECT_THROW(line_of(plan, "A", request_with({})), InputError);
  plan.line.reset();
  EXPECT_THROW(line_of(plan, "A", request_with({})), InputError);
}

std::string letters_of(const LineResult& line) {
  std::string letters;
  for (const UnitResult& unit : line.units) letters += unit.weldment;
  return letters;
}

/// A takes 800 s and B 1200 s at one stage, takt 1000 s.
Plan mixed_plan() {
  Plan plan = line_plan({named_stage("tack", 1, 5), timed_stage("check", 100)});
  plan.weldments[0].tack_s = 800;
  plan.weldments[1].tack_s = 1200;
  return plan;
}

TEST(Levelling, SpreadsTheLongUnits) {
  LineRequest request = request_with({});
  const LineResult given = line_of(mixed_plan(), "BBBBAAAA", request);
  EXPECT_EQ(given.takt_misses, 4);
  request.level = true;
  const LineResult levelled = line_of(mixed_plan(), "BBBBAAAA", request);
  EXPECT_EQ(levelled.takt_misses, 0);
  ASSERT_TRUE(levelled.levelled);
  EXPECT_EQ(levelled.levelled->before.takt_misses, 4);
  EXPECT_EQ(levelled.levelled->after.takt_misses, 0);
  EXPECT_EQ(levelled.order_before.front(), "U1");
  EXPECT_EQ(std::ranges::count(letters_of(levelled), 'B'), 4);
}

TEST(Levelling, KeepsDueDates) {
  std::vector<Order> orders = orders_of("BBBBAAAABA");
  for (std::size_t i = 0; i < orders.size(); ++i)
    orders[i].due_key = i < 5 ? "2026-03-02T24" : "2026-03-03T24";
  LineRequest request = request_with({});
  request.level = true;
  const LineResult line = simulate_line(mixed_plan(), Evaluation{}, release_all(orders), request);
  std::string first = letters_of(line).substr(0, 5);
  std::sort(first.begin(), first.end());
  EXPECT_EQ(first, "ABBBB");  // 4 B and 1 A are due first
  EXPECT_LE(line.levelled->after.takt_misses, line.levelled->before.takt_misses);
}

TEST(Levelling, PutsAnOrderRightThatDoesNotKeepItsDueDates) {
  std::vector<Order> orders = orders_of("AB");
  orders[0].due_key = "2026-03-03T24";
  orders[1].due_key = "2026-03-02T24";
  LineRequest request = request_with({});
  EXPECT_EQ(simulate_line(mixed_plan(), Evaluation{}, release_all(orders), request).findings.at(0).rule,
            "line.due.order");
  request.level = true;
  EXPECT_EQ(letters_of(simulate_line(mixed_plan(), Evaluation{}, release_all(orders), request)), "BA");
}

TEST(Levelling, IsNeverWorseAndTheSameForTheSameSeed) {
  Plan plan =
      line_plan({named_stage("tack", 2, 1), named_stage("manual", 1, 1), named_stage("inspect", 1, 0)});
  plan.weldments.push_back(weldment_of("C", 50, 50));
  const double times_s[3][3] = {{1500, 700, 400}, {2500, 1300, 600}, {1900, 1100, 900}};
  for (std::size_t i = 0; i < 3; ++i) {
    plan.weldments[i].tack_s = times_s[i][0];
    plan.weldments[i].manual_s = times_s[i][1];
    plan.weldments[i].inspect_s = times_s[i][2];
  }
  LineRequest request = request_with({});
  request.level = true;
  for (const char* letters : {"AAABBBCCC", "BBBBBBAAACCA", "CABCAB", "B", "BBBB"}) {
    const LineResult first = line_of(plan, letters, request), second = line_of(plan, letters, request);
    EXPECT_EQ(letters_of(first), letters_of(second));
    const LineFigures &before = first.levelled->before, &after = first.levelled->after;
    EXPECT_LE(after.takt_misses, before.takt_misses) << letters;
    std::string sorted = letters_of(first), given = letters;
    std::sort(sorted.begin(), sorted.end());
    std::sort(given.begin(), given.end());
    EXPECT_EQ(sorted, given);
  }
}

TEST(Levelling, FindsTheBestOrderOfASmallDay) {
  // All orders of 3 A, 2 B, 1 C tried one by one.
  Plan plan = line_plan({named_stage("tack", 1, 1), named_stage("manual", 1, 0)});
  plan.weldments.push_back(weldment_of("C", 0, 0));
  plan.weldments[0].tack_s = 900;
  plan.weldments[0].manual_s = 800;
  plan.weldments[1].tack_s = 700;
  plan.weldments[1].manual_s = 1300;
  plan.weldments[2].tack_s = 1600;
  plan.weldments[2].manual_s = 600;
  LineRequest request = request_with({});
  request.level = false;
  std::pair<int, double> best{1000, 0};
  std::string letters = "AAABBC";
  do {
    const LineResult line = line_of(plan, letters, request);
    best = std::min(best, {*line.takt_misses, std::round(*line.takt_lost_s * 1e6) / 1e6});
  } while (std::next_permutation(letters.begin(), letters.end()));
  request.level = true;
  const LineResult levelled = line_of(plan, "CBBAAA", request);
  EXPECT_EQ(*levelled.takt_misses, best.first);
  EXPECT_NEAR(*levelled.takt_lost_s, best.second, 1e-3);
}

TEST(Waiting, AUnitWithoutCartTakesNoPlaceAndTheEffectIsShown) {
  const std::vector<Order> orders = orders_of("AAAA");
  Release release{orders, {orders[0], orders[2], orders[3]}, {}};
  WaitingUnit waiting;
  waiting.order = orders[1];
  waiting.sentence = Sentence("line.cart.absent"_key);
  waiting.released_instead = "U3";
  release.waiting = {waiting};
  const LineResult line =
      simulate_line(line_plan({timed_stage("weld", 500)}), Evaluation{}, release, request_with({}));
  ASSERT_EQ(line.units.size(), 3u);
  EXPECT_EQ(line.units[1].serial, "U3");
  EXPECT_EQ(line.makespan_s, 1500);
  ASSERT_TRUE(line.with_all_carts);
  EXPECT_EQ(line.with_all_carts->makespan_s, 2000);
  EXPECT_EQ(line.findings.at(0).rule, "line.cart.incomplete");
  EXPECT_NE(line.findings.at(0).text().find("U3 is released next"), std::string::npos);
}

TEST(Waiting, WhereNoCartIsCompleteNothingRuns) {
  Release release;
  release.orders = orders_of("A");
  release.waiting.resize(1);
  release.waiting[0].order = release.orders[0];
  const LineResult line =
      simulate_line(line_plan({timed_stage("weld", 500)}), Evaluation{}, release, request_with({}));
  EXPECT_TRUE(line.units.empty());
  EXPECT_EQ(line.waiting.size(), 1u);
  EXPECT_EQ(line.makespan_s, 0);
}

}  // namespace
}  // namespace seamtakt::test
