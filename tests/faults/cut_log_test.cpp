#include "cut_log.hpp"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>
#include <vector>

using namespace seamtakt;

namespace {

constexpr std::size_t block = 4096;

CutEvent write_of(std::uint64_t offset, char letter, std::size_t size) {
  return {'w', offset, std::string(size, letter)};
}

/// How often each image came in many cuts.
std::map<std::string, int> images(const std::string& before, const std::vector<CutEvent>& events) {
  std::map<std::string, int> count;
  each_cut_state(before, events, 2000, 1, [&](const CutState& state) { ++count[state.image]; });
  return count;
}

}  // namespace

TEST(CutLogTest, what_was_flushed_stays_and_of_later_writes_any_part_may) {
  const std::string before(4 * block, '.');
  const std::vector<CutEvent> events = {
      write_of(block, 'a', 512), {'f', 0, {}}, write_of(2 * block, 'b', 512), write_of(3 * block, 'c', 512)};
  std::string none = before;
  none.replace(block, 512, 512, 'a');
  std::string first = none, second = none, both = none;
  first.replace(2 * block, 512, 512, 'b');
  second.replace(3 * block, 512, 512, 'c');
  both = first;
  both.replace(3 * block, 512, 512, 'c');
  std::set<std::string> expected = {before, none, first, second, both}, found;
  for (const auto& [image, times] : images(before, events)) found.insert(image);
  EXPECT_EQ(found, expected);
}

TEST(CutLogTest, a_write_is_torn_at_sectors_but_for_the_superblocks_block) {
  const std::string before(3 * block, '.');
  bool torn = false;
  for (const auto& [image, times] : images(before, {write_of(0, 'x', 2 * block)})) {
    for (std::size_t at = 0; at < image.size(); at += 512)
      EXPECT_EQ(image.substr(at, 512), std::string(512, image[at])) << "torn within a sector";
    EXPECT_EQ(image.substr(0, block), std::string(block, image[0])) << "torn in block 0";
    EXPECT_EQ(image.substr(2 * block), std::string(block, '.'));
    torn = torn || image.substr(block, block) != std::string(block, image[block]);
  }
  EXPECT_TRUE(torn);
}

TEST(CutLogTest, what_was_acknowledged_is_what_came_before_the_cut) {
  const std::vector<CutEvent> events = {{'a', 0, "1\n"}, write_of(0, 'x', 512), {'a', 0, "2\n"}};
  std::set<std::string> found;
  each_cut_state(std::string(block, '.'), events, 200, 1,
                 [&](const CutState& state) { found.insert(state.acknowledged); });
  EXPECT_EQ(found, (std::set<std::string>{"", "1\n", "1\n2\n"}));
}
