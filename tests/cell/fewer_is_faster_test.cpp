// A list schedule may be shorter with fewer robots: it says so, and why.
#include <gtest/gtest.h>

#include "cell/timeline/fewer_is_faster.hpp"
#include "cell/timeline/without_robot.hpp"
#include "cell_plan.hpp"

namespace seamtakt::test {
namespace {

std::optional<Finding> without(const Plan& plan, const std::string& robot, std::size_t by_hand = 0) {
  const PlanWithoutRobot fewer = without_robot(plan, robot);
  return faster_with_fewer(cycle_of_plan(plan), cycle_of_plan(fewer.plan), robot, by_hand);
}

/// Four seams near R1, which welds them; R2 comes from 30 m away.
Plan far_robot() {
  Plan plan = plain_plan();
  plan.cell->robots.push_back(robot_at("R2", {30000, 0, 0}));
  for (int i = 0; i < 4; ++i)
    plan.weldments[0].seams.push_back(
        seam_along("S" + std::to_string(i), {{100.0 * i, 0, 0}, {100.0 * i + 80, 0, 0}}));
  for (Seam& seam : plan.weldments[0].seams) seam.robots = {"R1"};
  return plan;
}

TEST(FewerIsFaster, TheOrderSuitsFewerRobots) {
  Plan plan = far_robot();
  plan.weldments[0].seams.resize(1);
  plan.weldments[0].seams[0].robots = {"R2", "R1"};
  const std::optional<Finding> found = without(plan, "R2");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->rule, "cell.fewer-is-faster");
  EXPECT_EQ(found->severity, Severity::note);
  EXPECT_EQ(found->where, "W");
  EXPECT_LT(*found->value, *found->limit);
  EXPECT_NE(found->text().find("the order given suits fewer robots better"), std::string::npos);
}

TEST(FewerIsFaster, TheRobotsWaitLessForATurn) {
  // R2 has to be home, 30 m away, before the positioner turns.
  Plan plan = far_robot();
  plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  plan.cell->orientation_change_s = 3;
  auto& seams = plan.weldments[0].seams;
  for (int i = 0; i < 4; ++i) seams[i].orientation = i % 2 ? "down" : "up";
  seams[1].robots = {"R2", "R1"};
  const std::optional<Finding> found = without(plan, "R2");
  ASSERT_TRUE(found);
  EXPECT_NE(found->text().find("the robots then wait"), std::string::npos) << found->text();
}

TEST(FewerIsFaster, HandWorkIsTheReasonWhereThereIsSome) {
  Plan plan = far_robot();
  plan.weldments[0].seams[3].robots = {"R2", "R1"};
  const std::optional<Finding> found = without(plan, "R2", 1);
  ASSERT_TRUE(found);
  EXPECT_NE(found->text().find("1 of its seams is welded by hand instead."), std::string::npos)
      << found->text();
}

TEST(FewerIsFaster, SeamsThatNobodyWeldsAreNoReason) {
  Plan plan = far_robot();
  plan.weldments[0].seams[3].robots = {"R2"};
  const PlanWithoutRobot fewer = without_robot(plan, "R2");
  EXPECT_LT(cycle_of_plan(fewer.plan).cycle_time_s, cycle_of_plan(plan).cycle_time_s);
  EXPECT_FALSE(without(plan, "R2"));
}

TEST(FewerIsFaster, ALongerOrAnEqualCycleIsNone) {
  EXPECT_FALSE(without(far_robot(), "R2"));  // R2 has nothing to do
  Plan plan = far_robot();
  plan.cell->robots[1] = robot_at("R2", {400, 0, 0});
  plan.weldments[0].seams[3].robots = {"R2", "R1"};
  EXPECT_FALSE(without(plan, "R2"));
}

TEST(FewerIsFaster, ALineNamesHandWorkThenCyclesThenOvertaking) {
  const auto text = [](const Findings& cycles, const std::vector<std::string>& by_hand) {
    return more_with_fewer(2, 3, "R2", cycles, by_hand)->text();
  };
  Finding shorter;
  shorter.rule = "cell.fewer-is-faster";
  shorter.where = "TT";
  EXPECT_NE(text({shorter}, {"TT", "BD"}).find("2 seams are welded by hand"), std::string::npos);
  EXPECT_NE(text({shorter}, {}).find("cycles of TT are shorter"), std::string::npos);
  EXPECT_NE(text({}, {}).find("overtake"), std::string::npos);
  EXPECT_FALSE(more_with_fewer(2, 2, "R2", {}, {}));
  EXPECT_FALSE(more_with_fewer(2, 1.5, "R2", {shorter}, {"TT"}));
}

}  // namespace
}  // namespace seamtakt::test
