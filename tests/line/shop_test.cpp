// Calendar, pull, varying work, shared people and units that come later, against a plain simulator by the
// clock and against the recurrence.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "line/flow_recurrence.hpp"
#include "line/line_calendar.hpp"
#include "line_plan.hpp"
#include "plain_shop.hpp"
#include "small_line.hpp"

namespace seamtakt::test {
namespace {

/// A random line of timed stages. Either all times are whole tens of minutes, so that things happen at once
/// and at a shift's end, or every stage's time varies.
class RandomShop {
 public:
  explicit RandomShop(std::uint64_t seed) : random_(seed) {
    const bool whole = chance(2);
    plan.weldments = {weldment_of("A", 0, 0)};
    plan.line = Line{};
    Line& line = *plan.line;
    for (int stages = 1 + up_to(4); stages > 0; --stages) line.stages.push_back(stage(whole));
    line.takt_s = whole ? 600.0 * (1 + up_to(4)) : 400.0 + up_to(2000);
    if (!whole && chance(3)) line.planning_pct = 90;
    line.pull = chance(2) ? "takt" : "free";
    if (chance(2)) add_people();
    if (!chance(3)) add_calendar();
    units = 1 + static_cast<std::size_t>(up_to(34));
    arrives_s.assign(units, 0);
    if (chance(3))
      for (double& at_s : arrives_s)
        if (chance(4)) at_s = 60.0 * up_to(2000);
  }

  Plan plan;
  std::size_t units = 0;
  std::vector<double> arrives_s;

 private:
  int up_to(int most) { return static_cast<int>(random_() % static_cast<std::uint64_t>(most + 1)); }
  /// One time of so many.
  bool chance(int of) { return up_to(of - 1) == 0; }

  Stage stage(bool whole) {
    Stage made = timed_stage("s" + std::to_string(plan.line->stages.size()), 600.0 * (1 + up_to(3)),
                             1 + up_to(2), chance(4) ? 50 : up_to(2));
    if (whole) return made;
    if (chance(2)) {
      made.cv = 0.05 + up_to(10) / 10.0;
    } else {
      const double least_s = 100 + up_to(500), usual_s = least_s + up_to(600);
      made.time_range_s = {least_s, usual_s, usual_s + 1 + up_to(2000)};
    }
    if (chance(3)) {
      made.availability = 0.85;
      made.repair_s = 200 + up_to(600);
    }
    return made;
  }

  void add_people() {
    Line& line = *plan.line;
    line.operators.resize(2);
    line.operators[0].id = "first";
    line.operators[1].id = "second";
    for (Operators& group : line.operators) group.count = 1 + up_to(1);
    for (const Stage& stage : line.stages)
      if (const int group = up_to(2); group < 2)
        line.operators[static_cast<std::size_t>(group)].stages.push_back(stage.id);
  }

  void add_calendar() {
    Calendar calendar;
    calendar.start =
        "2026-12-0" + std::to_string(1 + up_to(6)) + "T" + std::string(chance(2) ? "05:10" : "13:20");
    const std::vector<std::string> days = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
    const std::vector<Shift> kinds = {
        shift_of({}, "06:00", "14:00", {{"09:00", "09:20"}, {"12:00", "12:30"}}),
        shift_of({}, "14:00", "22:00", {{"18:00", "18:30"}}),
        shift_of({}, "22:00", "06:00", {{"23:50", "00:10"}, {"02:00", "02:40"}})};
    for (const Shift& kind : kinds) {
      if (chance(2)) continue;
      Shift shift = kind;
      for (const std::string& day : days)
        if (!chance(3)) shift.days.push_back(day);
      if (chance(3)) shift.breaks.clear();
      if (!shift.days.empty()) calendar.shifts.push_back(shift);
    }
    if (!calendar.shifts.empty()) plan.line->calendar = calendar;
  }

  std::mt19937_64 random_;
};

LineResult result_of(const RandomShop& shop, std::uint64_t seed) {
  std::vector<Order> orders = orders_of(std::string(shop.units, 'A'));
  Release release = release_all(orders);
  for (std::size_t i = 0; i < shop.units; ++i) {
    const double at_s = shop.arrives_s[i];
    release.released[i].available_s =
        shop.plan.line->calendar ? WorkHours(*shop.plan.line->calendar).work_s(at_s) : at_s;
  }
  LineRequest request = request_with({});
  request.seed = seed;
  request.runs = 1;
  return simulate_line(shop.plan, Evaluation{}, release, request);
}

TEST(Shop, AgreesWithAPlainSimulatorByTheClock) {
  int calendars = 0, pulled = 0, people = 0, later = 0, varied = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    const RandomShop shop(seed);
    const Line& line = *shop.plan.line;
    const PlainShop plain(shop.plan, shop.arrives_s, seed);
    const LineResult result = result_of(shop, seed);
    ASSERT_EQ(result.units.size(), shop.units);
    // Equal units begun at the same instant can stay level until a tie: which of them goes first isn't
    // defined, when they leave is. So those of one begin are compared in the order in which they leave.
    std::vector<std::pair<double, double>> ours, theirs;
    for (std::size_t u = 0; u < shop.units; ++u) {
      const double start_s = plain.units[u].start_s;
      ASSERT_NEAR(result.units[u].start_s, start_s, 1e-9 * (1 + plain.units[u].end_s))
          << "line " << seed << " unit " << u;
      ours.emplace_back(start_s, result.units[u].end_s);
      theirs.emplace_back(start_s, plain.units[u].end_s);
    }
    std::ranges::sort(ours);
    std::ranges::sort(theirs);
    for (std::size_t u = 0; u < shop.units; ++u)
      ASSERT_NEAR(ours[u].second, theirs[u].second, 1e-9 * (1 + theirs[u].second))
          << "line " << seed << " unit " << u;
    calendars += line.calendar.has_value();
    pulled += line.pull == "takt";
    people += !line.operators.empty();
    later += std::ranges::any_of(shop.arrives_s, [](double at_s) { return at_s > 0; });
    varied += !result.certain;
  }
  for (const int count : {calendars, pulled, people, later, varied}) EXPECT_GT(count, 60);
}

TEST(Shop, EventsAgreeWithTheRecurrenceToTheLastBit) {
  int pulled = 0;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    LineModel line = random_line(seed, {});
    std::mt19937_64 random(seed);
    for (LineStage& stage : line.stages)
      if (random() % 2) stage.variation = WorkVariation::log_normal(0.3);
    if (random() % 2)
      line.pull = LinePull{static_cast<double>(1 + random() % 8), static_cast<double>(random() % 40)};
    pulled += line.pull.has_value();
    ASSERT_TRUE(recurrence_covers(line));
    const LineRun events = run_calendar(line, seed), recurrence = run_recurrence(line, seed);
    ASSERT_EQ(events.makespan_s, recurrence.makespan_s) << "line " << seed;
    for (std::size_t u = 0; u < events.units.size(); ++u) {
      ASSERT_EQ(events.units[u].start_s, recurrence.units[u].start_s) << "line " << seed << " unit " << u;
      ASSERT_EQ(events.units[u].end_s, recurrence.units[u].end_s) << "line " << seed << " unit " << u;
    }
    for (std::size_t j = 0; j < events.stages.size(); ++j)
      ASSERT_EQ(events.stages[j].blocked_s, recurrence.stages[j].blocked_s) << "line " << seed;
  }
  EXPECT_GT(pulled, 300);
}

TEST(Shop, TheChainOfActivitiesHasNoGapWithPeopleAndPull) {
  int people = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    LineModel line = random_line(seed, {true, true});
    if (line.unit_count() == 0) continue;
    line.people = {{"first", 1}, {"second", 2}};
    for (std::size_t j = 0; j < line.stage_count(); ++j)
      line.stages[j].people = static_cast<int>((seed + j) % 3) - 1;
    if (seed % 2) line.pull = LinePull{4, 12};
    LineTrace trace;
    const LineRun watched = run_calendar(line, seed, trace), unwatched = run_calendar(line, seed);
    double flow_s = 0;
    for (std::size_t u = 0; u < watched.units.size(); ++u) {
      ASSERT_EQ(watched.units[u].end_s, unwatched.units[u].end_s);
      flow_s += watched.units[u].end_s - watched.units[u].start_s;
      const Activity* at = &trace.activities[static_cast<std::size_t>(trace.leaving[u])];
      ASSERT_EQ(at->end_s, watched.units[u].end_s) << "line " << seed;
      for (; at->trigger >= 0; at = &trace.activities[static_cast<std::size_t>(at->trigger)])
        ASSERT_EQ(at->start_s, trace.activities[static_cast<std::size_t>(at->trigger)].end_s)
            << "line " << seed;
      ASSERT_EQ(at->start_s, 0) << "line " << seed;
    }
    ASSERT_NEAR(trace.units_in_line_s, flow_s, 1e-11 * (1 + flow_s)) << "line " << seed;
    for (const StageTimes& stage : watched.stages) people += stage.no_person_s > 0;
  }
  EXPECT_GT(people, 100);
}

TEST(Shop, PeopleForEveryPlaceChangeNothing) {
  int judged = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const LineModel line = random_line(seed, {true, true});
    // Where several things happen at once, people are given out after them, and units may pass one another.
    if (std::ranges::any_of(line.work_s, [](double time_s) { return time_s == std::floor(time_s); }))
      continue;
    ++judged;
    LineModel attended = line;
    attended.people = {{"all", 100}};
    for (LineStage& stage : attended.stages) stage.people = 0;
    const LineRun without = run_calendar(line, seed), with = run_calendar(attended, seed);
    for (std::size_t u = 0; u < without.units.size(); ++u)
      ASSERT_EQ(with.units[u].end_s, without.units[u].end_s) << "line " << seed << " unit " << u;
  }
  EXPECT_GT(judged, 50);
}

}  // namespace
}  // namespace seamtakt::test
