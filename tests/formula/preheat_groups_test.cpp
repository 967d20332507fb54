#include <gtest/gtest.h>

#include "formula/metal/preheat.hpp"

namespace seamtakt {
namespace {

TEST(SusceptibilityGroups, FollowTheTableOfPcmAndHydrogenLevel) {
  const double pcm[] = {0.17, 0.22, 0.27, 0.32, 0.37};
  const char* groups[] = {"ABCDE", "BCDEF", "CDEFG"};
  for (auto level : {HydrogenLevel::h1, HydrogenLevel::h2, HydrogenLevel::h3})
    for (int column = 0; column < 5; ++column)
      EXPECT_EQ(susceptibility_group_of_table(pcm[column], level), groups[static_cast<int>(level)][column]);
  EXPECT_EQ(susceptibility_group_of_table(0.18, HydrogenLevel::h1), 'B');
  EXPECT_EQ(susceptibility_group_of_table(0.38, HydrogenLevel::h1), std::nullopt);
}

TEST(SusceptibilityGroups, FollowTheIndexToOneDecimal) {
  for (auto [index, group] : {std::pair{2.0, 'A'},
                              {3.0, 'A'},
                              {3.04, 'A'},
                              {3.1, 'B'},
                              {3.5, 'B'},
                              {4.0, 'C'},
                              {4.06, 'D'},
                              {4.5, 'D'},
                              {5.0, 'E'},
                              {5.5, 'F'},
                              {5.6, 'G'},
                              {7.0, 'G'},
                              {9.0, 'G'},
                              {-3.0, 'A'}})
    EXPECT_EQ(susceptibility_group_of_index(index), group) << index;
}

TEST(AwsPreheat, TakesTheRowOfItsThicknessInInches) {
  auto at = [](double thickness) { return aws_preheat(Restraint::medium, 'D', thickness).preheat_C; };
  auto fahrenheit = [](double f) { return (f - 32) / 1.8; };
  EXPECT_DOUBLE_EQ(at(9.524), fahrenheit(65));
  EXPECT_DOUBLE_EQ(at(9.525), fahrenheit(175));
  EXPECT_DOUBLE_EQ(at(19.05), fahrenheit(175));
  EXPECT_DOUBLE_EQ(at(19.06), fahrenheit(230));
  EXPECT_DOUBLE_EQ(at(38.1), fahrenheit(230));
  EXPECT_DOUBLE_EQ(at(76.2), fahrenheit(265));
  EXPECT_DOUBLE_EQ(at(76.3), fahrenheit(300));
}

TEST(AwsPreheat, RisesWithGroupRestraintAndThickness) {
  const double thicknesses[] = {6, 15, 25, 50, 80};
  for (auto restraint : {Restraint::low, Restraint::medium, Restraint::high})
    for (double thickness : thicknesses)
      for (char group = 'A'; group <= 'G'; ++group) {
        double here = aws_preheat(restraint, group, thickness).preheat_C;
        if (group < 'G') {
          EXPECT_LE(here, aws_preheat(restraint, static_cast<char>(group + 1), thickness).preheat_C);
        }
        if (restraint != Restraint::high) {
          EXPECT_LE(here,
                    aws_preheat(static_cast<Restraint>(static_cast<int>(restraint) + 1), group, thickness)
                        .preheat_C);
        }
        if (thickness < 80) {
          EXPECT_LE(here, aws_preheat(restraint, group, 80).preheat_C);
        }
      }
}

TEST(AwsPreheat, SaysWhereNoneIsNeeded) {
  EXPECT_TRUE(aws_preheat(Restraint::low, 'A', 6).none_needed_above);
  EXPECT_FALSE(aws_preheat(Restraint::low, 'A', 50).none_needed_above);
}

TEST(HydrogenLevels, AreReadByAmountAndByName) {
  EXPECT_EQ(hydrogen_level_of(4.9), HydrogenLevel::h1);
  EXPECT_EQ(hydrogen_level_of(5.0), HydrogenLevel::h2);
  EXPECT_EQ(hydrogen_level_of(10.0), HydrogenLevel::h3);
  EXPECT_EQ(hydrogen_level_of(std::string_view("H2")), HydrogenLevel::h2);
  EXPECT_EQ(hydrogen_level_of(std::string_view("h2")), std::nullopt);
  EXPECT_EQ(hydrogen_of_level_ml_100g(HydrogenLevel::h3), 30);
}

}  // namespace
}  // namespace seamtakt
