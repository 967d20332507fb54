#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <random>

#include "base/error.hpp"
#include "fit_fixture.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/window/seam_alone.hpp"
#include "plan/window/window.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

bool fails_there(const Findings& findings, const std::vector<std::string>& places) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) {
    return finding.severity == Severity::fail &&
           std::find(places.begin(), places.end(), finding.where) != places.end();
  });
}

/// Above the drawn throat by more than a quarter of it, at least 1 mm; computed independently of the program.
bool is_oversized(const SeamAlone& alone, const SeamEvaluation& seam) {
  if (!seam.throat_mm) return false;
  const Seam& drawn = alone.seam();
  const double needed = drawn.throat_mm ? *drawn.throat_mm : *drawn.leg_mm / std::sqrt(2.0);
  return *seam.throat_mm > (needed + std::max(1.0, needed / 4)) * (1 + 1e-9);
}

/// Sets a schedule's two speeds in the plan of one seam and compares the map's point with what evaluate says.
void expect_point_is_evaluated(const WindowMap& map, SeamAlone alone, std::size_t feed, std::size_t speed) {
  Schedule& schedule = *find_by_id(alone.plan.schedules, map.schedule);
  const double law = schedule.current_A ? map.current_A[feed] : 0;
  schedule.wire_feed_speed_m_min = map.wire_feed_speed_m_min[feed];
  schedule.travel_speed_mm_s = map.travel_speed_mm_s[speed];
  if (schedule.current_A) schedule.current_A = law;
  const Evaluation evaluation = evaluate(alone.plan);
  const std::vector<int> passes = passes_with(alone.seam(), map.schedule);
  const PassEvaluation& pass = evaluation.passes[static_cast<std::size_t>(passes.front() - 1)];
  const std::size_t at = map.at(feed, speed);
  const std::string where = alone.place() + " at " + std::to_string(schedule.wire_feed_speed_m_min) +
                            " m/min, " + std::to_string(schedule.travel_speed_mm_s) + " mm/s";
  EXPECT_DOUBLE_EQ(map.current_A[feed], pass.current_A) << where;
  EXPECT_DOUBLE_EQ(map.heat_input_kJ_mm[at], pass.heat_input_kJ_mm) << where;
  EXPECT_DOUBLE_EQ(map.deposit_area_mm2[at], pass.deposit_area_mm2) << where;
  EXPECT_DOUBLE_EQ(map.cooling_time_s[at], *pass.cooling_time_s) << where;
  if (pass.preheat_needed_C) {
    EXPECT_DOUBLE_EQ(map.preheat_needed_C[at], *pass.preheat_needed_C) << where;
  } else {
    EXPECT_TRUE(map.preheat_needed_C.empty() || pass.heat_input_kJ_mm < 0.5) << where;
  }
  if (!map.haz_hardness_HV.empty()) {
    EXPECT_DOUBLE_EQ(map.haz_hardness_HV[at], *pass.haz_hardness_HV) << where;
  }
  if (!map.leg_mm.empty()) {
    EXPECT_NEAR(map.leg_mm[at], *evaluation.seams.front().leg_mm, 1e-12) << where;
  }
  std::string broken;
  for (std::size_t k = 0; k < map.limits.size(); ++k)
    if (map.broken[at] >> k & 1) broken += " " + map.limits[k].rule;
  const bool is_in_order = !fails_there(evaluation.findings, judged_places(alone, passes)) &&
                           !is_oversized(alone, evaluation.seams.front());
  // A map shows all limits, also one that the current's uncertainty leaves open, which fails nothing.
  if (pass.left_open != 0 && is_in_order) return;
  EXPECT_EQ(map.is_feasible(feed, speed), is_in_order) << where << ":" << broken;
}

/// All seams of a plan with each of their schedules, a few random points of each map.
void expect_maps_are_evaluations(const Plan& plan, int points_each, std::size_t& feasible,
                                 std::size_t& points) {
  std::mt19937 random(7);
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      std::vector<std::string> schedules = seam.schedules;
      std::sort(schedules.begin(), schedules.end());
      schedules.erase(std::unique(schedules.begin(), schedules.end()), schedules.end());
      for (const std::string& schedule : schedules) {
        WindowOptions options;
        options.size = 33;
        options.with_hardness = true;
        const WindowMap map = window_map(plan, schedule, weldment.id + "/" + seam.id, options);
        feasible += map.feasible_points;
        points += map.broken.size();
        const SeamAlone alone = seam_alone(plan, weldment, seam);
        for (int i = 0; i < points_each; ++i)
          expect_point_is_evaluated(map, alone, random() % options.size, random() % options.size);
        if (testing::Test::HasFailure()) return;
      }
    }
}

}  // namespace

TEST(WindowMap, a_point_is_what_evaluate_says_with_these_speeds) {
  std::size_t feasible = 0, points = 0;
  expect_maps_are_evaluations(demo(), 12, feasible, points);
  // The demo's procedures have real windows: a share of the maps, neither nothing nor all.
  EXPECT_GT(feasible, points / 100);
  EXPECT_LT(feasible, points / 2);
  expect_maps_are_evaluations(two_schedules(), 200, feasible, points);
}

TEST(WindowMap, guarded_limits_and_accepted_findings_are_judged_as_evaluate_judges_them) {
  Plan plan = demo();
  plan.measuring->decision = "guarded";
  std::size_t feasible = 0, points = 0;
  expect_maps_are_evaluations(plan, 3, feasible, points);
  const Weldment& weldment = plan.weldments.front();
  const Seam& seam = weldment.seams.front();
  for (std::size_t pass = 1; pass <= seam.schedules.size(); ++pass)
    for (const char* rule : {"limit.travel-speed.high", "limit.heat-input.low"})
      plan.accepted.push_back({rule,
                               weldment.id + "/" + seam.id + "/pass " + std::to_string(pass),
                               "A",
                               "2026-01-01",
                               "test",
                               {}});
  const WindowMap map = window_map(plan, seam.schedules.front(), weldment.id + "/" + seam.id);
  for (const WindowLimit& limit : map.limits) {
    EXPECT_NE(limit.rule, "limit.travel-speed.high");
    EXPECT_NE(limit.rule, "limit.heat-input.low");
  }
  const SeamAlone alone = seam_alone(plan, weldment, seam);
  for (std::size_t i = 0; i < 50; i += 7)
    for (std::size_t j = 0; j < 50; j += 7) expect_point_is_evaluated(map, alone, i, j);
}

TEST(WindowMap, a_limit_that_no_speed_can_keep_empties_the_window_and_is_named) {
  Plan plan = two_schedules();
  Seam& seam = plan.weldments[0].seams[0];
  Schedule& schedule = *find_by_id(plan.schedules, seam.schedules.front());
  schedule.use = ScheduleUse{};
  schedule.use->positions = {"PC"};
  seam.position = "PB";
  const WindowMap map = window_map(plan, schedule.id, seam.id);
  EXPECT_EQ(map.feasible_points, 0u);
  const auto constant = std::find_if(map.limits.begin(), map.limits.end(), [](const WindowLimit& limit) {
    return limit.rule == "schedule.use.position";
  });
  ASSERT_NE(constant, map.limits.end());
  EXPECT_FALSE(constant->bound);
  EXPECT_DOUBLE_EQ(constant->broken_pct, 100);
  EXPECT_TRUE(std::any_of(map.findings.begin(), map.findings.end(), [](const Finding& finding) {
    return finding.rule == "window.empty" && finding.text().find("PC") != std::string::npos;
  }));
}

TEST(WindowMap, any_number_of_threads_gives_the_same_map) {
  const Plan plan = demo();
  const Seam& seam = plan.weldments[0].seams[0];
  const std::string place = plan.weldments[0].id + "/" + seam.id;
  WindowOptions options;
  options.size = 111;
  ThreadPool one(1), three(3);
  const WindowMap a = window_map(plan, seam.schedules[0], place, options, one);
  const WindowMap b = window_map(plan, seam.schedules[0], place, options, three);
  EXPECT_EQ(a.broken, b.broken);
  EXPECT_EQ(a.leg_mm, b.leg_mm);
  EXPECT_EQ(a.preheat_needed_C, b.preheat_needed_C);
  EXPECT_EQ(a.feasible_points, b.feasible_points);
  for (std::size_t k = 0; k < a.limits.size(); ++k) EXPECT_EQ(a.limits[k].alone_pct, b.limits[k].alone_pct);
}

TEST(WindowMap, a_map_that_is_filled_again_is_the_map_made_new) {
  const Plan plan = demo();
  WindowMap map;
  WindowOptions options;
  options.with_hardness = true;
  for (const Seam& seam : plan.weldments[0].seams) {
    const std::string place = plan.weldments[0].id + "/" + seam.id;
    window_map_into(map, plan, seam.schedules[0], place, options);
    const WindowMap fresh = window_map(plan, seam.schedules[0], place, options);
    EXPECT_EQ(map.broken, fresh.broken);
    EXPECT_EQ(map.leg_mm, fresh.leg_mm);
    EXPECT_EQ(map.haz_hardness_HV, fresh.haz_hardness_HV);
    EXPECT_EQ(map.findings.size(), fresh.findings.size());
    EXPECT_EQ(map.limits.size(), fresh.limits.size());
  }
}

TEST(WindowMap, a_schedule_that_the_seam_does_not_use_is_mapped_for_every_pass) {
  const Plan plan = demo();
  const Seam& seam = plan.weldments[0].seams[0];
  for (const Schedule& schedule : plan.schedules) {
    if (std::count(seam.schedules.begin(), seam.schedules.end(), schedule.id)) continue;
    const WindowMap map = window_map(plan, schedule.id, plan.weldments[0].id + "/" + seam.id);
    EXPECT_EQ(map.passes, static_cast<int>(seam.schedules.size()));
    return;
  }
  FAIL() << "the demo's first seam uses every schedule";
}

TEST(WindowMap, what_cannot_be_mapped_is_said) {
  const Plan plan = demo();
  const std::string schedule = plan.schedules[0].id,
                    seam = plan.weldments[0].id + "/" + plan.weldments[0].seams[0].id;
  EXPECT_THROW(window_map(plan, "no such", seam), InputError);
  EXPECT_THROW(window_map(plan, schedule, "no such"), InputError);
  WindowOptions options;
  for (std::size_t size : {0u, 1u, 2001u}) {
    options.size = size;
    EXPECT_THROW(window_map(plan, schedule, seam, options), InputError) << size;
  }
  options.size = 10;
  for (const WindowRange range : {WindowRange{0, 5}, WindowRange{5, 5}, WindowRange{7, 5}, WindowRange{-1, 5},
                                  WindowRange{1, std::numeric_limits<double>::infinity()}}) {
    options.travel_speed_mm_s = range;
    EXPECT_THROW(window_map(plan, schedule, seam, options), InputError) << range.lower << " " << range.upper;
  }
}
