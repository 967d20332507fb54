// The limits that a fit keeps, and what it says where they leave no settings.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "fit_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// A tee as `limited_tee`, drawn with a leg of 6, that needs more preheat than it has.
Plan cold_tee(double hydrogen_ml_100g) {
  Plan plan = limited_tee();
  find_by_id(plan.schedules, "F")->preheat_C = 20;
  find_by_id(plan.schedules, "F")->limits->heat_input_kJ_mm = Interval{0.5, 4};
  find_by_id(plan.schedules, "F")->limits->travel_speed_mm_s = Interval{2, 12};
  find_by_id(plan.wires, "W")->hydrogen_ml_100g = hydrogen_ml_100g;
  return plan;
}

}  // namespace

TEST(Fit, missing_preheat_is_not_cured_by_a_larger_fillet) {
  // 6 mm drawn is a throat of 4.243: at most 1.061 more, a leg of 7.5.
  const double largest_leg = 1.25 * 6;
  for (const double hydrogen : {5.0, 7.0, 12.0}) {
    const Plan plan = cold_tee(hydrogen);
    FitOptions options;
    options.seams = {"X/S1"};
    const FitResult result = fit(plan, options);
    const FittedSeam& seam = only_seam(result);
    ASSERT_TRUE(seam.has_settings) << hydrogen;
    EXPECT_LE(*seam.after.leg_mm, largest_leg * (1 + 1e-9)) << hydrogen;
    EXPECT_TRUE(fails_on(result.plan, "X/S1").empty());
    const auto needed = [](const Plan& of) { return *evaluate(of).passes.front().preheat_needed_C; };
    EXPECT_LE(needed(result.plan), std::max(needed(plan), 25.0) + 1e-9) << "more than the planned settings";
  }
}

TEST(Fit, the_largest_fillet_is_the_least_of_what_plan_standard_and_practice_allow) {
  const auto largest_leg = [](const Plan& plan) {
    FitOptions options;
    options.seams = {"X/S1"};
    const FitResult result = fit(plan, options);
    double most = 0;
    for (const FitLimit& limit : result.seams.front().conflicts)
      if (limit.is_upper && limit.unit == "mm") most = *limit.bound;
    return std::pair(most, result.seams.front().has_settings);
  };
  Plan plan = limited_tee();
  Schedule& schedule = *find_by_id(plan.schedules, "F");
  // So slow that every fillet is too large: the limit that conflicts with it is named.
  schedule.limits->travel_speed_mm_s = Interval{2, 2.2};
  schedule.limits->heat_input_kJ_mm.reset();
  const double throat = 6 / std::sqrt(2.0);
  EXPECT_NEAR(largest_leg(plan).first, 1.25 * throat, 1e-9);  // common practice
  Seam& seam = seam_of(plan, "X", "S1");
  seam.leg_max_mm = 6.8;
  EXPECT_NEAR(largest_leg(plan).first, 6.8, 1e-12);
  seam.throat_max_mm = 4.6;
  EXPECT_NEAR(largest_leg(plan).first, 4.6, 1e-12);
  EXPECT_FALSE(largest_leg(plan).second);
  seam.leg_max_mm.reset();
  seam.throat_max_mm.reset();
  // ISO 5817, 5214, level B: 1 + 0.15a, at most 3 mm; of a throat of 14 mm that is less than a quarter.
  seam.leg_mm = 14 * std::sqrt(2.0);
  seam.quality = "B";
  schedule.limits->travel_speed_mm_s = Interval{0.2, 0.22};
  seam.schedules = {"F"};
  EXPECT_NEAR(largest_leg(plan).first, 14 + 3, 1e-9);
}

TEST(Fit, an_estimated_hardness_beyond_its_limit_keeps_no_seam_from_its_settings) {
  Plan plan = limited_tee();
  FitOptions options;
  options.seams = {"X/S1"};
  ASSERT_TRUE(only_seam(fit(plan, options)).has_settings);
  // Softer than any heat-affected zone: each point warns.
  find_by_id(plan.schedules, "F")->limits->hardness_HV = Interval{{}, 50};
  const FittedSeam seam = only_seam(fit(plan, options));
  EXPECT_TRUE(seam.has_settings);
  EXPECT_TRUE(seam.conflicts.empty());
}

TEST(Fit, limits_that_conflict_are_named_and_none_of_them_could_be_left_out) {
  Plan plan = limited_tee();
  Schedule& schedule = *find_by_id(plan.schedules, "F");
  // Little heat, yet a hardness that only slow cooling gives; the fillet leaves room for more heat.
  seam_of(plan, "X", "S1").leg_mm = 7.5;
  schedule.limits->heat_input_kJ_mm = Interval{0.3, 0.6};
  schedule.limits->cooling_time_s = Interval{12, 40};
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  const FittedSeam& seam = only_seam(result);
  EXPECT_FALSE(seam.has_settings);
  ASSERT_EQ(seam.conflicts.size(), 2u);
  std::set<std::string> rules;
  for (const FitLimit& limit : seam.conflicts) rules.insert(limit.rule);
  EXPECT_EQ(rules, (std::set<std::string>{"limit.heat-input.high", "limit.cooling-time.low"}));
  EXPECT_EQ(write_plan(result.plan), write_plan(plan));
  // The heat input that the finding asks for makes room, a little less doesn't.
  std::optional<double> needed;
  for (const FitLimit& limit : seam.conflicts)
    if (limit.rule == "limit.heat-input.high") needed = limit.needed;
  ASSERT_TRUE(needed);
  schedule.limits->heat_input_kJ_mm->upper = *needed * 1.001;
  EXPECT_TRUE(only_seam(fit(plan, options)).has_settings);
  schedule.limits->heat_input_kJ_mm->upper = *needed * 0.97;
  EXPECT_FALSE(only_seam(fit(plan, options)).has_settings);
}

TEST(Fit, what_no_setting_can_mend_is_named_alone) {
  Plan plan = limited_tee();
  find_by_id(plan.schedules, "F")->use = ScheduleUse{};
  find_by_id(plan.schedules, "F")->use->positions = {"PC"};
  seam_of(plan, "X", "S1").position = "PB";
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  const FittedSeam& seam = only_seam(result);
  EXPECT_FALSE(seam.has_settings);
  ASSERT_EQ(seam.conflicts.size(), 1u);
  EXPECT_EQ(seam.conflicts[0].rule, "schedule.use.position");
  EXPECT_FALSE(seam.conflicts[0].bound);
}

TEST(Fit, a_guarded_decision_leaves_room_for_the_uncertainty) {
  Plan plan = limited_tee();
  plan.measuring->decision = "guarded";
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  ASSERT_TRUE(only_seam(result).has_settings);
  for (const Finding& finding : evaluate(result.plan).findings)
    if (finding.where.rfind("X/S1", 0) == 0) {
      EXPECT_EQ(finding.rule.find("guard-band"), std::string::npos) << finding.text();
    }
}
