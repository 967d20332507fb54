// A weldment's bow against figures worked out by hand with D = 0.005*A*L^2*d/I (blodgett, recalled).
#include "plan/bow/weldment_bow.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// A weldment of one seam in one pass of 20 mm2, with a section of 7.2e6 mm4 about both axes.
Weldment member(std::vector<Point_mm> path) {
  Weldment weldment;
  weldment.id = "X";
  weldment.section.emplace();
  weldment.section->second_moment_mm4 = 7.2e6;
  weldment.section->neutral_axis_mm = {0, 0};
  Seam seam;
  seam.id = "S1";
  seam.schedules = {"F"};
  seam.path_mm = std::move(path);
  weldment.seams.push_back(std::move(seam));
  return weldment;
}

std::vector<PassEvaluation> laid(std::vector<double> areas_mm2) {
  std::vector<PassEvaluation> passes(areas_mm2.size());
  for (std::size_t i = 0; i < passes.size(); ++i) passes[i].deposit_area_mm2 = areas_mm2[i];
  return passes;
}

double bow_of(const Weldment& weldment, const std::vector<PassEvaluation>& passes) {
  return weldment_bow(weldment, passes)->bow_mm;
}

TEST(WeldmentBow, OfAContinuousSeamAlongXIsBlodgettsFigure) {
  const Weldment weldment = member({{0, 0, 100}, {1000, 0, 100}});
  // 0.005*20*1000^2*100/7.2e6
  EXPECT_DOUBLE_EQ(bow_of(weldment, laid({20})), 0.005 * 20 * 1000 * 1000 * 100 / 7.2e6);
  EXPECT_NEAR(bow_of(weldment, laid({20})), 1.388889, 1e-6);
}

TEST(WeldmentBow, OfAllPassesAddsUp) {
  Weldment weldment = member({{0, 0, 100}, {1000, 0, 100}});
  weldment.seams[0].schedules = {"F", "F"};
  EXPECT_NEAR(bow_of(weldment, laid({15, 5})), 1.388889, 1e-6);
}

TEST(WeldmentBow, OfStitchesIsTheirShareOfAContinuousSeams) {
  Weldment weldment = member({{0, 0, 100}, {1440, 0, 100}});
  // 0.005*20*1440^2*100/7.2e6 = 2.88 mm; five stitches of 60 in 1440 mm are 5/24 of it.
  EXPECT_NEAR(bow_of(weldment, laid({20})), 2.88, 1e-12);
  weldment.seams[0].intermittent = Intermittent{};
  weldment.seams[0].intermittent->length_mm = 60;
  weldment.seams[0].intermittent->gap_mm = 240;
  EXPECT_NEAR(bow_of(weldment, laid({20})), 0.6, 1e-12);
}

TEST(WeldmentBow, OfAMemberAlongYOrZIsThatOfOneAlongXWithThePlateMeltedIn) {
  // A weld of which 30 % is plate: 0.005*(20/0.7)*1000^2*100/7.2e6.
  const double expected = 1.984127;
  Weldment along_x = member({{0, 0, 100}, {1000, 0, 100}});
  along_x.section->axis = "x";
  Weldment along_y = member({{0, 0, 100}, {0, 1000, 100}});
  along_y.section->axis = "y";
  Weldment along_z = member({{0, 100, 0}, {0, 100, 1000}});
  along_z.section->axis = "z";
  for (const Weldment* weldment : {&along_x, &along_y, &along_z})
    EXPECT_NEAR(bow_of(*weldment, laid({20})), expected, 1e-6);
}

TEST(WeldmentBow, OfTwoSecondMomentsTakesTheOneAboutTheOtherAxis) {
  Weldment weldment = member({{0, 50, 100}, {1000, 50, 100}});
  weldment.section->second_moment_mm4.reset();
  weldment.section->second_moments_mm4 = {7.2e6, 3.1e6};  // about y and about z
  const auto bow = weldment_bow(weldment, laid({20}));
  ASSERT_TRUE(bow);
  EXPECT_NEAR(bow->cross_mm[0], 0.005 * 20 / 0.7 * 1e6 * 50 / 3.1e6, 1e-9);   // along y: about z
  EXPECT_NEAR(bow->cross_mm[1], 0.005 * 20 / 0.7 * 1e6 * 100 / 7.2e6, 1e-9);  // along z: about y
  EXPECT_NEAR(bow->bow_mm, std::hypot(2.304147, 1.984127), 1e-5);
  // The neutral axis is taken off in the same order.
  weldment.section->neutral_axis_mm = {50, 40};
  const auto nearer = weldment_bow(weldment, laid({20}));
  EXPECT_NEAR(nearer->cross_mm[0], 0, 1e-12);
  EXPECT_NEAR(nearer->cross_mm[1], 0.6 * 1.984127, 1e-6);
}

TEST(WeldmentBow, OfASeamThatGoesThereAndBackOnBothSidesIsNothing) {
  const Weldment round = member({{0, -50, 0}, {1000, -50, 0}, {1000, 50, 0}, {0, 50, 0}, {0, -50, 0}});
  EXPECT_NEAR(bow_of(round, laid({20})), 0, 1e-12);
  // On one side, there and back is twice.
  const Weldment twice = member({{0, 0, 100}, {1000, 0, 100}, {0, 0, 100}});
  EXPECT_NEAR(bow_of(twice, laid({20})), 2 * 1.388889, 1e-6);
}

TEST(WeldmentBow, IsEmptyWithoutASecondMomentOrTheNeutralAxis) {
  Weldment weldment = member({{0, 0, 100}, {1000, 0, 100}});
  weldment.section->second_moment_mm4.reset();
  EXPECT_FALSE(weldment_bow(weldment, laid({20})));
  weldment.section->second_moments_mm4 = {1e6, 2e6};
  EXPECT_TRUE(weldment_bow(weldment, laid({20})));
  weldment.section->neutral_axis_mm.clear();
  EXPECT_FALSE(weldment_bow(weldment, laid({20})));
  weldment.section.reset();
  EXPECT_FALSE(weldment_bow(weldment, laid({20})));
}

TEST(WeldmentBow, OfAMemberAlongYWithoutAnAxisIsSaidToBeNothing) {
  Plan plan;
  plan.weldments.push_back(member({{0, 0, 100}, {0, 1000, 100}}));
  Findings findings;
  judge_section_axis(plan, findings);
  EXPECT_EQ(bow_of(plan.weldments[0], laid({20})), 0);
  ASSERT_EQ(findings.size(), 1u);
  EXPECT_EQ(findings[0].rule, "weldment.section.axis");
  EXPECT_EQ(findings[0].severity, Severity::note);
  EXPECT_EQ(findings[0].where, "X");
  EXPECT_NE(findings[0].text().find("1000 mm along y"), std::string::npos) << findings[0].text();
  // Not where the axis is stated, nor where most lies along x, nor without a section.
  findings.clear();
  plan.weldments[0].section->axis = "y";
  judge_section_axis(plan, findings);
  plan.weldments[0] = member({{0, 0, 100}, {1000, 900, 100}});
  judge_section_axis(plan, findings);
  plan.weldments[0] = member({{0, 0, 100}, {0, 1000, 100}});
  plan.weldments[0].section.reset();
  judge_section_axis(plan, findings);
  EXPECT_TRUE(findings.empty());
}

TEST(WeldmentBow, IsExplainedWithItsTwoParts) {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  Weldment& weldment = plan.weldments[0];
  weldment.section.emplace();
  weldment.section->axis = "y";
  weldment.section->second_moments_mm4 = {4e7, 2e7};
  weldment.section->neutral_axis_mm = {100, 50};
  const Evaluation evaluation = evaluate(plan);
  ASSERT_TRUE(evaluation.weldments[0].bow_mm);
  const std::vector<Explanation> explained = explain(plan, weldment.id, "bow_mm");
  ASSERT_EQ(explained.size(), 1u);
  EXPECT_EQ(explained[0].result, *evaluation.weldments[0].bow_mm);
  EXPECT_NEAR(std::hypot(explained[0].inputs[0].value, explained[0].inputs[1].value), explained[0].result,
              1e-12);
}

}  // namespace
}  // namespace seamtakt
