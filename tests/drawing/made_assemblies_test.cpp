// Assemblies of known seams: none missed, none extra.
#include <gtest/gtest.h>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>

#include <cmath>
#include <ctime>
#include <iostream>
#include <numbers>

#include "drawing/found_seams.hpp"
#include "drawing/sample_assemblies.hpp"

namespace seamtakt::drawing::tests {
namespace {

::testing::AssertionResult finds_all_of(const MadeAssembly& made, const std::string& file,
                                        const FileForm& form = {}) {
  return agree(made.truth(), find_in(made.write(file, form)).offered());
}

TEST(MadeAssemblies, ATeeHasTwoFillets) {
  EXPECT_TRUE(finds_all_of(tee_of(), "tee.step"));
}

TEST(MadeAssemblies, ALapHasASeamAlongEachEdgeThatLiesOnTheOther) {
  EXPECT_TRUE(finds_all_of(lap_joint(), "lap.step"));
}

TEST(MadeAssemblies, ACornerOffersItsInside) {
  const FoundSeams seams = find_in(corner_joint().write("corner.step"));
  EXPECT_TRUE(agree(corner_joint().truth(), seams.offered()));
  // The outside is in line: known, not offered.
  int flush = 0;
  for (const FoundSeam& seam : seams.all())
    flush += seam.flags == std::set<std::string>{"flush"} && seam.seam.length_mm == 100;
  EXPECT_EQ(flush, 1);
}

TEST(MadeAssemblies, AButtHasTwoSides) {
  EXPECT_TRUE(finds_all_of(butt_joint(), "butt.step"));
}

TEST(MadeAssemblies, AStiffenerInterruptsTheSeamBelowIt) {
  EXPECT_TRUE(finds_all_of(stiffened(0), "stiffened.step"));
}

TEST(MadeAssemblies, UnderASnipeTheSeamGoesOn) {
  EXPECT_TRUE(finds_all_of(stiffened(20), "sniped.step"));
}

TEST(MadeAssemblies, WebsSetInFromTheFlangesEdgeAreTees) {
  EXPECT_TRUE(finds_all_of(box_girder(), "box.step"));
}

TEST(MadeAssemblies, AFrameOfPlatesOnABase) {
  EXPECT_TRUE(finds_all_of(plate_frame(), "frame.step"));
}

TEST(MadeAssemblies, ASkewedTeeHasASharpAndABluntSide) {
  MadeAssembly made;
  made.block("flange", 0, -100, -12, 300, 100, 0);
  const TopoDS_Shape web = turned(block_of(20, -4, -50, 280, 4, 90), 0, 0, 0, 1, 0, 0, 30);
  made.add("web", cut_of(web, block_of(-500, -500, -500, 500, 500, 0)));
  made.seam({"flange", "web", "tee", 260, 60, 12, 8}).seam({"flange", "web", "tee", 260, 120, 12, 8});
  EXPECT_TRUE(finds_all_of(made, "skewed.step"));
}

TEST(MadeAssemblies, ARoundTubeOnAPlateHasOneClosedSeam) {
  MadeAssembly made;
  made.block("plate", -100, -100, 0, 100, 100, 12);
  made.add("tube", round_tube_of(0, 0, 12, 212, 60.3, 4));
  made.seam({"plate", "tube", "tee", std::numbers::pi * 60.3, 90, 12, 4});
  const FoundSeams seams = find_in(made.write("round-tube.step"));
  EXPECT_TRUE(agree(made.truth(), seams.offered()));
  for (const FoundSeam& seam : seams.all()) {
    EXPECT_TRUE(seam.is_closed);
    // The bore's edge is known and not offered.
    EXPECT_EQ(seam.flags.contains("inner"), seam.seam.length_mm < 180);
  }
  EXPECT_EQ(seams.all().size(), 2u);
}

TEST(MadeAssemblies, ABoxTubeOnAPlate) {
  MadeAssembly made;
  made.block("plate", -10, -100, -100, 0, 100, 100);
  made.add("tube", box_tube_of(0, 300, 0, 0, 80, 60, 4, 0));
  made.seams(2, {"plate", "tube", "tee", 80, 90, 10, 4}).seams(2, {"plate", "tube", "tee", 60, 90, 10, 4});
  EXPECT_TRUE(finds_all_of(made, "box-tube.step"));
}

TEST(MadeAssemblies, RoundedCornersMakeABoxTubesSeamOne) {
  MadeAssembly made;
  made.block("plate", -10, -100, -100, 0, 100, 100);
  made.add("tube", box_tube_of(0, 300, 0, 0, 80, 60, 4, 8));
  made.seam({"plate", "tube", "tee", 2 * (80 + 60) - 8 * 8 + 2 * std::numbers::pi * 8, 90, 10, 4});
  EXPECT_TRUE(finds_all_of(made, "rounded-tube.step"));
}

TEST(MadeAssemblies, ABranchOnAChord) {
  MadeAssembly made;
  made.add("chord", box_tube_of(-300, 300, 0, 0, 100, 100, 5, 10));
  made.add("branch", turned(box_tube_of(50, 350, 0, 0, 60, 60, 4, 0), 0, 0, 0, 0, 1, 0, -90));
  made.seams(4, {"chord", "branch", "tee", 60, 90, 5, 4});
  EXPECT_TRUE(finds_all_of(made, "branch.step"));
}

TEST(MadeAssemblies, MitredTubesAreJoinedAllRound) {
  MadeAssembly made;
  const auto mitred = [](double angle_deg) {
    // Cut along the plane x = y; what lies on the other side is cut off.
    return cut_of(box_tube_of(-30, 400, 0, 0, 60, 40, 4, 0),
                  turned(block_of(-500, 0, -500, 500, 900, 500), 0, 0, 0, 0, 0, 1, angle_deg));
  };
  made.add("first", mitred(45));
  made.add("second", turned(cut_of(box_tube_of(-30, 400, 0, 0, 60, 40, 4, 0),
                                   turned(block_of(-500, -900, -500, 500, 0, 500), 0, 0, 0, 0, 0, 1, -45)),
                            0, 0, 0, 0, 0, 1, 90));
  const double across = 60 * std::sqrt(2.0);
  made.seams(2, {"first", "second", "butt", across, 180, 4, 4});
  made.seam({"first", "second", "butt", 40, 90, 4, 4}).seam({"first", "second", "butt", 40, 270, 4, 4});
  EXPECT_TRUE(finds_all_of(made, "mitred.step"));
}

TEST(MadeAssemblies, ADiscOnAPlateHasAClosedLapSeam) {
  MadeAssembly made;
  made.block("plate", -100, -100, 0, 100, 100, 10);
  made.add("disc", BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(0, 0, 10), gp_Dir(0, 0, 1)), 40, 6).Shape());
  made.seam({"plate", "disc", "lap", std::numbers::pi * 80, 90, 10, 6});
  EXPECT_TRUE(finds_all_of(made, "disc.step"));
}

TEST(MadeAssemblies, ACurvedWebHasCurvedSeams) {
  MadeAssembly made;
  made.block("plate", -20, -20, 0, 200, 200, 10);
  const gp_Ax2 axis(gp_Pnt(0, 0, 10), gp_Dir(0, 0, 1));
  const double quarter = std::numbers::pi / 2;
  made.add("web", cut_of(BRepPrimAPI_MakeCylinder(axis, 108, 60, quarter).Shape(),
                         BRepPrimAPI_MakeCylinder(axis, 100, 60, quarter).Shape()));
  made.seam({"plate", "web", "tee", quarter * 100, 90, 10, 8})
      .seam({"plate", "web", "tee", quarter * 108, 90, 10, 8});
  const FoundSeams seams = find_in(made.write("curved.step"));
  EXPECT_TRUE(agree(made.truth(), seams.offered()));
  // Each chord's middle is within 0.05 mm of the arc.
  for (const Joint& joint : seams.found.joints)
    for (const SeamSide& side : joint.sides) {
      if (side.length_mm < 100) continue;
      const double radius = side.path[0].Distance(gp_Pnt(0, 0, 10));
      for (std::size_t i = 0; i + 1 < side.path.size(); ++i) {
        const gp_XYZ middle = (side.path[i].XYZ() + side.path[i + 1].XYZ()) / 2;
        EXPECT_LE(std::abs(gp_Pnt(middle).Distance(gp_Pnt(0, 0, 10)) - radius), 0.05);
      }
    }
}

TEST(MadeAssemblies, ATubeThroughAPlatesHoleHasASeamOnEachSide) {
  MadeAssembly made;
  made.add("plate",
           cut_of(block_of(-100, -100, 0, 100, 100, 12),
                  BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(0, 0, -1), gp_Dir(0, 0, 1)), 30.5, 20).Shape()));
  made.add("tube", round_tube_of(0, 0, -100, 200, 60, 4));
  made.seams(2, {"tube", "plate", "tee", std::numbers::pi * 61, 90, 4, 12});
  EXPECT_TRUE(finds_all_of(made, "through.step"));
}

TEST(MadeAssemblies, OneHundredPlatesTakeLessThanThreeSeconds) {
  const MadeAssembly made = many_plates(10);
  const auto file = made.write("hundred.step");
  // Of the processor: other programs on the machine don't count.
  const std::clock_t begin = std::clock();
  const FoundSeams seams = find_in(file);
  const double seconds = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  EXPECT_TRUE(agree(made.truth(), seams.offered()));
  EXPECT_LT(seconds, 3);
  RecordProperty("seconds", std::to_string(seconds));
  std::cout << "100 plates: " << seconds << " s\n";
}

}  // namespace
}  // namespace seamtakt::drawing::tests
