// The waits against the temperature field behind a moving source: the same physics by another method.
#include "formula/heat/interpass.hpp"

#include <gtest/gtest.h>

#include "formula/heat/temperature_field.hpp"

namespace seamtakt {
namespace {

const MovingSource<double> source{4000, 8, handbook_conductivity_W_mmK, handbook_heat_capacity_J_mm3K, 20};
constexpr double heat_J_mm = 4000.0 / 8;

FieldPoint<double> behind(double wait_s) {
  return {-8 * wait_s, 0, 0};
}

TEST(InterpassWait, OfAThickBodyIsWhenTheFieldHasFallenToTheInterpassTemperature) {
  double wait = interpass_wait_thick_s(heat_J_mm, 130.0, handbook_conductivity_W_mmK, 1.0);
  EXPECT_NEAR(thick_plate_temperature_C(source, behind(wait)), 150, 1e-9);
}

TEST(InterpassWait, OfAThinPlateIsWhenTheFieldHasFallenToTheInterpassTemperature) {
  double wait = interpass_wait_thin_s(heat_J_mm, 5.0, 130.0, handbook_conductivity_W_mmK,
                                      handbook_heat_capacity_J_mm3K, 1.0);
  // The closed form is the limit far behind the source.
  EXPECT_NEAR(thin_plate_temperature_C(source, behind(wait), 5.0), 150, 0.1);
}

TEST(InterpassWait, OfAPlateIsNearTheLargerOfBoth) {
  for (double thickness : {5.0, 12.0, 60.0}) {
    double thick = interpass_wait_thick_s(heat_J_mm, 130.0, handbook_conductivity_W_mmK, 1.0);
    double thin = interpass_wait_thin_s(heat_J_mm, thickness, 130.0, handbook_conductivity_W_mmK,
                                        handbook_heat_capacity_J_mm3K, 1.0);
    double there = plate_temperature_C(source, behind(std::max(thick, thin)), thickness);
    EXPECT_GE(there, 149.9) << thickness;
    EXPECT_LE(there, 215) << thickness;
  }
}

TEST(InterpassWait, GrowsWithTheShapeFactor) {
  EXPECT_DOUBLE_EQ(interpass_wait_thick_s(500.0, 130.0, 0.028, 0.67),
                   0.67 * interpass_wait_thick_s(500.0, 130.0, 0.028, 1.0));
}

}  // namespace
}  // namespace seamtakt
