// Where a wall's thickness can't be told it stays unknown: no length of a plate is taken for one.
#include <gtest/gtest.h>
#include <BRepAlgoAPI_Fuse.hxx>

#include <cmath>

#include "drawing/found_seams.hpp"
#include "drawing/wall_thickness.hpp"

namespace seamtakt::drawing::tests {
namespace {

/// An angle of 5 mm, 400 mm long, so that it isn't a plate as a whole; a slot of 14 x 10 in its free edge.
TopoDS_Shape slotted_angle() {
  const TopoDS_Shape angle =
      BRepAlgoAPI_Fuse(block_of(0, 0, 0, 400, 200, 5), block_of(0, 0, 5, 5, 200, 60)).Shape();
  return cut_of(angle, block_of(386, 90, -1, 401, 100, 6));
}

MadeAssembly filled_slot() {
  MadeAssembly made;
  made.add("angle", slotted_angle());
  return made.block("insert", 386, 90, 0, 400, 100, 5);
}

TEST(WallThickness, ALineAlongAPlateMeetsNoWall) {
  const Body angle(slotted_angle());
  // Straight in from the free edge the next surface that looks the other way is 400 mm off: the plate's other
  // end.
  EXPECT_FALSE(wall_thickness_mm(angle, {400, 50, 2.5}, {1, 0, 0}, {0, 0, 1}));
  // The slot's side, 90 mm from the plate's edge.
  EXPECT_FALSE(wall_thickness_mm(angle, {393, 90, 2.5}, {0, 1, 0}, {0, 0, 1}));
  // Through it.
  EXPECT_NEAR(wall_thickness_mm(angle, {200, 50, 5}, {0, 0, 1}, {1, 0, 0}).value_or(-1), 5, 1e-6);
  EXPECT_NEAR(wall_thickness_mm(angle, {5, 50, 30}, {1, 0, 0}, {0, 1, 0}).value_or(-1), 5, 1e-6);
}

TEST(WallThickness, ASquareBarIsAsThickAsWideWhicheverWayItLies) {
  for (const double angle_deg : {0.0, 31.0, 45.0}) {
    const Body bar(turned(block_of(0, 0, 0, 300, 20, 20), 0, 0, 0, 1, 0, 0, angle_deg));
    const double turn = angle_deg * 3.14159265358979 / 180;
    const gp_Vec up(0, -std::sin(turn), std::cos(turn)), sideways(0, std::cos(turn), std::sin(turn));
    const gp_Pnt top = gp_Pnt(150, 0, 0).Translated(sideways * 10 + up * 20);
    EXPECT_NEAR(wall_thickness_mm(bar, top, up, {1, 0, 0}).value_or(-1), 20, 1e-6) << angle_deg;
  }
}

TEST(WallThickness, ASurfaceAtASlantIsNoOtherSide) {
  const Body wedge(cut_of(block_of(0, 0, 0, 100, 100, 30),
                          turned(block_of(-200, -200, 30, 300, 300, 90), 0, 0, 30, 0, 1, 0, 10)));
  EXPECT_FALSE(wall_thickness_mm(wedge, {50, 50, 0}, {0, 0, -1}, {0, 1, 0}));
}

TEST(WallThickness, SeamsOfASmallInsertNameNoLengthOfThePlate) {
  const FoundSeams seams = find_in(filled_slot().write("filled-slot.step"));
  int along_the_faces = 0, across = 0;
  for (const FoundSeam& seam : seams.all()) {
    // Either the plate's 5 mm, or unknown.
    for (const double thickness : {seam.seam.thickness_a_mm, seam.seam.thickness_b_mm})
      EXPECT_TRUE(thickness == -1 || std::abs(thickness - 5) < 0.05) << thickness << " mm";
    if (seam.seam.length_mm > 9) {
      ++along_the_faces;
      EXPECT_NEAR(seam.seam.thickness_a_mm, 5, 0.05);
      EXPECT_NEAR(seam.seam.thickness_b_mm, 5, 0.05);
    } else {
      ++across;
      EXPECT_TRUE(seam.seam.thickness_a_mm == -1 || seam.seam.thickness_b_mm == -1);
    }
  }
  // On each face 14 + 10 + 14 mm, and the slot's mouth on both sides of the free edge.
  EXPECT_EQ(along_the_faces, 6);
  EXPECT_EQ(across, 2);
}

}  // namespace
}  // namespace seamtakt::drawing::tests
