#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "base/error.hpp"
#include "fit_fixture.hpp"
#include "plan/window/seam_alone.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

TEST(Fit, a_leg_that_is_too_small_gets_settings_and_the_other_seams_keep_theirs) {
  Plan plan = demo();
  const std::string place = "TT/S49";
  // Without the schedule of the plan that would do unchanged.
  const auto keeps = [](const std::string& id) { return id != "F6S"; };
  std::erase_if(plan.weldments, [](const Weldment& weldment) { return weldment.id != "TT"; });
  for (Seam& seam : plan.weldments.front().seams)
    for (std::string& schedule : seam.schedules)
      if (!keeps(schedule)) schedule = "F5S";
  std::erase_if(plan.schedules, [&](const Schedule& schedule) { return !keeps(schedule.id); });
  ASSERT_FALSE(fails_on(plan, place).empty());
  FitOptions options;
  options.seams = {place};
  const FitResult result = fit(plan, options);
  const FittedSeam& seam = only_seam(result);
  ASSERT_TRUE(seam.has_settings);
  EXPECT_TRUE(seam.is_changed);
  EXPECT_NE(seam.after.schedule, seam.before.schedule);
  EXPECT_TRUE(fails_on(result.plan, place).empty());
  EXPECT_EQ(find_by_id(result.plan.schedules, seam.after.schedule)->status, "draft");
  EXPECT_EQ(find_by_id(result.plan.schedules, seam.after.schedule)->revision, seam.before.revision + 1);
  // Nothing else has changed: the old schedule and every other seam's are as they were.
  EXPECT_EQ(result.plan.schedules.size(), plan.schedules.size() + 1);
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& other : weldment.seams)
      if (weldment.id + "/" + other.id != place) {
        EXPECT_EQ(find_by_id(find_by_id(result.plan.weldments, weldment.id)->seams, other.id)->schedules,
                  other.schedules);
      }
  const Schedule &before = *find_by_id(plan.schedules, seam.before.schedule),
                 &kept = *find_by_id(result.plan.schedules, seam.before.schedule);
  EXPECT_EQ(before.travel_speed_mm_s, kept.travel_speed_mm_s);
  EXPECT_EQ(before.status, kept.status);
  EXPECT_FALSE(seam.left_as_they_are.empty());
  EXPECT_FALSE(seam.binding.empty());
  EXPECT_TRUE(seam.other_schedules.empty());
}

TEST(Fit, a_schedule_of_the_plan_that_keeps_all_limits_is_taken_before_new_settings) {
  const Plan plan = demo();
  const std::string place = "TT/S49";
  FitOptions options;
  options.seams = {place};
  const FitResult result = fit(plan, options);
  const FittedSeam& seam = only_seam(result);
  EXPECT_TRUE(seam.is_existing && seam.is_changed && seam.has_settings);
  EXPECT_EQ(seam.after.schedule, "F6S");
  EXPECT_EQ(seam.after.revision, find_by_id(plan.schedules, "F6S")->revision);
  EXPECT_GE(*seam.after.leg_mm, 6);
  // No schedule is new or changed; the seam alone is.
  ASSERT_EQ(result.plan.schedules.size(), plan.schedules.size());
  Plan expected = plan;
  seam_of(expected, "TT", "S49").schedules = {"F6S"};
  EXPECT_EQ(write_plan(result.plan), write_plan(expected));
  EXPECT_TRUE(fails_on(result.plan, place).empty());
  EXPECT_TRUE(std::any_of(result.findings.begin(), result.findings.end(), [](const Finding& finding) {
    return finding.rule == "fit.existing-schedule" && finding.where == "TT/S49";
  }));
}

TEST(Fit, a_schedule_that_a_seam_takes_unchanged_stays_so_though_another_seam_would_improve_it) {
  Plan plan = two_schedules();
  find_by_id(plan.schedules, "F")->preheat_C = 20;  // short, and C has 120
  find_by_id(plan.schedules, "C")->status = "draft";
  for (const bool taken_last : {false, true}) {
    if (taken_last) std::swap(plan.weldments[0].seams[0], plan.weldments[0].seams[2]);
    const Schedule before = *find_by_id(plan.schedules, "C");
    const FitResult result = fit(plan);
    const auto of = [&](const char* id) {
      return *std::find_if(result.seams.begin(), result.seams.end(),
                           [&](const FittedSeam& seam) { return seam.seam == id; });
    };
    ASSERT_TRUE(of("S1").is_existing);
    EXPECT_EQ(of("S1").after.schedule, "C");
    ASSERT_TRUE(of("S3").is_changed);
    EXPECT_NE(of("S3").after.schedule, "C");
    const Schedule& kept = *find_by_id(result.plan.schedules, "C");
    EXPECT_EQ(kept.revision, before.revision);
    EXPECT_EQ(kept.wire_feed_speed_m_min, before.wire_feed_speed_m_min);
    EXPECT_EQ(kept.travel_speed_mm_s, before.travel_speed_mm_s);
  }
}

TEST(Fit, the_whole_demo_has_no_fail_after_a_fit_and_takes_no_longer) {
  const Plan plan = demo();
  const FitResult result = fit(plan);
  for (const FittedSeam& seam : result.seams) {
    EXPECT_TRUE(seam.has_settings) << seam.weldment << "/" << seam.seam;
    EXPECT_TRUE(!seam.is_changed || seam.is_existing || !seam.binding.empty())
        << seam.weldment << "/" << seam.seam;
    if (seam.is_changed && fails_on(plan, seam.weldment + "/" + seam.seam).empty()) {
      EXPECT_LT(seam.after.time_s, seam.before.time_s);
    }
  }
  check_plan(result.plan, "fitted");
  for (const Finding& finding : evaluate(result.plan).findings)
    EXPECT_NE(finding.severity, Severity::fail)
        << finding.where << " " << finding.rule << " " << finding.text();
  // The written plan reads back and says the same.
  const Plan again = parse_plan(write_plan(result.plan), "fitted.weldplan.json");
  EXPECT_EQ(write_plan(again), write_plan(result.plan));
  // Ids of schedules stay unique.
  std::set<std::string> ids;
  for (const Schedule& schedule : result.plan.schedules)
    EXPECT_TRUE(ids.insert(schedule.id).second) << schedule.id;
}

TEST(Fit, no_setting_of_the_lattice_is_better) {
  // Every setting in steps of 0.1, tried one by one through evaluate.
  const Plan plan = limited_tee();
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  const FittedSeam& seam = only_seam(result);
  ASSERT_TRUE(seam.has_settings);
  double least = std::numeric_limits<double>::infinity();
  SeamAlone alone = seam_alone(plan, "X/S1", "seam");
  Schedule& schedule = *find_by_id(alone.plan.schedules, "F");
  const double current_planned = evaluate(alone.plan).passes.front().current_A;
  for (int feed = 60; feed <= 120; feed += 2)
    for (int speed = 40; speed <= 120; ++speed) {
      schedule.wire_feed_speed_m_min = feed / 10.0;
      schedule.travel_speed_mm_s = speed / 10.0;
      const double current = evaluate(alone.plan).passes.front().current_A;
      schedule.arc_voltage_V =
          std::round(std::clamp(29 + 0.05 * (current - current_planned), 26.0, 32.0) * 10) / 10;
      if (fails_on(alone.plan, "X/S1").empty()) least = std::min(least, arc_time_s(alone.plan, "X", "S1"));
    }
  ASSERT_LT(least, std::numeric_limits<double>::infinity());
  EXPECT_LE(arc_time_s(result.plan, "X", "S1"), least * (1 + 1e-12));
  EXPECT_TRUE(fails_on(result.plan, "X/S1").empty());
}

TEST(Fit, each_objective_is_best_at_its_own_measure) {
  const Plan plan = limited_tee();
  FitOptions options;
  options.seams = {"X/S1"};
  std::vector<FitSettings> best;
  for (const FitObjective objective : {FitObjective::time, FitObjective::heat, FitObjective::cost}) {
    options.objective = objective;
    const FitResult result = fit(plan, options);
    ASSERT_TRUE(only_seam(result).has_settings);
    best.push_back(only_seam(result).after);
  }
  for (const FitSettings& other : best) {
    EXPECT_LE(best[0].time_s, other.time_s * (1 + 2e-3));
    EXPECT_LE(best[1].heat_kJ, other.heat_kJ * (1 + 2e-3));
    EXPECT_LE(best[2].cost, other.cost * (1 + 2e-3));
  }
  EXPECT_LT(best[1].heat_kJ, best[0].heat_kJ);
}

TEST(Fit, a_leg_too_large_for_one_pass_gets_more_passes) {
  Plan plan = limited_tee();
  seam_of(plan, "X", "S1").leg_mm = 12;
  find_by_id(plan.schedules, "F")->limits->heat_input_kJ_mm = Interval{0.5, 1.2};
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  const FittedSeam& seam = only_seam(result);
  ASSERT_TRUE(seam.has_settings);
  EXPECT_GT(seam.after.passes, 1);
  EXPECT_GE(*seam.after.leg_mm, 12 * (1 - 1e-9));
  EXPECT_EQ(seam_of(const_cast<Plan&>(result.plan), "X", "S1").schedules.size(),
            static_cast<std::size_t>(seam.after.passes));
  EXPECT_TRUE(fails_on(result.plan, "X/S1").empty());
}

TEST(Fit, a_draft_that_no_other_seam_uses_is_changed_in_its_place) {
  Plan plan = limited_tee();
  Schedule own = *find_by_id(plan.schedules, "F");
  own.id = "OWN";
  own.status = "draft";
  plan.schedules.push_back(own);
  seam_of(plan, "X", "S1").schedules = {"OWN"};
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  ASSERT_TRUE(only_seam(result).is_changed);
  EXPECT_EQ(only_seam(result).after.schedule, "OWN");
  EXPECT_EQ(only_seam(result).after.revision, own.revision + 1);
  EXPECT_EQ(result.plan.schedules.size(), plan.schedules.size());
}

/// A fit changes one schedule of a seam, the one that lays most; root, fill and cap have one each. So the
/// next fit finds the next one, and after as many fits as a seam has schedules nothing is left to change. A
/// seam that first took an unchanged schedule of the plan has one fit more.
TEST(Fit, repeated_it_improves_each_schedule_of_a_seam_once_and_then_changes_nothing) {
  Plan plan = demo();
  std::size_t most_schedules = 0, on_one_schedule = 0;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams) {
      const std::size_t schedules =
          std::set<std::string>(seam.schedules.begin(), seam.schedules.end()).size();
      most_schedules = std::max(most_schedules, schedules);
      on_one_schedule += schedules == 1;
    }
  ASSERT_GT(most_schedules, 2u);
  ASSERT_GT(on_one_schedule, 100u);
  std::map<std::string, std::set<std::string>>
      fitted;  // seam -> schedules, as they were called before any fit
  std::set<std::string> took_existing;
  const auto first_name = [](const std::string& id) { return id.substr(0, id.rfind("-r")); };
  for (std::size_t round = 0; round <= most_schedules; ++round) {
    const FitResult result = fit(plan);
    for (const FittedSeam& seam : result.seams) {
      if (!seam.is_changed) continue;
      const std::string place = seam.weldment + "/" + seam.seam;
      if (seam.is_existing) {
        EXPECT_EQ(round, 0u) << place;
        took_existing.insert(place);
        continue;
      }
      EXPECT_TRUE(fitted[place].insert(first_name(seam.after.schedule)).second)
          << place << " " << seam.after.schedule;
      if (round > 0) {
        EXPECT_LT(seam.after.time_s, seam.before.time_s) << place;
        const std::vector<std::string>& schedules = seam_of(plan, seam.weldment, seam.seam).schedules;
        EXPECT_GT(
            std::set<std::string>(schedules.begin(), schedules.end()).size() + took_existing.count(place),
            round)
            << place;
      }
      EXPECT_LT(round, most_schedules) << place;
    }
    EXPECT_TRUE(!any_failed(evaluate(result.plan).findings));
    plan = result.plan;
  }
  EXPECT_EQ(took_existing, std::set<std::string>{"TT/S49"});
}

TEST(Fit, any_number_of_threads_gives_the_same_plan) {
  const Plan plan = demo();
  ThreadPool one(1), three(3);
  EXPECT_EQ(write_plan(fit(plan, {}, one).plan), write_plan(fit(plan, {}, three).plan));
}

TEST(Fit, a_seam_that_is_not_there_is_refused) {
  FitOptions options;
  options.seams = {"no such"};
  EXPECT_THROW(fit(demo(), options), InputError);
}
