#include "plan/seam_geometry.hpp"

#include <gtest/gtest.h>

namespace seamtakt {
namespace {

Seam bar(const char* position, const char* direction) {
  Seam seam;
  seam.id = "S1";
  seam.position = position;
  seam.direction = direction;
  seam.path_mm = {{0, 0, 0}, {300, 0, 0}};
  return seam;
}

TEST(PassEnds, OfAnEvenPassAreTurnedWhereTheDirectionIsFree) {
  const Seam seam = bar("PB", "either");
  EXPECT_EQ(pass_ends(seam, 1).begin, (Point_mm{0, 0, 0}));
  EXPECT_EQ(pass_ends(seam, 1).end, (Point_mm{300, 0, 0}));
  EXPECT_EQ(pass_ends(seam, 2).begin, (Point_mm{300, 0, 0}));
  EXPECT_EQ(pass_ends(seam, 3).begin, (Point_mm{0, 0, 0}));
}

TEST(PassEnds, StayAsDrawnWhereThatIsDemandedOrThePositionGoesUpOrDown) {
  for (const Seam& seam : {bar("PB", "as-drawn"), bar("PF", "either"), bar("PG", "")}) {
    EXPECT_FALSE(may_reverse(seam));
    EXPECT_EQ(pass_ends(seam, 2).begin, (Point_mm{0, 0, 0})) << seam.position;
  }
}

TEST(PassEnds, OfAnIntermittentSeamAreThoseOfItsOuterRuns) {
  Seam seam = bar("PA", "");
  seam.intermittent = Intermittent{};
  seam.intermittent->length_mm = 50;
  seam.intermittent->gap_mm = 100;
  // floor((300 + 100)/(50 + 100)) = 2 runs: 0 to 50 and on to 200.
  ASSERT_EQ(weld_runs(seam).size(), 2u);
  EXPECT_EQ(pass_ends(seam, 1).begin[0], weld_runs(seam).front().from_mm);
  EXPECT_EQ(pass_ends(seam, 2).begin[0], weld_runs(seam).back().to_mm);
  EXPECT_LT(pass_ends(seam, 1).end[0], 300);
}

}  // namespace
}  // namespace seamtakt
