// Plans compared and joined by the ids of what they hold.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "plan/difference/plan_difference.hpp"
#include "plan/fields/plan_file.hpp"

namespace seamtakt {
namespace {

Plan base_plan() {
  return parse_plan(R"({"format": "weldplan", "version": 1, "title": "t",
    "base_metals": [{"id": "S355", "composition_pct": {"C": 0.17}}],
    "wires": [{"id": "W", "diameter_mm": 1.2, "density_g_cm3": 7.85, "alpha_mm_s_A": 0.3, "beta_per_s_A2": 5e-5,
               "deposition_efficiency": 0.96}],
    "schedules": [{"id": "F6", "process": "135", "wire": "W", "wire_feed_speed_m_min": 9.5, "arc_voltage_V": 29,
                   "travel_speed_mm_s": 8, "contact_tip_distance_mm": 18}],
    "weldments": [{"id": "BD", "seams": [
      {"id": "S1", "joint": "tee", "thickness_mm": [8, 8], "base_metals": ["S355", "S355"], "leg_mm": 6,
       "schedules": ["F6"], "path_mm": [[0, 0, 0], [9, 0, 0]]},
      {"id": "S2", "joint": "tee", "thickness_mm": [8, 8], "base_metals": ["S355", "S355"], "leg_mm": 6,
       "schedules": ["F6"], "path_mm": [[0, 5, 0], [9, 5, 0]]}]}]})",
                    "base");
}

Seam seam_named(const char* id) {
  Seam seam = base_plan().weldments[0].seams[0];
  seam.id = id;
  return seam;
}

TEST(PlanDifferences, EqualPlansHaveNone) {
  EXPECT_TRUE(plan_differences(base_plan(), base_plan()).empty());
  Plan turned = base_plan();
  std::swap(turned.weldments[0].seams[0], turned.weldments[0].seams[1]);
  EXPECT_TRUE(plan_differences(base_plan(), turned).empty()) << "another order alone is none";
}

TEST(PlanDifferences, AreNamedByKeysAndIds) {
  Plan after = base_plan();
  after.weldments[0].seams[1].leg_mm = 5;
  after.weldments[0].seams[0].position = "PB";
  after.weldments[0].seams.push_back(seam_named("S3"));
  after.title = "";
  const auto found = plan_differences(base_plan(), after);
  ASSERT_EQ(found.size(), 4u);
  EXPECT_EQ(found[0].where, "title");
  EXPECT_EQ(found[0].before, "\"t\"");
  EXPECT_EQ(found[1].where, "weldments/BD/seams/S1/position");
  EXPECT_EQ(found[1].kind, PlanDifference::Kind::added);
  EXPECT_EQ(found[2].where, "weldments/BD/seams/S2/leg_mm");
  EXPECT_EQ(found[2].before, "6");
  EXPECT_EQ(found[2].after, "5");
  EXPECT_EQ(found[3].where, "weldments/BD/seams/S3");
}

TEST(PlanMerge, ChangesOfBothAreKept) {
  Plan first = base_plan(), second = base_plan();
  first.weldments[0].seams[0].leg_mm = 5;
  first.weldments[0].seams.insert(first.weldments[0].seams.begin() + 1, seam_named("S1a"));
  first.accepted.push_back({"r", "BD/S1", "me", "2026-01-01", "why", {}});
  second.weldments[0].seams[0].position = "PB";
  second.weldments[0].seams.push_back(seam_named("S3"));
  second.accepted.push_back({"q", "BD/S2", "you", "2026-01-02", "why", {}});
  const MergedPlan merged = merge_plans(base_plan(), first, second);
  EXPECT_TRUE(merged.conflicts.empty());
  const auto& seams = merged.plan.weldments[0].seams;
  std::vector<std::string> ids;
  for (const Seam& seam : seams) ids.push_back(seam.id);
  EXPECT_EQ(ids, (std::vector<std::string>{"S1", "S1a", "S2", "S3"}));
  EXPECT_EQ(seams[0].leg_mm, 5);
  EXPECT_EQ(seams[0].position, "PB");
  EXPECT_EQ(merged.plan.accepted.size(), 2u);
}

TEST(PlanMerge, WhatOneRemovedAndTheOtherLeftIsGone) {
  Plan second = base_plan();
  second.weldments[0].seams.erase(second.weldments[0].seams.begin());
  const MergedPlan merged = merge_plans(base_plan(), base_plan(), second);
  EXPECT_TRUE(merged.conflicts.empty());
  ASSERT_EQ(merged.plan.weldments[0].seams.size(), 1u);
  EXPECT_EQ(merged.plan.weldments[0].seams[0].id, "S2");
}

TEST(PlanMerge, AValueThatBothChangedIsAConflict) {
  Plan first = base_plan(), second = base_plan();
  first.weldments[0].seams[0].leg_mm = 5;
  second.weldments[0].seams[0].leg_mm = 7;
  second.weldments[0].seams[1].leg_mm = 4;
  const MergedPlan open = merge_plans(base_plan(), first, second);
  ASSERT_EQ(open.conflicts.size(), 1u);
  EXPECT_EQ(open.conflicts[0].where, "weldments/BD/seams/S1/leg_mm");
  EXPECT_EQ(open.conflicts[0].base + open.conflicts[0].first + open.conflicts[0].second, "657");
  EXPECT_EQ(write_plan(open.plan), write_plan(base_plan()));
  const MergedPlan chosen = merge_plans(base_plan(), first, second, MergeChoice::second);
  EXPECT_EQ(chosen.plan.weldments[0].seams[0].leg_mm, 7);
  EXPECT_EQ(chosen.plan.weldments[0].seams[1].leg_mm, 4);
}

TEST(PlanMerge, RemovingWhatTheOtherChangedIsAConflict) {
  Plan first = base_plan(), second = base_plan();
  first.weldments[0].seams.pop_back();
  second.weldments[0].seams[1].leg_mm = 4;
  const MergedPlan merged = merge_plans(base_plan(), first, second);
  ASSERT_EQ(merged.conflicts.size(), 1u);
  EXPECT_EQ(merged.conflicts[0].where, "weldments/BD/seams/S2");
}

TEST(PlanMerge, ChangesThatDoNotFitTogetherAreRefused) {
  Plan first = base_plan(), second = base_plan();
  first.weldments[0].seams.clear();
  first.schedules.clear();
  second.weldments[0].seams.push_back(seam_named("S3"));  // names the schedule that the other removed
  EXPECT_THROW(merge_plans(base_plan(), first, second), InputError);
}

}  // namespace
}  // namespace seamtakt
