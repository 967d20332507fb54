// What a plate's fields must be together: each refusal is one line that says where, what and what instead.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

Plan plan_with(const Plate& plate) {
  Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  plan.weldments[0].plates = {plate};
  return plan;
}

Plate good_plate() {
  Plate plate;
  plate.id = "P";
  plate.outline_mm = {{0, 0}, {100, 0}, {100, 50}, {0, 50}};
  plate.thickness_mm = 8;
  return plate;
}

std::string refusal_of(const Plate& plate) {
  try {
    check_plan(plan_with(plate), "p.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

void expect_refused(const Plate& plate, const std::string& found, const std::string& pointer) {
  const std::string said = refusal_of(plate);
  EXPECT_NE(said.find("found " + found + ","), std::string::npos) << said;
  EXPECT_NE(said.find("/weldments/0/plates/0" + pointer), std::string::npos) << said;
  EXPECT_EQ(said.find('\n'), std::string::npos);
}

TEST(PlateRelations, APlateWithAHoleAndAClosingCornerIsTaken) {
  Plate plate = good_plate();
  EXPECT_EQ(refusal_of(plate), "accepted");
  plate.outline_mm.push_back({0, 0});
  plate.holes.emplace_back().outline_mm = {{10, 10}, {20, 10}, {20, 20}};
  EXPECT_EQ(refusal_of(plate), "accepted");
  // Clockwise, and not convex.
  plate.outline_mm = {{0, 0}, {0, 50}, {20, 50}, {20, 20}, {100, 20}, {100, 0}};
  EXPECT_EQ(refusal_of(plate), "accepted");
  // Within 1e-6.
  plate.u = {1 + 9e-7, 0, 0};
  plate.v = {9e-7, 1, 0};
  EXPECT_EQ(refusal_of(plate), "accepted");
}

TEST(PlateRelations, DirectionsAreUnitVectorsAtRightAngles) {
  Plate plate = good_plate();
  plate.u = {2, 0, 0};
  expect_refused(plate, "a vector of length 2", "/u");
  plate = good_plate();
  plate.v = {0, 0, 0};
  expect_refused(plate, "a vector of length 0", "/v");
  plate = good_plate();
  plate.v = {0.6, 0.8, 0};
  // acos(0.6) = 53.1301 degrees.
  EXPECT_NE(refusal_of(plate).find("53.1301"), std::string::npos) << refusal_of(plate);
  EXPECT_NE(refusal_of(plate).find("/weldments/0/plates/0/v"), std::string::npos);
}

TEST(PlateRelations, AnOutlineNeitherCrossesNorTouchesItself) {
  Plate plate = good_plate();
  plate.outline_mm = {{0, 0}, {100, 50}, {100, 0}, {0, 50}};
  expect_refused(plate, "an outline whose sides 1 and 3 meet", "/outline_mm");
  plate.outline_mm = {{0, 0}, {100, 0}, {50, 0}, {50, 40}};
  expect_refused(plate, "an outline whose sides 1 and 2 meet", "/outline_mm");
  plate.outline_mm = {{0, 0}, {0, 0}, {100, 0}};
  expect_refused(plate, "an outline without area", "/outline_mm");
  plate = good_plate();
  plate.holes.emplace_back().outline_mm = {{10, 10}, {30, 30}, {30, 10}, {10, 30}};
  expect_refused(plate, "an outline whose sides 1 and 3 meet", "/holes/0/outline_mm");
  plate = good_plate();
  plate.outline_mm.assign(2001, {0, 0});
  expect_refused(plate, "an outline of 2001 corners", "/outline_mm");
}

}  // namespace
}  // namespace seamtakt
