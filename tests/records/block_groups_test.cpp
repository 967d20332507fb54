#include "records/log/kernel/block_groups.hpp"

#include <gtest/gtest.h>

#include <array>

namespace seamtakt::test {
namespace {

std::array<RowBlock, 3> three_blocks() {
  std::array<RowBlock, 3> blocks{};
  for (std::uint32_t i = 0; i < 3; ++i) {
    RowBlock& block = blocks[i];
    block.kind = RowBlock::Kind::arc_on;
    block.first = 1 + 64 * i;
    block.rows = 64;
    block.ticks = 100 + i;
    block.least_step = 3 - i;
    block.energy_twice = std::int64_t{1} << 62;
    block.min_current = 5 - static_cast<std::int32_t>(i);
    block.max_current = 10 + static_cast<std::int32_t>(i);
  }
  blocks[1].energy_twice = -7;
  blocks[2].energy_twice = 9;
  return blocks;
}

TEST(BlockGroups, AGroupIsTheSumOfItsBlocks) {
  const RowBlock group = joined(three_blocks());
  EXPECT_EQ(group.kind, RowBlock::Kind::arc_on);
  EXPECT_EQ(group.first, 1u);
  EXPECT_EQ(group.rows, 192u);
  EXPECT_EQ(group.ticks, 303);
  EXPECT_EQ(group.least_step, 1);
  EXPECT_EQ(group.energy_twice, (std::int64_t{1} << 62) + 2);
  EXPECT_EQ(group.min_current, 3);
  EXPECT_EQ(group.max_current, 12);
}

TEST(BlockGroups, BlocksOfDifferentKindsMakeNoGroup) {
  auto blocks = three_blocks();
  blocks[2].kind = RowBlock::Kind::arc_off;
  EXPECT_EQ(joined(blocks).kind, RowBlock::Kind::one_by_one);
}

TEST(BlockGroups, ASumThatLeaves64BitsMakesNoGroup) {
  auto blocks = three_blocks();
  blocks[1].energy_twice = std::int64_t{1} << 62;
  EXPECT_EQ(joined(blocks).kind, RowBlock::Kind::one_by_one);
}

}  // namespace
}  // namespace seamtakt::test
