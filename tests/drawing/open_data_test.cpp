// Five assemblies that another program wrote. They aren't ours and aren't kept here: SEAMTAKT_OPEN_DATA names
// their folder; without it the test is skipped. The table below was counted without the finder: the solids
// and their boxes were listed, the exact distance of each pair whose boxes are near was taken with
// BRepExtrema_DistShapeShape, and the pairs no farther apart than 1 mm, the finder's gap, are written down by
// number.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>

#include "drawing/found_seams.hpp"

namespace seamtakt::drawing::tests {
namespace {

using Pairs = std::set<std::pair<int, int>>;

struct Counted {
  const char* file;
  std::size_t parts;
  std::size_t hardware;
  Pairs touching;
  /// Of these the finder has no joint.
  Pairs without_joint;
  /// Not counted: the inside of a bought part.
  std::set<int> left_alone = {};
};

std::vector<Counted> counted() {
  std::set<int> bearing = {9, 10, 11, 12};
  for (int i = 13; i <= 30; ++i) bearing.insert(i);
  return {
      {"gc_platform.stp", 3, 0, {{0, 2}, {1, 2}}, {}},
      {"gc_panel.stp", 3, 1, {{0, 2}, {1, 2}}, {}},
      // 0 and 1, a plate and a frame, are at a distance of 0, but by their boxes and the plate's cut-out
      // corners they have no more than a corner's upright edge of 10 mm in common: no face, nothing to weld.
      {"pc_frame.step", 4, 0, {{0, 1}, {0, 2}, {0, 3}, {1, 2}, {1, 3}, {2, 3}}, {{0, 1}}},
      // The sides' edges (31, 32) are rounded, so on the back plate (34) their seams are flares; see below.
      {"gc_bracket.stp",
       35,
       30,
       {{0, 31}, {0, 32}, {1, 4}, {1, 33}, {2, 3}, {2, 4},  {2, 34}, {3, 4},   {4, 33},  {4, 34},  {5, 7},
        {5, 8},  {5, 34}, {6, 8}, {6, 33}, {7, 8}, {8, 33}, {8, 34}, {31, 33}, {31, 34}, {32, 33}, {32, 34}},
       {},
       bearing},
      // A machine of swept handles, castings and hose; nothing is named. The seven pairs without a joint are
      // of curved or cast parts that touch, or lie in one another; they weren't looked at one by one.
      {"pc_all.step",
       47,
       0,
       {{0, 1},   {0, 13},  {1, 4},   {2, 11},  {2, 16},  {3, 8},   {3, 12},  {3, 17},  {4, 9},
        {5, 10},  {7, 17},  {9, 17},  {10, 13}, {10, 21}, {11, 14}, {12, 16}, {15, 46}, {16, 46},
        {18, 19}, {18, 20}, {18, 21}, {18, 22}, {18, 42}, {19, 22}, {19, 24}, {19, 41}, {19, 42},
        {21, 28}, {23, 24}, {25, 27}, {25, 28}, {25, 29}, {25, 30}, {26, 28}, {26, 33}, {27, 28},
        {27, 29}, {28, 29}, {28, 30}, {28, 36}, {28, 37}, {28, 38}, {28, 39}, {28, 40}, {29, 30},
        {31, 33}, {31, 40}, {32, 33}, {32, 35}, {33, 34}, {34, 40}, {36, 40}, {37, 38}, {37, 39},
        {38, 39}, {38, 40}, {41, 42}, {41, 45}, {42, 43}, {43, 45}, {44, 45}},
       {{2, 16}, {3, 8}, {3, 17}, {7, 17}, {11, 14}, {15, 46}, {18, 22}}},
  };
}

class OpenData : public ::testing::TestWithParam<std::size_t> {};

TEST_P(OpenData, HasTheCountedPartsAndPairs) {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  if (!folder) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA isn't set";
  const Counted count = counted()[GetParam()];
  const auto file = std::filesystem::path(folder) / "step" / count.file;
  if (!std::filesystem::exists(file)) GTEST_SKIP() << file << " isn't there";
  const FoundSeams seams = find_in(file);
  EXPECT_EQ(seams.assembly.parts.size(), count.parts);
  std::size_t hardware = 0;
  for (const Part& part : seams.assembly.parts) hardware += part.is_hardware;
  EXPECT_EQ(hardware, count.hardware);
  Pairs joined;
  for (const Joint& joint : seams.found.joints)
    if (!count.left_alone.contains(joint.part_a) && !count.left_alone.contains(joint.part_b))
      joined.insert(std::minmax(joint.part_a, joint.part_b));
  Pairs expected = count.touching;
  for (const auto& pair : count.without_joint) EXPECT_EQ(expected.erase(pair), 1u);
  EXPECT_EQ(joined, expected) << count.file;
}
INSTANTIATE_TEST_SUITE_P(Files, OpenData, ::testing::Range(std::size_t{0}, std::size_t{5}));

FoundSeams open_file(const char* name) {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  const auto file = std::filesystem::path(folder ? folder : "") / "step" / name;
  return folder && std::filesystem::exists(file) ? find_in(file) : FoundSeams();
}

TEST(OpenDataSeams, ThePlatformsInsertsHaveFourLongSeamsEach) {
  const FoundSeams seams = open_file("gc_platform.stp");
  if (seams.assembly.parts.empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA without gc_platform.stp";
  // An insert of 5 mm fills a slot of the angle's 5 mm leg: two sides of 14 mm, each seen on both faces.
  int on_the_faces = 0;
  for (const FoundSeam& seam : seams.all()) {
    for (const double thickness : {seam.seam.thickness_a_mm, seam.seam.thickness_b_mm})
      EXPECT_TRUE(thickness == -1 || std::abs(thickness - 5) < 0.05) << thickness;
    on_the_faces += std::abs(seam.seam.length_mm - 14) < 0.1 && std::abs(seam.seam.dihedral_deg - 180) < 1;
  }
  EXPECT_EQ(on_the_faces, 8);
}

TEST(OpenDataSeams, TheFramesPlatesMeetOverThreeHundredMillimetres) {
  const FoundSeams seams = open_file("pc_frame.step");
  if (seams.assembly.parts.empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA without pc_frame.step";
  // 350.8 mm wide, less a post of 25.4 mm in each corner; above and below.
  int butts = 0;
  for (const FoundSeam& seam : seams.all())
    butts += seam.seam.type == "butt" && std::abs(seam.seam.length_mm - 300) < 0.1 &&
             seam.seam.thickness_a_mm == 10;
  EXPECT_EQ(butts, 2);
}

TEST(OpenDataSeams, TheBracketsRoundedSidesHaveFlaresOnTheBackPlate) {
  const FoundSeams seams = open_file("gc_bracket.stp");
  if (seams.assembly.parts.empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA without gc_bracket.stp";
  // The back plate is 20 mm high with corners of 1 mm and a slot of 6 mm, open towards the side, that
  // leaves 4.5 and 7.5 mm of straight contact; on both sides of each of two side plates.
  std::multiset<double> lengths;
  for (const Joint& joint : seams.found.joints)
    if (const auto both = std::minmax(joint.part_a, joint.part_b);
        (both.first == 31 || both.first == 32) && both.second == 34)
      for (const SeamSide& side : joint.sides)
        if (side.flags.flare) lengths.insert(std::round(side.length_mm * 100) / 100);
  EXPECT_EQ(lengths, (std::multiset<double>{4.5, 4.5, 4.5, 4.5, 7.5, 7.5, 7.5, 7.5}));
}

}  // namespace
}  // namespace seamtakt::drawing::tests
