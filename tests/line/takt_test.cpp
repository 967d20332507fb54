// Takt misses, their causes, the worst window, and what cures a line.
#include <gtest/gtest.h>

#include <cmath>

#include "base/error.hpp"
#include "line/line_calendar.hpp"
#include "line/line_figures.hpp"
#include "small_line.hpp"

namespace seamtakt::test {
namespace {

LineRun leaving_at(const std::vector<double>& ends) {
  LineRun run;
  for (const double end_s : ends) {
    run.units.push_back({0, end_s, false, 0});
    run.makespan_s = std::max(run.makespan_s, end_s);
  }
  return run;
}

TEST(Takt, AUnitEveryTaktMissesNothing) {
  const LineModel line = steady_line({stage_of(1, 0), stage_of(1, 0)}, {1200, 1200}, 24);
  const TaktGoal goal = takt_goal(line, 1200);
  EXPECT_EQ(goal.first_s, 2400);
  const LineRun run = run_calendar(line, 1);
  EXPECT_EQ(count_takt(run, goal).misses, 0);
  EXPECT_EQ(throughput_per_h(run), 3);
}

TEST(Takt, ASecondMoreEachMissesEveryUnitButTheFirst) {
  const LineModel line = steady_line({stage_of(1, 0)}, {1201}, 24);
  const TaktCount count = count_takt(run_calendar(line, 1), takt_goal(line, 1200));
  EXPECT_EQ(count.misses, 23);
  EXPECT_EQ(count.intervals_over_takt, 23);
  EXPECT_NEAR(count.lost_s, 23, 1e-9);
}

TEST(Takt, AnEarlyUnitWaitsAndALateOneShiftsTheRest) {
  // Due at 10, then every 10. 8: early. 20: on time. 33: 3 late; then 43 is due. 40: early. 53: on
  // time.
  const TaktCount count = count_takt(leaving_at({8, 20, 33, 40, 53}), {10, 10});
  EXPECT_EQ(count.misses, 1);
  EXPECT_EQ(count.lost_s, 3);
  EXPECT_EQ(count.intervals_over_takt, 3);  // 12, 13, 13
}

TEST(Takt, ScrapServesNobody) {
  LineRun run = leaving_at({10, 20, 30});
  run.units[1].scrapped = true;
  const TaktCount count = count_takt(run, {10, 10});
  EXPECT_EQ(count.misses, 1);
  EXPECT_EQ(count.lost_s, 10);
}

TEST(Takt, UnitsCountInTheOrderOfLeaving) {
  EXPECT_EQ(count_takt(leaving_at({20, 10, 40, 30}), {10, 10}).misses, 0);
}

TEST(Throughput, LeavesOutFillingAndEmptying) {
  EXPECT_EQ(throughput_per_h(leaving_at({5000, 6200, 7400})), 3);
  // Two servers of 2400 s: pairs at 2400, 4800, 7200 are 3 an hour, too.
  EXPECT_EQ(throughput_per_h(run_calendar(steady_line({stage_of(2, 0)}, {2400}, 24), 1)), 3);
  EXPECT_EQ(throughput_per_h(leaving_at({1800})), 2);
}

TEST(WorstWindow, IsWhereUnitsTookLongest) {
  const auto worst = worst_window(leaving_at({10, 20, 30, 60, 100, 110, 120}), 2);
  ASSERT_TRUE(worst);
  EXPECT_EQ(worst->start_s, 30);
  EXPECT_EQ(worst->end_s, 100);
  EXPECT_EQ(worst->units, 2);
  EXPECT_DOUBLE_EQ(worst->throughput_per_h, 3600 * 2 / 70.0);
  EXPECT_FALSE(worst_window(leaving_at({10}), 2));
  EXPECT_EQ(worst_window(leaving_at({10, 30}), 50)->units, 1);
}

std::vector<TaktMiss> misses_of(const LineModel& line, double takt_s, std::uint64_t seed = 1) {
  LineTrace trace;
  const LineRun run = run_calendar(line, seed, trace);
  return explain_misses(run, trace, line.stage_count(), takt_goal(line, takt_s));
}

TEST(MissCauses, WorkIsToBlameAtTheStageWithMostOfIt) {
  const std::vector<TaktMiss> misses =
      misses_of(steady_line({stage_of(1, 1), stage_of(1, 1), stage_of(1, 0)}, {5, 12, 7}, 6), 10);
  ASSERT_EQ(misses.size(), 5u);
  for (const TaktMiss& miss : misses) {
    EXPECT_EQ(miss.cause, MissCause::work);
    EXPECT_EQ(miss.stage, 1);
  }
}

TEST(MissCauses, AChangeWithoutWhichTheUnitWouldHaveBeenInTime) {
  LineModel line = steady_line({stage_of(1, 1), stage_of(1, 0)}, {9, 5}, 6);
  line.change_stage = 0;
  line.change_s = {0, 0, 0, 8, 0, 0};
  const std::vector<TaktMiss> misses = misses_of(line, 10);
  ASSERT_EQ(misses.size(), 1u);
  EXPECT_EQ(misses[0].unit, 3u);
  EXPECT_EQ(misses[0].cause, MissCause::change);
  EXPECT_EQ(misses[0].stage, 0);
}

TEST(MissCauses, ARepairAtAStageBeforeIsFoundThroughTheChain) {
  LineModel line = steady_line({stage_of(1, 1), stage_of(1, 1), stage_of(1, 0)}, {9.9, 5, 5}, 200);
  line.stages[0].availability = 0.95;
  line.stages[0].repair_s = 10;
  int repairs = 0;
  for (const TaktMiss& miss : misses_of(line, 10, 4)) {
    EXPECT_EQ(miss.cause, MissCause::repair);
    EXPECT_EQ(miss.stage, 0);
    ++repairs;
  }
  EXPECT_GT(repairs, 0);
}

TEST(MissCauses, Rework) {
  LineModel line = steady_line({stage_of(1, 5), stage_of(1, 0)}, {9.9, 3}, 200);
  line.stages[1].yield = 0.97;
  line.stages[1].rework_to = 0;
  line.stages[1].rework_s = 30;
  const std::vector<TaktMiss> misses = misses_of(line, 10, 2);
  EXPECT_GT(misses.size(), 5u);
  for (const TaktMiss& miss : misses) EXPECT_EQ(miss.cause, MissCause::rework) << "unit " << miss.unit;
}

const Improvement* cure_of(const std::vector<Improvement>& list, const std::string& stage,
                           const std::string& change) {
  for (const Improvement& cure : list)
    if (cure.stage == stage && cure.change.english() == change) return &cure;
  return nullptr;
}

TEST(Cures, AServerMoreAtTheBottleneckIsANumber) {
  // 6, 12, 7 s: 300 an hour. A second server at the middle leaves 7 s: 514 an hour. 10 % off: 10.8 s, 333.
  const LineModel line = steady_line({stage_of(1, 1), stage_of(1, 1), stage_of(1, 0)}, {6, 12, 7}, 400);
  const std::vector<Improvement> list = cures(line, takt_goal(line, 10), 1, 50);
  ASSERT_FALSE(list.empty());
  EXPECT_EQ(list.front().stage, "stage 2");
  EXPECT_EQ(list.front().change.english(), "1 server more");
  EXPECT_NEAR(list.front().figures.throughput_per_h, 3600 / 7.0, 1e-6);
  EXPECT_NEAR(list.front().throughput_change_per_h, 3600 / 7.0 - 300, 1e-6);
  EXPECT_EQ(list.front().takt_misses_change, -399);
  const Improvement* faster = cure_of(list, "stage 2", "time -10 %");
  ASSERT_TRUE(faster);
  EXPECT_NEAR(faster->figures.throughput_per_h, 3600 / 10.8, 1e-6);
  const Improvement* elsewhere = cure_of(list, "stage 1", "1 server more");
  ASSERT_TRUE(elsewhere);
  EXPECT_EQ(elsewhere->throughput_change_per_h, 0);
  EXPECT_FALSE(cure_of(list, "stage 3", "buffer 1 more"));
  EXPECT_FALSE(cure_of(list, "stage 1", "no stops"));
}

TEST(Cures, WithoutStopsALineGivesWhatItsTimesSay) {
  LineModel line = steady_line({stage_of(1, 0)}, {10}, 500);
  line.stages[0].availability = 0.8;
  line.stages[0].repair_s = 20;
  const std::vector<Improvement> list = cures(line, takt_goal(line, 10), 1, 20);
  const Improvement* cure = cure_of(list, "stage 1", "no stops");
  ASSERT_TRUE(cure);
  EXPECT_NEAR(cure->figures.throughput_per_h, 360, 1e-6);
  EXPECT_NEAR(cure->throughput_change_per_h, 360 * 0.2, 4 * cure->throughput_change_se_per_h + 1);
  EXPECT_GT(cure->throughput_change_se_per_h, 0);
}

TEST(Cures, AreTheSameTwice) {
  const LineModel line = random_line(30, {true, true});
  const auto first = cures(line, takt_goal(line, 3), 1, 30), second = cures(line, takt_goal(line, 3), 1, 30);
  ASSERT_EQ(first.size(), second.size());
  for (std::size_t i = 0; i < first.size(); ++i) {
    EXPECT_EQ(first[i].stage + first[i].change.english(), second[i].stage + second[i].change.english());
    EXPECT_EQ(first[i].throughput_change_per_h, second[i].throughput_change_per_h);
  }
}

TEST(LineModelCheck, NamesTheStageAndWhatIsWrong) {
  LineModel line = steady_line({stage_of(1, 0), stage_of(1, 0)}, {1, 1}, 2);
  line.stages[0].yield = 0.5;
  line.stages[0].rework_to = 1;
  EXPECT_THROW(check_line_model(line, "/line"), InputError);
  line.stages[0].rework_to = 0;
  line.stages[0].yield = 0;
  EXPECT_THROW(check_line_model(line, "/line"), InputError);
  line.stages[0].yield = 0.5;
  EXPECT_NO_THROW(check_line_model(line, "/line"));
  EXPECT_THROW(check_line_model(LineModel{}, "/line"), InputError);
}

}  // namespace
}  // namespace seamtakt::test
