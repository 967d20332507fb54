#include <gtest/gtest.h>

#include <set>

#include "cell/timeline/move_look.hpp"

namespace seamtakt::test {

TEST(MoveLook, every_kind_has_one_and_bars_of_one_colour_share_a_legend) {
  std::set<MoveKind> kinds;
  for (const MoveLook& look : move_looks) {
    kinds.insert(look.kind);
    EXPECT_EQ(&look_of(look.kind), &look);
    for (const MoveLook& other : move_looks)
      EXPECT_EQ(std::string_view(look.colour) == other.colour, std::string_view(look.legend) == other.legend)
          << look.legend << ", " << other.legend;
  }
  EXPECT_EQ(kinds.size(), static_cast<std::size_t>(last_move_kind) + 1);
}

}  // namespace seamtakt::test
