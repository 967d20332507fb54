// One statement of a schedule's use, for the rule that judges a seam and for the choice of a schedule.
#include <gtest/gtest.h>

#include <algorithm>

#include "exchange/drawing/fitting_schedule.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/rules/use_of_schedule.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

namespace {

/// The demo's first seam, alone in its plan, and the schedule that welds it with a stated use.
struct Used {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  Used() {
    plan.weldments.resize(1);
    plan.weldments[0].seams.resize(1);
    plan.weldments[0].order.clear();
    plan.weldments[0].features.clear();
    plan.cell.reset();
    seam().after.clear();
    ScheduleUse& use = schedule().use.emplace();
    use.positions = {"PB"};
    use.thickness_mm = Interval{5, 20};
    use.gap_mm = Interval{0, 1};
    use.leg_mm = Interval{3, 6};
    seam().position = "PB";
    seam().thickness_mm = {8, 12};
    seam().leg_mm = 5;
    seam().throat_mm.reset();
    seam().gap_mm = 0;
    seam().gap_max_mm.reset();
    std::erase_if(plan.schedules, [&](const Schedule& each) { return each.id != seam().schedules.front(); });
  }
  Seam& seam() { return plan.weldments[0].seams[0]; }
  Schedule& schedule() { return *find_by_id(plan.schedules, seam().schedules.front()); }

  /// What the rule finds against the use, its sides left off.
  std::vector<std::string> found() {
    std::vector<std::string> rules;
    for (const Finding& finding : evaluate(plan).findings)
      if (finding.rule.starts_with("schedule.use.")) rules.push_back(finding.rule);
    std::sort(rules.begin(), rules.end());
    rules.erase(std::unique(rules.begin(), rules.end()), rules.end());
    return rules;
  }
  /// Rule and choice agree.
  void expect(const std::vector<std::string>& rules) {
    EXPECT_EQ(found(), rules);
    EXPECT_EQ(use_holds(*schedule().use, seam()), rules.empty());
    EXPECT_EQ(fitting_schedule(plan, seam()) != nullptr, rules.empty());
  }
};

}  // namespace

TEST(UseOfSchedule, what_lies_inside_the_use_is_found_by_neither) {
  Used used;
  used.expect({});
  used.seam().position.clear();  // what the seam doesn't say isn't compared
  used.expect({});
}

TEST(UseOfSchedule, position_thickness_and_leg_are_judged_and_chosen_alike) {
  Used used;
  used.seam().position = "PF";
  used.seam().thickness_mm = {8, 25};
  used.seam().leg_mm = 7;
  used.expect({"schedule.use.leg.high", "schedule.use.position", "schedule.use.thickness.high"});
}

TEST(UseOfSchedule, the_largest_gap_that_is_planned_for_counts) {
  Used used;
  used.seam().gap_mm = 0.5;
  used.expect({});
  used.seam().gap_max_mm = 1.5;
  used.expect({"schedule.use.gap.high"});
}

TEST(UseOfSchedule, a_throat_counts_by_the_leg_that_it_has) {
  Used used;
  used.seam().leg_mm.reset();
  used.seam().throat_mm = 4.243;  // of 6 mm, rounded as drawings are
  EXPECT_DOUBLE_EQ(*drawn_leg_mm(used.seam()), 6);
  used.expect({});
  used.seam().throat_mm = 4.5;  // of 6.36 mm
  used.expect({"schedule.use.leg.high"});
}

TEST(UseOfSchedule, no_seam_of_the_demo_lies_outside_of_its_schedules) {
  const Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  int by_throat = 0;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (const std::string& id : seam.schedules) {
        const auto& use = find_by_id(plan.schedules, id)->use;
        if (!use) continue;
        EXPECT_TRUE(use_holds(*use, seam)) << weldment.id << "/" << seam.id << " with " << id;
        by_throat += use->leg_mm && !seam.leg_mm && seam.throat_mm;
      }
  EXPECT_GT(by_throat, 0);
}
