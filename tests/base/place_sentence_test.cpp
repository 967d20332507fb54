#include "base/sentences/place_sentence.hpp"

#include <gtest/gtest.h>

#include "base/sentences/sentence_text.hpp"

namespace seamtakt {
namespace {

std::string german_place(std::string_view place) {
  return sentence_text(place_sentence(place), TextView(*find_language("de")));
}

TEST(PlaceSentence, names_the_pass_and_the_schedule_in_the_language) {
  EXPECT_EQ(german_place("BD-2/S03/pass 12"), "BD-2/S03/Raupe 12");
  EXPECT_EQ(german_place("schedule F6"), "Schweißanweisung F6");
}

TEST(PlaceSentence, leaves_names_as_they_are) {
  for (const char* place : {"", "BD-2/S03", "BD/pass", "BD/pass 1a", "BD/pass ", "pass 2", "schedules"})
    EXPECT_EQ(german_place(place), place);
  EXPECT_EQ(german_place("A/pass 1/pass 2"), "A/pass 1/Raupe 2");
}

TEST(PlaceSentence, is_the_place_itself_in_plain_english) {
  for (const char* place : {"BD-2/S03/pass 12", "BD/pass 007", "schedule F6", "schedule ", "plan"})
    EXPECT_EQ(place_sentence(place).english(), place);
}

}  // namespace
}  // namespace seamtakt
