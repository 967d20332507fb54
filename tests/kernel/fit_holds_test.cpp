// What a fit may not change, and how far it stays inside the limits.
#include <gtest/gtest.h>

#include "fit_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// Too fast for the leg: the fit has to change something.
Plan fast_tee() {
  Plan plan = limited_tee();
  plan.schedules.front().travel_speed_mm_s = 11.5;
  return plan;
}

FittedSeam fitted(const Plan& plan, const FitOptions& options) {
  const FitResult result = fit(plan, options);
  EXPECT_FALSE(result.seams.empty());
  return result.seams.front();
}

}  // namespace

TEST(FitHolds, names_and_holds_belong_to_each_other) {
  for (const FitHold hold : fit_holds) EXPECT_EQ(fit_hold_of(to_string(hold)), hold);
  EXPECT_FALSE(fit_hold_of("wire"));
}

TEST(FitHolds, what_is_held_stays_as_planned_though_the_rest_moves) {
  const Plan plan = fast_tee();
  const FittedSeam free = fitted(plan, {});
  ASSERT_TRUE(free.has_settings && free.is_changed);
  EXPECT_NE(free.after.wire_feed_speed_m_min, free.before.wire_feed_speed_m_min);
  FitOptions options;
  options.holds = {FitHold::wire_feed, FitHold::voltage, FitHold::passes};
  const FittedSeam held = fitted(plan, options);
  ASSERT_TRUE(held.has_settings && held.is_changed);
  EXPECT_EQ(held.after.wire_feed_speed_m_min, held.before.wire_feed_speed_m_min);
  EXPECT_EQ(held.after.arc_voltage_V, held.before.arc_voltage_V);
  EXPECT_EQ(held.after.passes, held.before.passes);
  EXPECT_LT(held.after.travel_speed_mm_s, held.before.travel_speed_mm_s);
  EXPECT_GE(held.after.time_s, free.after.time_s * (1 - 1e-9)) << "no better than without holds";
}

TEST(FitHolds, a_value_off_the_panels_steps_is_held_to_the_last_digit) {
  Plan plan = fast_tee();
  plan.schedules.front().wire_feed_speed_m_min = 9.137;
  FitOptions options;
  options.holds = {FitHold::wire_feed};
  const FittedSeam held = fitted(plan, options);
  ASSERT_TRUE(held.has_settings && held.is_changed);
  EXPECT_EQ(held.after.wire_feed_speed_m_min, 9.137);
}

TEST(FitHolds, what_can_not_be_done_with_the_holds_names_the_limits) {
  const Plan plan = fast_tee();
  FitOptions options;
  options.holds = {FitHold::wire_feed, FitHold::travel_speed, FitHold::passes};
  const FittedSeam held = fitted(plan, options);
  EXPECT_FALSE(held.has_settings);
  ASSERT_FALSE(held.conflicts.empty());
  EXPECT_EQ(held.conflicts.front().key.substr(0, 3), "leg");
}

TEST(FitMargin, the_settings_keep_it_to_every_limit_that_they_move) {
  const Plan plan = fast_tee();
  FitOptions options;
  options.margin_pct = 5;
  const FittedSeam seam = fitted(plan, options);
  ASSERT_TRUE(seam.has_settings && seam.is_changed);
  const FitSettings& after = seam.after;
  EXPECT_GE(after.wire_feed_speed_m_min, 6 * 1.05);
  EXPECT_LE(after.wire_feed_speed_m_min, 12 * 0.95);
  EXPECT_GE(after.travel_speed_mm_s, 4 * 1.05);
  EXPECT_LE(after.travel_speed_mm_s, 12 * 0.95);
  EXPECT_GE(after.arc_voltage_V, 26 * 1.05 - 1e-9);
  EXPECT_LE(after.arc_voltage_V, 32 * 0.95 + 1e-9);
  EXPECT_GE(after.heat_input_kJ_mm, 0.5 * 1.05);
  EXPECT_LE(after.heat_input_kJ_mm, 1.5 * 0.95);
  const double leg_mm = *plan.weldments[0].seams[0].leg_mm;
  EXPECT_GE(*after.leg_mm, leg_mm * 1.05 * (1 - 1e-3));
  EXPECT_GT(after.time_s, fitted(plan, {}).after.time_s) << "the room costs time";
}

TEST(FitMargin, settings_inside_the_limits_by_less_are_changed) {
  // As fast as the leg allows: nothing is to be gained without a margin.
  const Plan best = fit(fast_tee()).plan;
  EXPECT_FALSE(fitted(best, {}).is_changed);
  FitOptions options;
  options.margin_pct = 3;
  EXPECT_TRUE(fitted(best, options).is_changed);
}

TEST(FitMargin, a_conflict_says_how_far_the_limit_has_to_move_with_the_margin_inside) {
  Plan plan = fast_tee();
  plan.schedules.front().limits->heat_input_kJ_mm = Interval{{}, 0.4};
  FitOptions options;
  options.holds = {FitHold::passes};  // more of them would need less heat each
  const FittedSeam without = fitted(plan, options);
  options.margin_pct = 10;
  const FittedSeam with = fitted(plan, options);
  const auto needed = [](const FittedSeam& seam) {
    for (const FitLimit& limit : seam.conflicts)
      if (limit.key == "heat_input_kJ_mm" && limit.is_upper && limit.needed) return *limit.needed;
    ADD_FAILURE() << "no conflict with the heat input";
    return 0.0;
  };
  ASSERT_GT(needed(without), 0.4);
  EXPECT_GT(needed(with), needed(without) / 0.9 * (1 - 0.02));
}

TEST(TakeOver, only_the_seams_that_are_asked_for_change) {
  const Plan plan = demo();
  FitOptions options;
  options.seams = {"TT/S49", "TT/S28", "BD/S01"};
  options.objective = FitObjective::heat;
  const FitResult result = fit(plan, options);
  EXPECT_EQ(write_plan(take_over(plan, {})), write_plan(plan));
  EXPECT_EQ(write_plan(take_over(plan, result.seams)), write_plan(result.plan));
  const auto is_changed = [](const FittedSeam& seam) { return seam.is_changed; };
  const auto one = std::find_if(result.seams.begin(), result.seams.end(), is_changed);
  ASSERT_NE(one, result.seams.end());
  Plan taken = take_over(plan, {*one});
  seam_of(taken, one->weldment, one->seam).schedules =
      find_by_id(find_by_id(plan.weldments, one->weldment)->seams, one->seam)->schedules;
  for (std::size_t w = 0; w < plan.weldments.size(); ++w)
    for (std::size_t s = 0; s < plan.weldments[w].seams.size(); ++s)
      EXPECT_EQ(taken.weldments[w].seams[s].schedules, plan.weldments[w].seams[s].schedules);
}
