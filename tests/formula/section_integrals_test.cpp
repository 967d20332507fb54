// Sections that the program has in closed form, against plain numerical integration of their outlines.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

#include "formula/size/fillet.hpp"
#include "formula/size/groove.hpp"

namespace seamtakt {
namespace {

double midpoint_integral(const std::function<double(double)>& f, double from, double to) {
  // Midpoint rule; substitution t^2 at the lower end takes care of vertical tangents.
  const int n = 200000;
  double sum = 0;
  for (int i = 0; i < n; ++i) {
    double s = (i + 0.5) / n;
    sum += f(from + (to - from) * s * s) * 2 * s;
  }
  return sum * (to - from) / n;
}

/// Half-width of a U's opening at a height above its root face.
double u_half_width(double height, double radius, double wall_deg) {
  double wall = wall_deg * std::numbers::pi / 180;
  double tangent_height = radius * (1 - std::sin(wall));
  if (height < tangent_height) return std::sqrt(height * (2 * radius - height));
  return radius * std::cos(wall) + (height - tangent_height) * std::tan(wall);
}

double u_area(double thickness, double gap, double root_face, double radius, double wall_deg) {
  return gap * thickness + 2 * midpoint_integral([&](double h) { return u_half_width(h, radius, wall_deg); },
                                                 0, thickness - root_face);
}

GrooveShape<double> u_shape(double thickness, double gap, double root_face, double radius, double wall_deg) {
  return {GrooveType::single_u, thickness, wall_deg, gap, root_face, radius};
}

TEST(SingleU, HasTheAreaOfItsOutline) {
  for (double wall : {0.0, 5.0, 10.0, 20.0, 45.0})
    for (double radius : {2.0, 6.0, 10.0})
      EXPECT_NEAR(groove_area_mm2(u_shape(20, 2, 2, radius, wall)), u_area(20, 2, 2, radius, wall), 1e-5)
          << wall << " " << radius;
}

TEST(SingleU, ShallowerThanItsArcHasOnlyTheArc) {
  EXPECT_NEAR(groove_area_mm2(u_shape(6, 0, 2, 10, 10)), u_area(6, 0, 2, 10, 10), 1e-5);
  EXPECT_NEAR(groove_top_width_mm(u_shape(6, 0, 2, 10, 10)), 2 * u_half_width(4, 10, 10), 1e-12);
}

TEST(SingleU, IsContinuousWhereTheWallBegins) {
  double tangent_height = 10 * (1 - std::sin(10 * std::numbers::pi / 180));
  auto below = u_shape(tangent_height + 2 - 1e-9, 1, 2, 10, 10),
       above = u_shape(tangent_height + 2 + 1e-9, 1, 2, 10, 10);
  EXPECT_NEAR(groove_area_mm2(below), groove_area_mm2(above), 1e-7);
  EXPECT_NEAR(groove_top_width_mm(below), groove_top_width_mm(above), 1e-7);
}

TEST(Grooves, HaveTheAreaOfTheirOutline) {
  double tan_30 = std::tan(30 * std::numbers::pi / 180), tan_45 = 1;
  auto walls = [](double depth, double slope) {
    return midpoint_integral([&](double h) { return h * slope; }, 0, depth);
  };
  auto shape = [](GrooveType type, double angle) { return GrooveShape<double>{type, 18, angle, 2.5, 3, 0}; };
  EXPECT_NEAR(groove_area_mm2(shape(GrooveType::single_v, 60)), 2.5 * 18 + 2 * walls(15, tan_30), 1e-6);
  EXPECT_NEAR(groove_area_mm2(shape(GrooveType::double_v, 60)), 2.5 * 18 + 4 * walls(7.5, tan_30), 1e-6);
  EXPECT_NEAR(groove_area_mm2(shape(GrooveType::single_bevel, 45)), 2.5 * 18 + walls(15, tan_45), 1e-6);
  EXPECT_NEAR(groove_area_mm2(shape(GrooveType::double_bevel, 45)), 2.5 * 18 + 2 * walls(7.5, tan_45), 1e-6);
}

TEST(GrooveCap, IsOnBothFacesOfADoubleGroove) {
  EXPECT_DOUBLE_EQ(groove_cap_area_mm2(GrooveType::single_v, 15.0, 2.0), 20.0);
  EXPECT_DOUBLE_EQ(groove_cap_area_mm2(GrooveType::double_v, 15.0, 2.0), 40.0);
  EXPECT_DOUBLE_EQ(groove_cap_area_mm2(GrooveType::double_bevel, 15.0, 2.0), 40.0);
}

/// Height of a circular arc of rise h over a chord of width f, at a distance from its middle.
double arc_height(double x, double f, double h) {
  double radius = (f * f / 4 + h * h) / (2 * h);
  return std::sqrt(radius * radius - x * x) - (radius - h);
}

TEST(FaceSegment, HasTheAreaUnderItsArc) {
  for (double h : {0.05, 0.2, 0.21, 0.22, 1.0, 3.0})
    EXPECT_NEAR(face_segment_area_mm2(8.485, h),
                2 * midpoint_integral([&](double x) { return arc_height(x, 8.485, h); }, 4.2425, 0) * -1,
                2e-5)
        << h;
}

TEST(FaceSegment, IsOddInItsHeightAndSmoothWhereTheSeriesTakesOver) {
  EXPECT_EQ(face_segment_area_mm2(8.0, 0.0), 0);
  for (double h : {0.01, 0.5, 2.0})
    EXPECT_DOUBLE_EQ(face_segment_area_mm2(8.0, -h), -face_segment_area_mm2(8.0, h));
  double switch_height = 0.05 * 8 / 2;
  EXPECT_NEAR(face_segment_area_mm2(8.0, switch_height * (1 - 1e-13)),
              face_segment_area_mm2(8.0, switch_height * (1 + 1e-13)), 1e-12);
}

TEST(FaceSegment, IsNearlyAParabolaWhereFlat) {
  EXPECT_NEAR(face_segment_area_mm2(10.0, 1.0), 2.0 / 3 * 10 * 1, 0.02 * 2.0 / 3 * 10);
}

/// Throat by its definition: least distance from the root to the face.
double least_distance_to_face(double z1, double z2, double dihedral_deg) {
  double angle = dihedral_deg * std::numbers::pi / 180, least = HUGE_VAL;
  for (int i = 0; i <= 100000; ++i) {
    double s = i / 100000.0;
    double x = (1 - s) * z1 + s * z2 * std::cos(angle), y = s * z2 * std::sin(angle);
    least = std::min(least, std::hypot(x, y));
  }
  return least;
}

TEST(FilletThroat, IsTheLeastDistanceFromRootToFace) {
  for (double dihedral : {20.0, 45.0, 60.0, 90.0, 120.0, 150.0})
    for (double z2 : {3.0, 6.0, 9.0, 20.0})
      EXPECT_NEAR(fillet_throat_mm(6.0, z2, dihedral), least_distance_to_face(6, z2, dihedral), 1e-6)
          << dihedral << " " << z2;
}

TEST(FilletArea, IsHalfTheCrossProductOfItsLegs) {
  for (double dihedral : {20.0, 60.0, 90.0, 150.0}) {
    double angle = dihedral * std::numbers::pi / 180;
    double x2 = 9 * std::cos(angle), y2 = 9 * std::sin(angle);
    EXPECT_NEAR(fillet_area_mm2(6.0, 9.0, dihedral), std::abs(6 * y2 - 0 * x2) / 2, 1e-12);
    EXPECT_NEAR(fillet_face_width_mm(6.0, 9.0, dihedral), std::hypot(6 - x2, y2), 1e-12);
  }
}

}  // namespace
}  // namespace seamtakt
