#include <gtest/gtest.h>

#include <set>

#include "cell/timeline/cycle_losses.hpp"
#include "cell/timeline/move_look.hpp"

namespace seamtakt::testing {

TEST(CycleParts, all_are_there_largest_first_and_losses_are_what_takes_time_beside_the_arc) {
  CycleResult cycle;
  cycle.arc_on_s = 50;
  cycle.air_s = 7;
  cycle.wait_s = 9;
  cycle.start_end_s = 7;
  cycle.load_unload_s = 60;
  const auto parts = cycle_parts(cycle);
  ASSERT_EQ(parts.size(), 9u);
  EXPECT_EQ(parts[0], CyclePart::load_unload);
  EXPECT_EQ(parts[1], CyclePart::arc_on);
  EXPECT_EQ(cycle_losses(cycle),
            (std::vector<CyclePart>{CyclePart::wait, CyclePart::air, CyclePart::start_end}));
  EXPECT_EQ(part_s(cycle, CyclePart::wait), 9);
  EXPECT_STREQ(to_string(CyclePart::air), "air moves");
}

TEST(MoveLook, every_kind_has_one_and_bars_of_one_colour_share_a_legend) {
  std::set<MoveKind> kinds;
  for (const MoveLook& look : move_looks) {
    kinds.insert(look.kind);
    EXPECT_EQ(&look_of(look.kind), &look);
    for (const MoveLook& other : move_looks)
      EXPECT_EQ(std::string_view(look.colour) == other.colour, std::string_view(look.legend) == other.legend)
          << look.legend << ", " << other.legend;
  }
  EXPECT_EQ(kinds.size(), static_cast<std::size_t>(MoveKind::wire_change) + 1);
}

}  // namespace seamtakt::testing
