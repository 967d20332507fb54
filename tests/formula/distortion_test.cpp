#include "formula/strength/distortion.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace seamtakt {
namespace {

TEST(FilletAngularMovement, IsTheSameInInchesWithTheInchConstant) {
  for (double leg : {0.125, 0.25, 0.5}) {
    const double in_inches = 0.02 * 8 * std::pow(leg, 1.3) / (0.5 * 0.5);
    EXPECT_NEAR(fillet_angular_movement_mm(8 * 25.4, leg * 25.4, 0.5 * 25.4) / 25.4, in_inches, 1e-12);
  }
}

TEST(FilletAngularDistortion, IsTheAngleThatLiftsTheEdge) {
  const double angle = fillet_angular_distortion_deg(200.0, 6.0, 12.0) * std::numbers::pi / 180;
  EXPECT_NEAR(100 * std::tan(angle), fillet_angular_movement_mm(200.0, 6.0, 12.0), 1e-12);
  EXPECT_NEAR(fillet_angular_distortion_deg(400.0, 6.0, 12.0),
              fillet_angular_distortion_deg(200.0, 6.0, 12.0), 1e-12);
}

/// Second route: the beam under constant end moments, its curvature integrated twice.
double integrated_bow_mm(double moment_N_mm, double length, double modulus, double second_moment) {
  const int n = 2000;
  const double h = length / n, curvature = moment_N_mm / (modulus * second_moment);
  double deflection = 0, slope = curvature * length / 2;
  for (int i = 0; i < n / 2; ++i) {
    deflection += slope * h - curvature * h * h / 2;
    slope -= curvature * h;
  }
  return deflection;
}

TEST(TendonBow, EqualsTheIntegratedCurvature) {
  const double force = tendon_force_kN(1.0);
  EXPECT_NEAR(tendon_bow_mm(force, 100.0, 4000.0, 210000.0, 5e7),
              integrated_bow_mm(force * 1000 * 100, 4000, 210000, 5e7), 1e-9);
}

TEST(TendonForce, IsNearTheOtherPublishedFormulaForSteel) {
  // okerblom: F = 0.335 alpha/(rho c) E (q/v), with handbook properties.
  const double okerblom = 0.335 * 12e-6 / 0.0036 * 210000 * 1000 / 1000;
  EXPECT_NEAR(tendon_force_kN(1.0) / okerblom, 1, 0.2);
}

TEST(Distortion, ScalesAsItsFormulasSay) {
  EXPECT_NEAR(longitudinal_bow_mm(80.0, 8000.0, 50.0, 4e7) / longitudinal_bow_mm(80.0, 4000.0, 50.0, 4e7), 4,
              1e-12);
  EXPECT_NEAR(longitudinal_bow_mm(80.0, 4000.0, -50.0, 4e7), -longitudinal_bow_mm(80.0, 4000.0, 50.0, 4e7),
              1e-12);
  EXPECT_NEAR(butt_transverse_shrinkage_mm(80.0, 20.0) / butt_transverse_shrinkage_mm(80.0, 10.0), 0.5,
              1e-12);
  EXPECT_NEAR(fillet_angular_movement_mm(200.0, 6.0, 24.0) / fillet_angular_movement_mm(200.0, 6.0, 12.0),
              0.25, 1e-12);
}

}  // namespace
}  // namespace seamtakt
