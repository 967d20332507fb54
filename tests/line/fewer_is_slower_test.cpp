// Taking a robot or a server away never raises what a line without rework finishes, with paired draws.
//
// Throughput here is units over the makespan. Over the time from the first unit's end to the last one's it
// may rise, because the first unit ends later, too. Where units overtake one another (several servers,
// different units), a list schedule has anomalies; such lines aren't in here.
#include <gtest/gtest.h>

#include <random>

#include "line/flow_recurrence.hpp"
#include "line_plan.hpp"
#include "small_line.hpp"

namespace seamtakt::test {
namespace {

constexpr int cases() {
  return 200;
}

/// Lines that have units, drawn until there are enough.
template <class Each>
void for_lines(RandomLineShape shape, Each&& each) {
  int count = 0;
  for (std::uint64_t seed = 1; count < cases(); ++seed) {
    const LineModel line = random_line(seed, shape);
    if (line.random_stream_id.empty()) continue;
    ++count;
    std::mt19937_64 random(1'000'000 + seed);
    each(line, random, seed);
  }
}

double makespan_s(const LineModel& line, std::uint64_t seed) {
  return run_line(line, seed).makespan_s;
}

TEST(FewerIsSlower, ARobotLessMakesACellsWorkLongerAndNeverTheDayShorter) {
  int slower = 0;
  for_lines({}, [&](const LineModel& line, std::mt19937_64& random, std::uint64_t seed) {
    LineModel without = line;
    const std::size_t stages = line.stage_count(), cell = random() % stages;
    for (std::size_t i = cell; i < without.work_s.size(); i += stages)
      without.work_s[i] *= 1 + static_cast<double>(random() % 100) / 100;
    const double before_s = makespan_s(line, seed), after_s = makespan_s(without, seed);
    EXPECT_GE(after_s, before_s * (1 - 1e-12)) << "seed " << seed << ", stage " << cell;
    slower += after_s > before_s;
  });
  EXPECT_GT(slower, cases() / 4);
}

TEST(FewerIsSlower, AServerLessNeverMakesTheDayShorter) {
  int slower = 0, judged = 0;
  for_lines({.several_servers = true}, [&](const LineModel& drawn, std::mt19937_64&, std::uint64_t seed) {
    LineModel line = drawn;
    const std::size_t stages = line.stage_count();
    for (std::size_t i = stages; i < line.work_s.size(); ++i) line.work_s[i] = line.work_s[i - stages];
    line.change_stage = -1;
    line.change_s.clear();
    // Stops of the last stage alone: after others units would overtake one another.
    for (std::size_t j = 0; j + 1 < stages; ++j) line.stages[j].availability = 1;
    for (std::size_t j = 0; j < stages; ++j) {
      if (line.stages[j].servers < 2) continue;
      LineModel without = line;
      --without.stages[j].servers;
      const double before_s = makespan_s(line, seed), after_s = makespan_s(without, seed);
      EXPECT_GE(after_s, before_s * (1 - 1e-12)) << "seed " << seed << ", stage " << j;
      slower += after_s > before_s;
      ++judged;
    }
  });
  EXPECT_GE(judged, cases());
  EXPECT_GT(slower, 0);
}

/// Work that varies, and assembly that pulls, on some of the stages and lines.
void add_chance(LineModel& line, std::mt19937_64& random) {
  for (LineStage& stage : line.stages)
    if (random() % 2) stage.variation = WorkVariation::log_normal(0.4);
  if (random() % 2)
    line.pull = LinePull{static_cast<double>(1 + random() % 8), static_cast<double>(random() % 30)};
}

Calendar calendar_of(std::mt19937_64& random) {
  Calendar calendar;
  calendar.start = "2026-11-30T0" + std::to_string(random() % 10) + ":00";
  calendar.shifts.resize(2);
  calendar.shifts[0].days = {"mon", "tue", "wed", "thu", "fri"};
  calendar.shifts[0].from = "06:00";
  calendar.shifts[0].to = "14:00";
  calendar.shifts[1].days = {"mon", "wed", "sat"};
  calendar.shifts[1].from = "20:00";
  calendar.shifts[1].to = "02:00";
  return calendar;
}

TEST(FewerIsSlower, AnHourLessADayNeverMakesItEarlier) {
  int slower = 0;
  for_lines({}, [&](const LineModel& drawn, std::mt19937_64& random, std::uint64_t seed) {
    LineModel line = drawn;
    add_chance(line, random);
    // Hours of work, so that there are shifts to be crossed.
    for (double& work_s : line.work_s) work_s *= 600;
    for (LineStage& stage : line.stages) stage.repair_s *= 600;
    if (line.pull) line.pull = LinePull{line.pull->takt_s * 600, line.pull->first_s * 600};
    const Calendar whole = calendar_of(random);
    Calendar less = whole;
    switch (random() % 3) {
      case 0:
        less.shifts[0].breaks = {{"09:00", "10:00"}};
        break;
      case 1:
        less.shifts[0].from = "07:00";
        break;
      default:
        less.shifts[1].to = "01:00";
    }
    LineModel shorter = line;
    line.hours = std::make_shared<const WorkHours>(whole);
    shorter.hours = std::make_shared<const WorkHours>(less);
    const LineFigures before = line_figures(line, std::nullopt, seed, 5);
    const LineFigures after = line_figures(shorter, std::nullopt, seed, 5);
    EXPECT_GE(after.makespan_s, before.makespan_s * (1 - 1e-12)) << "seed " << seed;
    EXPECT_LE(after.throughput_per_h, before.throughput_per_h * (1 + 1e-12)) << "seed " << seed;
    EXPECT_LE(after.throughput_overall_per_h, before.throughput_overall_per_h * (1 + 1e-12))
        << "seed " << seed;
    EXPECT_LE(after.finished_first_day, before.finished_first_day) << "seed " << seed;
    slower += after.makespan_s > before.makespan_s;
  });
  EXPECT_GT(slower, cases() / 4);
}

TEST(FewerIsSlower, ARobotLessIsNoGainWithVaryingWorkAndPullToo) {
  int slower = 0;
  for_lines({}, [&](const LineModel& drawn, std::mt19937_64& random, std::uint64_t seed) {
    LineModel line = drawn;
    add_chance(line, random);
    LineModel without = line;
    const std::size_t stages = line.stage_count(), cell = random() % stages;
    for (std::size_t i = cell; i < without.work_s.size(); i += stages) without.work_s[i] *= 1.5;
    const double before_s = makespan_s(line, seed), after_s = makespan_s(without, seed);
    EXPECT_GE(after_s, before_s * (1 - 1e-12)) << "seed " << seed << ", stage " << cell;
    slower += after_s > before_s;
  });
  EXPECT_GT(slower, cases() / 4);
}

TEST(FewerIsSlower, HandWorkTakesItsTimeInTheStageForIt) {
  Plan plan = line_plan({named_stage("manual")});
  plan.cell->manual = ManualWork{0.2, 30, {}};
  plan.schedules.resize(1);
  plan.schedules[0].id = "M";
  plan.schedules[0].travel_speed_mm_s = 5;
  Seam seam;
  seam.id = "S1";
  seam.by = "manual";
  seam.schedules = {"M"};
  seam.path_mm = {{0, 0, 0}, {100, 0, 0}};
  plan.weldments[0].seams = {seam};
  // 20 s of arc at a fifth of the time, and 30 s.
  EXPECT_EQ(line_of(plan, "A", request_with({})).makespan_s, 20 / 0.2 + 30);
  EXPECT_EQ(line_of(plan, "AAAA", request_with({})).makespan_s, 4 * (20 / 0.2 + 30));
  plan.weldments[0].manual_s = 70;
  EXPECT_EQ(line_of(plan, "A", request_with({})).makespan_s, 70);
}

}  // namespace
}  // namespace seamtakt::test
