#include "plan/limited_quantities.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

TEST(LimitedQuantities, every_limit_of_a_schedule_has_one_row_of_the_table) {
  // The members of ScheduleLimits before its file_keys, which are all intervals.
  constexpr std::size_t members = offsetof(ScheduleLimits, file_keys) / sizeof(std::optional<Interval>);
  EXPECT_EQ(std::size(limited_quantities), members);
  std::set<std::string> keys, rules;
  for (const LimitedQuantity& each : limited_quantities) {
    keys.insert(each.key);
    rules.insert(each.pass_rule);
    rules.insert(each.record_rule);
    EXPECT_EQ(&limited_quantity(each.limit), &each) << each.key;
    EXPECT_EQ(limited_quantity(each.key), &each) << each.key;
    EXPECT_TRUE(!each.in_statistics || each.recorded != Recorded::nothing) << each.key;
    EXPECT_TRUE(each.in_window == Judged::always || each.has_plain_rule()) << each.key;
  }
  EXPECT_EQ(keys.size(), members);
  EXPECT_EQ(rules.size(), 2 * members);
  EXPECT_EQ(limited_quantity("none"), nullptr);
}

TEST(LimitedQuantities, each_with_a_plain_rule_is_judged_on_what_it_limits) {
  const Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  for (const LimitedQuantity& each : limited_quantities) {
    if (!each.has_plain_rule()) continue;
    Plan limited = plan;
    for (Schedule& schedule : limited.schedules) schedule.limits.emplace().*each.limit = Interval{{}, -1e6};
    const Evaluation evaluation = evaluate(limited);
    std::size_t found = 0;
    for (const Finding& finding : evaluation.findings)
      if (finding.rule == std::string(each.pass_rule) + ".high") {
        ++found;
        EXPECT_EQ(finding.unit, each.unit);
        EXPECT_EQ(finding.text().find(each.label_in_plan().english()), 0u) << finding.text();
      }
    EXPECT_EQ(found, evaluation.passes.size()) << each.key;
  }
}
