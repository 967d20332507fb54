// Planned against actual: logs are made here from a planned timeline and delays that the test knows.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "actual_fixture.hpp"
#include "records/actual/actual_rows.hpp"
#include "records/actual/arc_match.hpp"

namespace seamtakt::test {
namespace {

constexpr auto an_arc = CycleStep::Kind::arc, a_gap = CycleStep::Kind::gap;

class PlannedAndActual : public ::testing::Test {
 protected:
  PlannedAndActual() : plan_(two_robot_plan()), cycle_(planned_cycle(plan_)) {}

  const UnitActual& compare(const std::vector<TestArc>& arcs, bool names = true) {
    return compare_logs({log_of_arcs(arcs, names)});
  }
  const UnitActual& compare_logs(const std::vector<std::string>& logs) {
    audited_ = audit(memory_logs(logs), {}, &plan_);
    actual_ = cycle_actual(audited_.passes, plan_);
    EXPECT_EQ(actual_.units.size(), 1u);
    return actual_.units.at(0);
  }
  double difference(const UnitActual& unit, CycleStep::Kind kind, const std::string& seam) {
    const CycleStep* step = find_step(unit, kind, seam);
    EXPECT_TRUE(step != nullptr && step->difference_s) << seam;
    return step != nullptr ? step->difference_s.value_or(NAN) : NAN;
  }
  /// Every step but those named is as planned, within a sample.
  void expect_others_as_planned(const UnitActual& unit, const std::vector<std::string>& but) {
    for (const RobotActual& robot : unit.robots)
      for (const CycleStep& step : robot.steps) {
        const std::string name = (step.kind == an_arc ? "arc " : "gap ") + step.to.seam;
        if (std::find(but.begin(), but.end(), name) != but.end()) continue;
        ASSERT_TRUE(step.difference_s) << name;
        EXPECT_NEAR(*step.difference_s, 0, sample_s + 1e-6) << name;
      }
  }
  static bool notes_have(const std::vector<Sentence>& notes, const char* text) {
    return std::any_of(notes.begin(), notes.end(),
                       [&](const Sentence& note) { return note.english().find(text) != std::string::npos; });
  }

  Plan plan_;
  CycleResult cycle_;
  AuditResult audited_;
  CycleActual actual_;
};

TEST_F(PlannedAndActual, EachDelayIsFoundWithinOneSample) {
  const UnitActual& unit =
      compare(welded_later(cycle_, {{"A3", 7.3}, {"B2", 2.1}, {"B4", 0.8}}, {{"A2", 5}, {"B3", -1.5}}));
  EXPECT_NEAR(difference(unit, a_gap, "A3"), 7.3, sample_s + 1e-6);
  EXPECT_NEAR(difference(unit, a_gap, "B2"), 2.1, sample_s + 1e-6);
  EXPECT_NEAR(difference(unit, a_gap, "B4"), 0.8, sample_s + 1e-6);
  EXPECT_NEAR(difference(unit, an_arc, "A2"), 5, sample_s + 1e-6);
  EXPECT_NEAR(difference(unit, an_arc, "B3"), -1.5, sample_s + 1e-6);
  expect_others_as_planned(unit, {"gap A3", "gap B2", "gap B4", "arc A2", "arc B3"});
  ASSERT_EQ(unit.robots.size(), 2u);
  EXPECT_NEAR(*unit.robots[0].difference_s, 12.3, sample_s + 1e-6);
  EXPECT_NEAR(*unit.robots[1].difference_s, 1.4, sample_s + 1e-6);
  const auto largest = unit.largest();
  ASSERT_GE(largest.size(), 5u);
  EXPECT_LE(largest.size(), 10u);
  EXPECT_EQ(largest[0]->to.seam, "A3");
  EXPECT_EQ(largest[1]->to.seam, "A2");
  EXPECT_EQ(largest[2]->to.seam, "B2");
}

TEST_F(PlannedAndActual, DifferencesAddUpAndPlannedPartsFillTheirGaps) {
  const UnitActual& unit = compare(welded_later(cycle_, {{"A2", 3.7}, {"B3", 11}}, {{"A1", 2}}));
  for (const RobotActual& robot : unit.robots) {
    double sum_s = 0;
    for (const CycleStep& step : robot.steps) {
      if (step.kind == an_arc || step.before != nullptr) sum_s += *step.difference_s;
      if (step.kind == an_arc) continue;
      double parts_s = 0;
      for (const PlannedPart& part : step.parts) parts_s += part.time_s;
      EXPECT_NEAR(parts_s, *step.planned_s, 1e-9) << robot.robot << " " << step.to.seam;
    }
    EXPECT_NEAR(sum_s, *robot.time_s - *robot.planned_s, 1e-9) << robot.robot;
  }
}

TEST_F(PlannedAndActual, APlannedGapIsMadeOfItsMoves) {
  const UnitActual& unit = compare(welded_later(cycle_, {}));
  const CycleStep* sensed = find_step(unit, a_gap, "A2");
  ASSERT_NE(sensed, nullptr);
  const auto part_s = [&](MoveKind kind) {
    double sum_s = 0;
    for (const PlannedPart& part : sensed->parts) sum_s += part.kind == kind ? part.time_s : 0;
    return sum_s;
  };
  EXPECT_NEAR(part_s(MoveKind::sense), 6, 1e-9) << "3 points of 2 s";
  EXPECT_NEAR(part_s(MoveKind::end), 1, 1e-9) << "crater 0.75 s and post-flow 0.25 s";
  EXPECT_NEAR(part_s(MoveKind::start), 0.5, 1e-9);
  // From the end of A1 (120, 0, 0) to the begin of A2 (0, 250, 0): sqrt(120^2 + 250^2) = 277.308 mm at
  // 1000 mm/s and 4000 mm/s2: d/v + v/a = 0.277308 + 0.25 s, and 0.25 s for the wrist.
  EXPECT_NEAR(part_s(MoveKind::air), 0.777308, 1e-6);
}

TEST_F(PlannedAndActual, ASkippedPassIsListedAndShiftsNothing) {
  std::vector<TestArc> arcs = welded_later(cycle_, {{"B3", 4}});
  std::erase_if(arcs, [](const TestArc& each) { return each.seam == "A2"; });
  const UnitActual& unit = compare(arcs);
  ASSERT_EQ(unit.robots[0].skipped.size(), 1u);
  EXPECT_EQ(unit.robots[0].skipped[0].text(), "A2/pass 1");
  const CycleStep* over = find_step(unit, a_gap, "A3");
  ASSERT_NE(over, nullptr);
  ASSERT_EQ(over->skipped.size(), 1u);
  EXPECT_EQ(over->skipped[0].seam, "A2");
  EXPECT_NEAR(*over->difference_s, 0, sample_s + 1e-6) << "the robot waited for as long as the pass takes";
  expect_others_as_planned(unit, {"gap B3"});
  EXPECT_TRUE(unit.robots[1].skipped.empty());
}

TEST_F(PlannedAndActual, ARepairedPassIsAnExtraInItsGap) {
  // After A3 the robot welds A1 again for 20 s, 5 s after A3's end; A4 comes 30 s late.
  std::vector<TestArc> arcs = welded_later(cycle_, {{"A4", 30}});
  const TestArc& third =
      *std::find_if(arcs.begin(), arcs.end(), [](const TestArc& a) { return a.seam == "A3"; });
  arcs.push_back({"R1", "A1", 1, third.end_s + 5, third.end_s + 25});
  const UnitActual& unit = compare(arcs);
  const CycleStep* late = find_step(unit, a_gap, "A4");
  ASSERT_NE(late, nullptr);
  EXPECT_NEAR(*late->difference_s, 30, sample_s + 1e-6);
  ASSERT_EQ(late->extra.size(), 1u);
  EXPECT_EQ(late->extra[0].text(), "A1/pass 1 (2)");
  EXPECT_NEAR(late->extra_s, 20, sample_s + 1e-6);
  ASSERT_EQ(unit.robots[0].extra.size(), 1u);
  EXPECT_EQ(unit.robots[0].extra[0].is, ArcIs::again);
  const CycleStep* again = find_step(unit, an_arc, "A1", 2);
  ASSERT_NE(again, nullptr);
  EXPECT_FALSE(again->planned_s);
  EXPECT_NEAR(difference(unit, an_arc, "A1"), 0, sample_s + 1e-6) << "its first arc is the planned one";
  EXPECT_NEAR(difference(unit, a_gap, "A2"), 0, sample_s + 1e-6);
}

TEST_F(PlannedAndActual, ABrokenArcMakesItsOwnStepLonger) {
  std::vector<TestArc> arcs = welded_later(cycle_, {}, {{"B2", 6}});
  const auto at = std::find_if(arcs.begin(), arcs.end(), [](const TestArc& a) { return a.seam == "B2"; });
  TestArc second = *at;
  at->end_s = at->begin_s + 4;
  second.begin_s = at->end_s + 6;
  arcs.push_back(second);
  const UnitActual& unit = compare(arcs);
  const CycleStep* broken = find_step(unit, an_arc, "B2");
  ASSERT_NE(broken, nullptr);
  EXPECT_NEAR(*broken->difference_s, 6, sample_s + 1e-6);
  EXPECT_EQ(broken->arc_starts, 2u);
  EXPECT_EQ(broken->planned_arc_starts, 1u);
  EXPECT_NEAR(*broken->time_s - broken->arc_on_s, 6, 2 * sample_s);
  expect_others_as_planned(unit, {"arc B2"});
}

TEST_F(PlannedAndActual, PassesInAnotherOrderAreNamedAndTheRestStaysInPlace) {
  // B2 is welded at the end, after B4.
  std::vector<TestArc> arcs = welded_later(cycle_, {});
  const auto find = [&](const char* seam) {
    return std::find_if(arcs.begin(), arcs.end(), [&](const TestArc& a) { return a.seam == seam; });
  };
  const double time_s = find("B2")->end_s - find("B2")->begin_s;
  find("B2")->begin_s = find("B4")->end_s + 3;
  find("B2")->end_s = find("B2")->begin_s + time_s;
  const UnitActual& unit = compare(arcs);
  ASSERT_EQ(unit.robots[1].extra.size(), 1u);
  EXPECT_EQ(unit.robots[1].extra[0].arc.seam, "B2");
  EXPECT_EQ(unit.robots[1].extra[0].is, ArcIs::out_of_order);
  EXPECT_TRUE(unit.robots[1].skipped.empty()) << "it was welded";
  EXPECT_EQ(find_step(unit, a_gap, "B3")->skipped.at(0).seam, "B2");
  expect_others_as_planned(unit, {});
}

TEST_F(PlannedAndActual, WithoutNamesPassesAreMatchedByOrderAndTime) {
  std::vector<TestArc> arcs = welded_later(cycle_, {{"A4", 9}, {"B3", 2.5}});
  std::erase_if(arcs, [](const TestArc& each) { return each.seam == "A2"; });
  const UnitActual& unit = compare(arcs, false);
  EXPECT_TRUE(notes_have(unit.robots[0].notes, "order and times"));
  ASSERT_EQ(unit.robots[0].skipped.size(), 1u);
  EXPECT_EQ(unit.robots[0].skipped[0].seam, "A2");
  EXPECT_NEAR(difference(unit, a_gap, "A4"), 9, sample_s + 1e-6);
  EXPECT_NEAR(difference(unit, a_gap, "B3"), 2.5, sample_s + 1e-6);
  expect_others_as_planned(unit, {"gap A4", "gap B3"});
}

TEST_F(PlannedAndActual, RobotsWithoutACommonClockAreNotAligned) {
  const std::vector<TestArc> arcs = welded_later(cycle_, {{"A3", 6}, {"B3", 2}});
  const UnitActual& unit = compare_logs({log_of_arcs(arcs, true, "R1"), log_of_arcs(arcs, true, "R2")});
  EXPECT_FALSE(unit.time_s);
  EXPECT_FALSE(unit.difference_s);
  EXPECT_TRUE(notes_have(unit.notes, "no common clock"));
  for (const RobotActual& robot : unit.robots)
    for (const CycleStep& step : robot.steps) EXPECT_FALSE(step.start_s) << robot.robot;
  EXPECT_NEAR(difference(unit, a_gap, "A3"), 6, sample_s + 1e-6) << "a robot's own clock measures its gaps";
  EXPECT_NEAR(difference(unit, a_gap, "B3"), 2, sample_s + 1e-6);
}

TEST_F(PlannedAndActual, ARobotWhoseArcsOverlapHasNoGaps) {
  std::vector<TestArc> arcs = welded_later(cycle_, {});
  for (TestArc& each : arcs)
    if (each.seam == "A2") each.begin_s -= 15;
  const UnitActual& unit = compare(arcs);
  EXPECT_TRUE(notes_have(unit.robots[0].notes, "overlap"));
  for (const CycleStep& step : unit.robots[0].steps) EXPECT_EQ(step.kind, an_arc);
  EXPECT_FALSE(unit.time_s);
  EXPECT_NEAR(difference(unit, a_gap, "B3"), 0, sample_s + 1e-6) << "the other robot's times are sound";
}

TEST_F(PlannedAndActual, TheOtherRobotsFirstArcIsAGapFromTheUnitsFirstArc) {
  std::vector<TestArc> arcs = welded_later(cycle_, {});
  for (TestArc& each : arcs)
    if (each.robot == "R2") {
      each.begin_s += 12;
      each.end_s += 12;
    }
  const UnitActual& unit = compare(arcs);
  const CycleStep* lead = find_step(unit, a_gap, "B1");
  // R1's home is 943 mm from A1 and R2's 1068 mm from B1, so R1 is planned to begin first.
  ASSERT_TRUE(lead != nullptr && lead->difference_s);
  EXPECT_NEAR(*lead->difference_s, 12, sample_s + 1e-6);
  EXPECT_EQ(lead->from.seam, "A1");
  EXPECT_NEAR(*find_step(unit, an_arc, "B4")->start_s - *find_step(unit, an_arc, "B4")->planned_start_s, 12,
              2 * sample_s);
}

TEST_F(PlannedAndActual, ATorchAtRestWithTheArcOnBelongsToStartAndEnd) {
  // The arc burns for 0.3 s before the torch moves and for 0.7 s after it stopped; the log has the speed.
  std::string log = "time_s,unit_serial,weldment,seam,pass,robot,current_A,voltage_V,travel_speed_mm_s\n";
  std::vector<TestArc> arcs = welded_later(cycle_, {{"A2", 4}});
  std::erase_if(arcs, [](const TestArc& each) { return each.robot != "R1"; });
  for (const TestArc& each : arcs)
    for (long i = std::lround(each.begin_s * 10) - 3; i <= std::lround(each.end_s * 10) + 7; ++i) {
      const bool on = i < std::lround(each.end_s * 10) + 7;
      const bool moves = i >= std::lround(each.begin_s * 10) && i < std::lround(each.end_s * 10);
      log += fixed(static_cast<double>(i) / 10, 1) + ",U1,W," + each.seam + ",1,R1," +
             (on ? "20" + std::to_string(i % 7) + ",25." + std::to_string(i % 5) : std::string("0,0")) +
             (moves ? ",8.00\n" : ",0.00\n");
    }
  const UnitActual& unit = compare_logs({log});
  for (const char* seam : {"A1", "A2", "A3", "A4"}) {
    EXPECT_NEAR(*find_step(unit, an_arc, seam)->rest_s, 1.0, sample_s + 1e-6) << seam;
    EXPECT_NEAR(difference(unit, an_arc, seam), 0, 2 * sample_s) << seam;
  }
  EXPECT_NEAR(difference(unit, a_gap, "A2"), 4, 2 * sample_s);
  EXPECT_NEAR(difference(unit, a_gap, "A3"), 0, 2 * sample_s);
}

TEST_F(PlannedAndActual, AnUnknownRobotCountsForThePlannedOne) {
  std::vector<TestArc> arcs = welded_later(cycle_, {{"B2", 5}});
  for (TestArc& each : arcs) each.robot = each.robot == "R1" ? "left" : "right";
  const UnitActual& unit = compare(arcs);
  EXPECT_TRUE(notes_have(unit.notes, "no robot of the plan"));
  EXPECT_NEAR(difference(unit, a_gap, "B2"), 5, sample_s + 1e-6);
}

TEST_F(PlannedAndActual, APlanWithoutACellOrWithoutTheWeldmentComparesNothing) {
  compare(welded_later(cycle_, {}));
  Plan other = plan_;
  other.cell.reset();
  EXPECT_TRUE(cycle_actual(audited_.passes, other).units.empty());
  other = plan_;
  other.weldments[0].id = "another";
  const CycleActual none = cycle_actual(audited_.passes, other);
  ASSERT_EQ(none.units.size(), 1u);
  EXPECT_FALSE(none.units[0].time_s);
  EXPECT_EQ(none.units[0].notes.size(), 1u);
}

TEST(ArcMatch, FindsTheLongestRisingRow) {
  const std::optional<std::size_t> none;
  EXPECT_EQ(rising_positions({0, 2, 1, 3}).size(), 3u);
  EXPECT_EQ(rising_positions({4, 0, none, 1, 2}), (std::vector<std::size_t>{1, 3, 4}));
  EXPECT_TRUE(rising_positions({none, none}).empty());
  EXPECT_TRUE(rising_positions({}).empty());
}

TEST(ArcMatch, AlignsByTimeAndLeavesOutWhatFitsNowhere) {
  const std::optional<std::size_t> none;
  using Found = std::vector<std::optional<std::size_t>>;
  // The second planned arc (50 s) is missing.
  EXPECT_EQ(aligned_by_time({20.3, 10.1, 39}, {20, 50, 10, 40}), (Found{0, 2, 3}));
  // One of 3 s is welded more.
  EXPECT_EQ(aligned_by_time({20.3, 3, 50, 10.1}, {20, 50, 10}), (Found{0, none, 1, 2}));
  EXPECT_EQ(aligned_by_time({20}, {}), (Found{none}));
  EXPECT_TRUE(aligned_by_time(std::vector<double>(3000, 1), std::vector<double>(3000, 1)).empty());
}

TEST(ClockText, HasMinutesAndSeconds) {
  EXPECT_EQ(duration_text(3387.1), "56:27");
  EXPECT_EQ(duration_text(5), "0:05");
  EXPECT_EQ(duration_text(3723), "1:02:03");
  EXPECT_EQ(signed_duration_text(-65.4), "-1:05");
  EXPECT_EQ(signed_duration_text(0.2), "+0:00");
}

}  // namespace
}  // namespace seamtakt::test
