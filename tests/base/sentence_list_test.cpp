// Sentences within a sentence are joined as its holes say.
#include <gtest/gtest.h>

#include "base/sentences/sentence_json.hpp"
#include "base/sentences/sentence_text.hpp"

namespace seamtakt {
namespace {

Sentence limit(SentenceKey key, Word what, double bound, const char* unit) {
  return Sentence(key, {{"what", what}, {"bound", UnitValue{bound, unit}}});
}

Sentence needed(Word what, double value, const char* unit) {
  return Sentence("fit.limit.needed-up-to"_key, {{"what", what}, {"needed", UnitValue{value, unit, 3}}});
}

Sentence conflict() {
  return Sentence(
      "fit.no-settings.needs"_key,
      {{"limits", std::vector<Sentence>{limit("fit.limit.at-most"_key, "Heat input"_word, 0.6, "kJ/mm"),
                                        limit("fit.limit.at-least"_key, "Fillet leg"_word, 8, "mm")}},
       {"needs", std::vector<Sentence>{needed("Heat input"_word, 0.8141, "kJ/mm"),
                                       needed("Current"_word, 310, "A")}}});
}

TEST(SentenceList, is_joined_by_commas_and_a_passage_by_spaces) {
  EXPECT_EQ(conflict().english(),
            "No settings keep all of: Heat input at most 0.6 kJ/mm, Fillet leg at least 8 mm. "
            "Heat input would have to be allowed up to 0.814 kJ/mm, the rest as it is. "
            "Current would have to be allowed up to 310 A, the rest as it is.");
}

TEST(SentenceList, is_in_the_language_and_units_of_the_whole) {
  EXPECT_EQ(
      sentence_text(conflict(), TextView(*find_language("de"), UnitSystem::us)),
      "Keine Einstellungen halten alle diese Grenzen: Wärmeeinbringung höchstens 15.24\u202fkJ/in, Schenkel "
      "der Kehlnaht mindestens 0.315\u202fin. Wärmeeinbringung müsste bis 20.7\u202fkJ/in erlaubt sein, das "
      "Übrige wie bisher. Strom müsste bis 310\u202fA erlaubt sein, das Übrige wie bisher.");
}

TEST(SentenceList, of_one_is_that_one_and_of_none_is_empty) {
  const auto of = [](std::vector<Sentence> limits) {
    return Sentence("fit.no-settings"_key, {{"limits", std::move(limits)}}).english();
  };
  EXPECT_EQ(of({Sentence("Heat input"_word)}), "No settings keep all of: Heat input.");
  EXPECT_EQ(of({}), "No settings keep all of: .");
}

TEST(SentenceList, comes_back_from_json) {
  JsonWriter json;
  json.begin_object();
  write_sentence_members(json, conflict());
  json.end_object();
  const std::string text = json.take();
  const JsonDocument document(text, "body");
  EXPECT_EQ(sentence_of_members(document.root(), "lost").english(), conflict().english());
}

}  // namespace
}  // namespace seamtakt
