#include <gtest/gtest.h>

#include <cmath>

#include "cell/timeline/duty.hpp"
#include "cell_plan.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

/// One robot with a source of 350 A at 60 % that welds at 320 A.
Plan duty_plan() {
  Plan plan = plain_plan();
  plan.power_sources.resize(1);
  plan.power_sources[0].id = "P";
  plan.power_sources[0].rated_current_A = 350;
  plan.power_sources[0].rated_duty_pct = 60;
  plan.schedules[0].power_source = "P";
  plan.schedules[0].current_A = 320;
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}})};
  return plan;
}

CycleResult arcs(std::vector<std::pair<double, double>> spans, double cycle_s) {
  CycleResult cycle;
  cycle.cycle_time_s = cycle_s;
  for (const auto& [start_s, end_s] : spans) {
    Move move;
    move.robot = "R1";
    move.seam = "S1";
    move.pass = 1;
    move.start_s = start_s;
    move.end_s = end_s;
    move.kind = MoveKind::arc;
    cycle.moves.push_back(move);
  }
  return cycle;
}

double equivalent_A(const Plan& plan, const CycleResult& cycle) {
  return duty_of_robots(plan, plan.weldments[0], evaluation_of(plan), cycle).at(0).equivalent_current_A;
}

Findings judged(const Plan& plan, const CycleResult& cycle) {
  return duty_of_timeline(plan, plan.weldments[0], evaluation_of(plan), cycle);
}

TEST(Duty, AgreesWithTheRuleOfThePowerSource) {
  const Plan plan = duty_plan();
  // 350 A at 60 % carries 271.1 A for ever, so 320 A for 71.8 % of ten minutes.
  const Findings over = judged(plan, arcs({{0, 0.719 * 600}}, 600));
  ASSERT_EQ(over.size(), 1u);
  EXPECT_EQ(over[0].rule, "cycle.duty.exceeded");
  EXPECT_EQ(over[0].where, "W/R1/P");
  EXPECT_NEAR(*over[0].limit, 271.1, 0.05);
  EXPECT_TRUE(judged(plan, arcs({{0, 0.717 * 600}}, 600)).empty());
}

TEST(Duty, AnArcLongerThanItsDutyTripsHoweverLongThePauseAfter) {
  const Plan plan = duty_plan();
  EXPECT_EQ(judged(plan, arcs({{100, 100 + 0.72 * 600}}, 10000)).size(), 1u);
}

TEST(Duty, TheWorstWindowMayReachIntoTheNextCycle) {
  const Plan plan = duty_plan();
  // Arcs at both ends of a cycle of 1000 s: 300 s together across the border, 150 s apart.
  EXPECT_NEAR(equivalent_A(plan, arcs({{0, 150}, {850, 1000}}, 1000)), 320 * std::sqrt(0.5), 1e-9);
  EXPECT_NEAR(equivalent_A(plan, arcs({{0, 150}}, 1000)), 320 * std::sqrt(0.25), 1e-9);
}

TEST(Duty, ShortCyclesRepeatWithinTheWindow) {
  const Plan plan = duty_plan();
  EXPECT_NEAR(equivalent_A(plan, arcs({{10, 40}}, 60)), 320 * std::sqrt(0.5), 1e-9);
  // 600 s hold 6 cycles of 90 s and 60 s, in which one more arc of 30 s fits.
  EXPECT_NEAR(equivalent_A(plan, arcs({{10, 40}}, 90)), 320 * std::sqrt(7 * 30 / 600.0), 1e-9);
}

TEST(Duty, TheWorstWindowIsThatOfAFineSearch) {
  const Plan plan = duty_plan();
  const std::vector<std::pair<double, double>> spans{{3, 40}, {70, 210}, {260, 300}, {420, 433}, {500, 690}};
  const double cycle_s = 730, found_A = equivalent_A(plan, arcs(spans, cycle_s));
  double most_s = 0;
  for (double start_s = 0; start_s < cycle_s; start_s += 0.25) {
    double arc_s = 0;
    for (int k = 0; k < 3; ++k)
      for (const auto& [from_s, to_s] : spans)
        arc_s += std::max(
            0.0, std::min(to_s + k * cycle_s, start_s + 600) - std::max(from_s + k * cycle_s, start_s));
    most_s = std::max(most_s, arc_s);
  }
  EXPECT_NEAR(found_A, 320 * std::sqrt(most_s / 600), 1e-9);
}

TEST(Duty, ASourceWithoutRatingIsNotJudged) {
  Plan plan = duty_plan();
  plan.power_sources[0].rated_duty_pct.reset();  // rated for ever: 350 A
  EXPECT_TRUE(judged(plan, arcs({{0, 600}}, 600)).empty());
  plan.power_sources[0].rated_current_A.reset();
  plan.schedules[0].current_A = 5000;
  EXPECT_TRUE(judged(plan, arcs({{0, 600}}, 600)).empty());
}

TEST(Duty, OfAScheduledCycleTakesTheRobotsLoadedSource) {
  Plan plan = duty_plan();
  plan.schedules[0].power_source.clear();
  plan.cell->robots[0].loaded = Loaded{"", "", "P", {}};
  const CycleResult cycle = cycle_of_plan(plan);  // 10 s of arc in 13.1 s
  const auto duties = duty_of_robots(plan, plan.weldments[0], evaluation_of(plan), cycle);
  ASSERT_EQ(duties.size(), 1u);
  EXPECT_EQ(duties[0].power_source, "P");
  EXPECT_NEAR(duties[0].equivalent_current_A, 320 * std::sqrt(10 / 13.1), 2);
  EXPECT_EQ(judged(plan, cycle).size(), 1u);
}

/// The shortcuts of duty_findings must not change its findings: complete cycles are the comparison.
TEST(Duty, FoundWithoutTheWholeCycleIsWhatTheCycleFinds) {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  const Evaluation evaluation = evaluate(plan);
  std::size_t exceeded = 0;
  for (const double rated_A : {120.0, 200.0, 240.0, 275.0, 310.0, 350.0, 500.0}) {
    for (PowerSource& source : plan.power_sources) source.rated_current_A = rated_A;
    std::vector<std::string> wanted, found;
    for (const Weldment& weldment : plan.weldments)
      for (const Finding& finding : cycle_given(plan, weldment, evaluation).findings)
        if (finding.rule == "cycle.duty.exceeded") wanted.push_back(finding.where + finding.text());
    for (const Finding& finding : duty_findings(plan, evaluation))
      found.push_back(finding.where + finding.text());
    EXPECT_EQ(found, wanted) << rated_A;
    exceeded += found.size();
  }
  EXPECT_GT(exceeded, 3u);
  EXPECT_TRUE(duty_findings(plan, evaluation).empty());  // 500 A: not even in doubt
}

TEST(Duty, AnAcceptedFindingIsANoteInBothRoutes) {
  Plan plan = duty_plan();
  const Finding over = judged(plan, cycle_of_plan(plan)).at(0);
  plan.accepted.push_back({over.rule, over.where, "N. N.", "2026-01-02", "a trial", {}});
  const Findings found = duty_findings(plan, evaluation_of(plan));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
}

}  // namespace
}  // namespace seamtakt::test
