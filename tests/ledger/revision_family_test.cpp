#include <gtest/gtest.h>

#include "records/keep/effective_revision.hpp"

namespace seamtakt {
namespace {

Schedule revision_of_F5(const char* id, int revision, const char* status, const char* from) {
  Schedule schedule;
  schedule.id = id;
  schedule.revision = revision;
  schedule.revision_of = std::string(id) == "F5" ? "" : "F5";
  schedule.status = status;
  schedule.effective_from = from;
  return schedule;
}

TEST(RevisionFamily, the_earlier_revision_holds_until_the_named_one_comes_into_force) {
  Plan plan;
  plan.schedules = {revision_of_F5("F5", 1, "approved", "2026-01-12"),
                    revision_of_F5("F5-r2", 2, "approved", "2026-04-01"),
                    revision_of_F5("F5-r3", 3, "draft", "2026-06-01")};
  const auto in_force = [&](const char* id, const char* day) {
    const Schedule* found = effective_revision(plan, {}, id, day);
    return found != nullptr ? found->id : std::string();
  };
  EXPECT_EQ(in_force("F5-r2", "2026-03-31"), "F5");
  EXPECT_EQ(in_force("F5-r2", "2026-04-01"), "F5-r2");
  EXPECT_EQ(in_force("F5-r3", "2026-05-01"), "F5-r2") << "the latest that was approved by then";
  EXPECT_EQ(in_force("F5-r3", "2026-06-01"), "F5-r3") << "the seam names it";
  EXPECT_EQ(in_force("F5", "2026-05-01"), "F5") << "a seam is welded by the one that it names";
  EXPECT_EQ(in_force("F5-r2", "2026-01-01"), "");
}

TEST(RevisionFamily, the_plan_of_a_day_has_the_earlier_content_under_the_named_id) {
  Plan plan;
  plan.schedules = {revision_of_F5("F5", 1, "approved", "2026-01-12"),
                    revision_of_F5("F5-r2", 2, "approved", "2026-04-01")};
  plan.schedules[0].travel_speed_mm_s = 8;
  plan.schedules[1].travel_speed_mm_s = 9;
  const Plan then = plan_in_force(plan, {}, "2026-03-02");
  EXPECT_EQ(then.schedules[1].id, "F5-r2");
  EXPECT_EQ(then.schedules[1].revision, 1);
  EXPECT_EQ(then.schedules[1].travel_speed_mm_s, 8);
  EXPECT_EQ(plan_in_force(plan, {}, "2026-04-02").schedules[1].travel_speed_mm_s, 9);
}

}  // namespace
}  // namespace seamtakt
