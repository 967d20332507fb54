#include <gtest/gtest.h>

#include <cmath>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "records/measure/measure.hpp"

namespace seamtakt::test {
namespace {

Weldment frame() {
  Weldment weldment = small_plan().weldments[0];
  weldment.tolerance_class = "BF";
  Feature length{"span", "length", {"P1", "P2"}, 2000, {}, {}};
  Feature angle{"corner", "angle", {"P2", "P1", "P3"}, {}, 90, {}};
  Feature straight{"rail", "straightness", {"P1", "P4", "P2"}, {}, {}, {}};
  weldment.features = {length, angle, straight};
  return weldment;
}

constexpr const char* points_csv = "point,x_mm,y_mm,z_mm,part_C\n";

const MeasuredFeature& feature(const MeasureResult& result, const std::string& id) {
  for (const auto& each : result.features)
    if (each.id == id) return each;
  throw std::out_of_range(id);
}

MeasureResult measured(const std::string& rows) {
  return measure(frame(), {}, parse_measured_points(points_csv + rows, "points.csv"));
}

TEST(Measure, JudgesLengthAngleAndStraightnessByTheClass) {
  const auto good = measured("P1,0,0,0,20\nP2,2001,0,0,20\nP3,0,1000,0,20\nP4,1000,0.5,0,20\n");
  EXPECT_TRUE(good.findings.empty());
  EXPECT_NEAR(*feature(good, "span").deviation, 1, 1e-9);
  EXPECT_DOUBLE_EQ(*feature(good, "span").tolerance, 4) << "ISO 13920 class B, 1000 to 2000 mm";
  EXPECT_NEAR(feature(good, "corner").measured, 90, 1e-9);
  EXPECT_NEAR(feature(good, "rail").measured, 0.5, 1e-3);
  const auto bad = measured("P1,0,0,0,20\nP2,2010,0,0,20\nP3,30,1000,0,20\nP4,1000,9,0,20\n");
  EXPECT_EQ(bad.findings.size(), 3u);
  for (const auto& finding : bad.findings) EXPECT_EQ(finding.severity, Severity::fail);
  EXPECT_EQ(feature(bad, "span").within, false);
}

TEST(Measure, BringsLengthsToTwentyDegrees) {
  const auto warm = measured("P1,0,0,0,60\nP2,2000.96,0,0,60\nP3,0,1000,0,60\nP4,1000,0,0,60\n");
  EXPECT_NEAR(feature(warm, "span").measured, 2000, 1e-3) << "2000 mm grow by 0.96 mm in 40 K";
}

TEST(Measure, AMissingPointIsSaidAndTheFeatureLeftOut) {
  const auto result = measured("P1,0,0,0,20\nP2,2000,0,0,20\n");
  EXPECT_EQ(result.features.size(), 1u);
  EXPECT_EQ(result.findings.size(), 2u);
  EXPECT_EQ(result.findings[0].rule, "measure.point.missing");
}

TEST(Measure, FindsTheSeamThatShrankMoreThanPredicted) {
  Weldment weldment = frame();
  weldment.section.emplace();
  weldment.section->area_mm2 = 3000;
  weldment.features = {{"a", "length", {"P1", "P2"}, 400, {}, {}},
                       {"b", "length", {"P3", "P4"}, 400, {}, {}}};
  weldment.seams.resize(2);
  weldment.seams[1].path_mm = {{0, 5000, 0}, {5000, 5000, 0}};
  weldment.seams[1].id = "far";
  weldment.seams[0].path_mm = {{0, 0, 0}, {400, 0, 0}};
  Evaluation evaluation;
  for (const char* seam : {"S1", "far"}) {
    PassEvaluation pass;
    pass.weldment = "W";
    pass.seam = seam;
    pass.heat_input_kJ_mm = 1;
    evaluation.passes.push_back(pass);
  }
  // 200 kN over 400 mm of 3000 mm2: F L/(E A) = 0.127 mm with E = 210 GPa.
  const auto by_seam = predicted_shortening_mm(weldment, evaluation, {0, 0, 0}, {400, 0, 0});
  EXPECT_NEAR(by_seam.at("S1"), -200e3 * 400 / (210e3 * 3000), 1e-9);
  const auto points = parse_measured_points(
      "point,x_mm,y_mm,z_mm\nP1,0,0,0\nP2,399.6,0,0\nP3,5000,0,0\nP4,5000,400,0\n", "points.csv");
  const auto result = measure(weldment, evaluation, points);
  const auto& a = feature(result, "a");
  ASSERT_FALSE(a.hints.empty());
  double explained = 0;
  for (const auto& hint : a.hints) explained += hint.share;
  EXPECT_NEAR(explained + *a.unexplained, -0.4, 1e-9) << "shares and rest make up the deviation";
  EXPECT_LT(std::fabs(*a.unexplained), 0.4 + *a.predicted) << "less is left than without the hint";
  EXPECT_GT(a.hints[0].factor, 1) << "they shrank more than predicted";
  EXPECT_LT(a.hints[0].factor, 2);
  EXPECT_FALSE(feature(result, "b").predicted) << "no seam along or across it";
}

TEST(MeasuredPoints, RefuseWhatIsNoPoint) {
  for (const char* rows :
       {"P1,0,0\n", "P1,0,0,x,20\n", "P1,0,0,0,20\nP1,1,1,1,20\n", ",0,0,0,20\n", "P1,0,0,0,900\n"})
    EXPECT_THROW(parse_measured_points(std::string(points_csv) + rows, "points.csv"), InputError) << rows;
  EXPECT_EQ(parse_measured_points("point;x_mm;y_mm;z_mm\nP1;1,5;2;3\n", "points.csv")[0].at_mm[0], 1.5);
}

}  // namespace
}  // namespace seamtakt::test
