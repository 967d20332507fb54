// Round bars, pins, bolts, tab and slot: each with the outcome that is stated for it.
#include <gtest/gtest.h>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>

#include <cmath>

#include "drawing/found_seams.hpp"

namespace seamtakt::drawing::tests {
namespace {

/// Along x, its axis through (y, z).
TopoDS_Shape bar_of(double x0, double x1, double y, double z, double d) {
  return BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(x0, y, z), gp_Dir(1, 0, 0)), d / 2, x1 - x0).Shape();
}
TopoDS_Shape upright_of(double x, double y, double z0, double z1, double d) {
  return BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(x, y, z0), gp_Dir(0, 0, 1)), d / 2, z1 - z0).Shape();
}

std::vector<TrueSeam> flares_of(const FoundSeams& seams) {
  std::vector<TrueSeam> flares;
  for (const FoundSeam& seam : seams.all())
    if (seam.flags == std::set<std::string>{"flare"} && seam.seam.dihedral_deg == -1)
      flares.push_back(seam.seam);
  return flares;
}

TEST(HardCases, ARoundBarOnAPlateHasAFlareOnEachSideAndNothingElseIsOffered) {
  MadeAssembly made;
  made.block("plate", 0, 0, 0, 300, 100, 12);
  made.add("bar", bar_of(50, 250, 50, 22, 20));
  const FoundSeams seams = find_in(made.write("bar.step"));
  made.seams(2, {"bar", "plate", "lap", 200, -1, 20, 12});
  EXPECT_TRUE(agree(made.truth(), flares_of(seams)));
  EXPECT_TRUE(seams.offered().empty());
}

TEST(HardCases, BeyondTheGapARoundBarTouchesNothing) {
  MadeAssembly made;
  made.block("plate", 0, 0, 0, 300, 100, 12);
  made.add("bar", bar_of(50, 250, 50, 22 + 1.02, 20));
  EXPECT_TRUE(find_in(made.write("bar-away.step")).all().empty());
}

TEST(HardCases, TwoRoundBarsSideBySideHaveAFlareOnEachSide) {
  MadeAssembly made;
  made.add("thick", bar_of(0, 200, 0, 0, 20));
  made.add("thin", bar_of(50, 150, 16, 0, 12));
  made.seams(2, {"thick", "thin", "lap", 100, -1, 20, 12});
  EXPECT_TRUE(agree(made.truth(), flares_of(find_in(made.write("bars.step")))));
}

TEST(HardCases, ARoundBarAcrossAProfileTouchesItOverItsWidth) {
  MadeAssembly made;
  made.add("profile", box_tube_of(-200, 200, 0, 0, 60, 60, 4, 0));
  made.add("bar", turned(bar_of(-100, 100, 0, 38, 16), 0, 0, 0, 0, 0, 1, 90));
  made.seams(2, {"bar", "profile", "lap", 60, -1, 16, 4});
  EXPECT_TRUE(agree(made.truth(), flares_of(find_in(made.write("bar-across.step")))));
}

TEST(HardCases, ARoundedProfileOnAPlateHasAFlareAlongEachCorner) {
  MadeAssembly made;
  made.block("plate", -50, -100, -10, 350, 100, 0);
  made.add("tube", box_tube_of(0, 300, 0, 30, 80, 60, 4, 8));
  made.seams(2, {"plate", "tube", "lap", 300, -1, 10, 4});
  EXPECT_EQ(flares_of(find_in(made.write("rounded-on-plate.step"))).size(), 2u);
}

TEST(HardCases, APinInAHoleIsShownAsARoundBarThroughAPlate) {
  MadeAssembly made;
  made.add("plate", cut_of(block_of(-100, -100, 0, 100, 100, 12), upright_of(0, 0, -1, 13, 20.4)));
  made.add("pin", upright_of(0, 0, -30, 40, 20));
  const FoundSeams seams = find_in(made.write("pin.step"));
  int closed = 0;
  for (const FoundSeam& seam : seams.all()) closed += seam.is_closed && seam.seam.dihedral_deg == 90;
  // One on each face; its name says nothing, so a person leaves it out.
  EXPECT_EQ(closed, 2);
  EXPECT_TRUE(seams.found.notes.empty());
}

TEST(HardCases, WhatIsLeftOutAsHardwareIsListedAndItsJointsAreTold) {
  MadeAssembly made;
  made.add("Bearing plate", cut_of(block_of(-100, -100, 0, 100, 100, 12), upright_of(0, 0, -1, 13, 20.4)));
  made.add("Hex Bolt DIN M20x70", upright_of(0, 0, -30, 40, 20));
  made.block("Bracket for bolt M20", 90, -50, 12, 98, 50, 92);
  const FoundSeams seams = find_in(made.write("bolt.step"));
  ASSERT_EQ(seams.found.notes.size(), 1u);
  const Note& note = seams.found.notes.front();
  EXPECT_EQ(note.kind, "hardware");
  EXPECT_EQ(note.parts, std::vector<int>{1});
  EXPECT_NE(note.text.find("1 x Hex Bolt DIN M20x70"), std::string::npos) << note.text;
  bool has_bolt = false, has_bracket = false;
  for (const FoundSeam& seam : seams.all()) {
    has_bolt =
        has_bolt || seam.seam.part_a == "Hex Bolt DIN M20x70" || seam.seam.part_b == "Hex Bolt DIN M20x70";
    has_bracket = has_bracket || seam.seam.part_b == "Bracket for bolt M20";
  }
  EXPECT_TRUE(has_bolt);
  EXPECT_TRUE(has_bracket);
}

TEST(HardCases, OnlyAWordBesideAStandardOrAThreadNamesHardware) {
  for (const char* name :
       {"Hex Nut, 1A, DIN,M6x1", "Plain Washer, Normal, DIN,M6", "ISO 4017 screw", "Stift DIN 7"})
    EXPECT_TRUE(is_named_hardware(name)) << name;
  for (const char* name : {"bearing plate", "bracket", "M_Bearing_Bracket_L_Side", "Bracket for bolt M20",
                           "Nut plate M8", "pin", "washer", "Platte DIN M6", "Halter Schraube M6"})
    EXPECT_FALSE(is_named_hardware(name)) << name;
}

TEST(HardCases, ATabInASlotLeavesTheFilletsWholeAndIsFlushBelow) {
  MadeAssembly made;
  made.add("flange", cut_of(block_of(0, 0, 0, 300, 100, 12), block_of(130, 46, -1, 170, 54, 13)));
  made.add("web",
           BRepAlgoAPI_Fuse(block_of(20, 46, 12, 280, 54, 92), block_of(130, 46, 0, 170, 54, 12)).Shape());
  double above_mm = 0, flush_mm = 0;
  for (const FoundSeam& seam : find_in(made.write("tab.step")).all()) {
    if (seam.flags.empty() && std::abs(seam.seam.dihedral_deg - 90) < 1) above_mm += seam.seam.length_mm;
    if (seam.flags.contains("flush") || std::abs(seam.seam.dihedral_deg - 180) < 1)
      flush_mm += seam.seam.length_mm;
  }
  // Above: both sides of the web, over the slot too. Below: round the tab's end.
  EXPECT_NEAR(above_mm, 2 * 260, 0.1);
  EXPECT_NEAR(flush_mm, 2 * (40 + 8) + 2 * 8, 20);
}

TEST(HardCases, APairThatTakesTooLongIsLeftOutAndNamed) {
  MadeAssembly made;
  made.block("flange", 0, 0, 0, 300, 100, 12);
  made.block("web", 20, 46, 12, 280, 54, 92);
  FindOptions options;
  options.pair_seconds = 1e-9;
  const FoundSeams seams = find_in(made.write("slow.step"), options);
  EXPECT_TRUE(seams.all().empty());
  ASSERT_EQ(seams.found.notes.size(), 1u);
  EXPECT_EQ(seams.found.notes.front().kind, "pair-time");
  EXPECT_EQ(seams.found.notes.front().parts, (std::vector<int>{0, 1}));
}

}  // namespace
}  // namespace seamtakt::drawing::tests
