#include "formula/metal/composition.hpp"

#include <gtest/gtest.h>

#include "base/error.hpp"
#include "formula/metal/composition_text.hpp"

namespace seamtakt {
namespace {

TEST(ParseComposition, ReadsPairsInTheirOrderWithBlanks) {
  auto pairs = parse_composition("C=0.17, Mn = 1.45 ,Fe=98", "--composition");
  ASSERT_EQ(pairs.size(), 3u);
  EXPECT_EQ(pairs[1].first, "Mn");
  EXPECT_EQ(pairs[1].second, 1.45);
}

std::string problem(const char* text) {
  try {
    parse_composition(text, "--composition");
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "--composition");
    return error.found().english();
  }
  return "taken as good";
}

TEST(ParseComposition, SaysWhatIsWrong) {
  EXPECT_EQ(problem("C=0.1,C=0.2"), "C twice");
  EXPECT_EQ(problem("Qq=1"), "Qq");
  EXPECT_EQ(problem("c=1"), "c");
  EXPECT_EQ(problem("C=0,1"), "1");
  EXPECT_EQ(problem("C=-0.1"), "-0.1 for C");
  EXPECT_EQ(problem("C=nan"), "nan for C");
  EXPECT_EQ(problem("C=0.1%"), "0.1% for C");
  EXPECT_EQ(problem("C=60,Fe=50"), "elements that add up to 110 %");
  for (const char* text : {"", ",", "C", "=1", "C=", "C=0.1,", "C=0.1;Mn=1", "C==1", "C=0x1"})
    EXPECT_NE(problem(text), "taken as good") << text;
}

TEST(ParseComposition, TakesAHundredPercentThatRoundingLiftedAHairAbove) {
  EXPECT_EQ(problem("C=0.1,Mn=0.2,Fe=99.7"), "taken as good");
  EXPECT_NE(problem("C=0.1,Mn=0.2,Fe=99.71"), "taken as good");
}

TEST(Composition, KnowsWhatWasReported) {
  auto composition = composition_of<double>(parse_composition("C=0.17,Mn=0,Fe=99", ""));
  EXPECT_TRUE(composition.was_reported("C"));
  EXPECT_TRUE(composition.was_reported("Mn"));
  EXPECT_FALSE(composition.was_reported("Si"));
  EXPECT_FALSE(composition.was_reported("Fe"));
  EXPECT_EQ(not_reported(composition, std::vector<std::string_view>{"C", "Si", "Mn", "B"}), "Si, B");
}

TEST(Composition, SetsEveryElementByItsSymbol) {
  Composition<double> composition;
  double value = 0;
  for (const auto& member : Composition<double>::members()) {
    EXPECT_TRUE(composition.set(member.symbol, ++value));
    EXPECT_EQ(composition.*(member.value), value);
  }
  EXPECT_EQ(composition.Al, 15);
  EXPECT_FALSE(composition.set("Fe", 98));
}

}  // namespace
}  // namespace seamtakt
