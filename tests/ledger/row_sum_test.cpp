#include "ledger/tree/unordered_set_hash.hpp"

#include <gtest/gtest.h>

#include <numeric>

using namespace seamtakt;

// Source: siphash-2012, appendix A: key 00 01 ... 0f, text 00 01 ... 0e.
TEST(RowSumTest, the_hash_gives_the_published_value) {
  std::string text(15, ' ');
  std::iota(text.begin(), text.end(), '\0');
  EXPECT_EQ(siphash({0x0706050403020100, 0x0f0e0d0c0b0a0908}, text), 0xa129ca6149be45e5u);
}

TEST(RowSumTest, a_row_counts_with_all_its_parts_and_in_any_order) {
  const UnorderedSetHash::Key key = UnorderedSetHash::random_key();
  EXPECT_NE(key, UnorderedSetHash::random_key());
  const auto sum_of = [&](const std::vector<std::tuple<std::string, std::string, std::uint64_t>>& rows) {
    UnorderedSetHash sum(key);
    for (const auto& [topic, name, seq] : rows) sum.add(topic, name, seq);
    return sum;
  };
  const UnorderedSetHash sum = sum_of({{"unit", "U1", 1}, {"pass", "U1/S1", 2}});
  EXPECT_TRUE(sum == sum_of({{"pass", "U1/S1", 2}, {"unit", "U1", 1}}));
  for (const auto& other :
       {sum_of({{"unit", "U1", 2}, {"pass", "U1/S1", 1}}), sum_of({{"unitU", "1", 1}, {"pass", "U1/S1", 2}}),
        sum_of({{"unit", "U1", 1}, {"pass", "U1/S2", 2}}), sum_of({{"unit", "U1", 1}}),
        sum_of({{"unit", "U1", 1}, {"pass", "U1/S1", 2}, {"pass", "U1/S1", 2}})})
    EXPECT_FALSE(sum == other);
}
