#include <gtest/gtest.h>

#include "base/error.hpp"
#include "base/sentences/language.hpp"
#include "base/sentences/sentence_json.hpp"
#include "base/sentences/sentence_text.hpp"

namespace seamtakt {
namespace {

Sentence preheat() {
  return Sentence("preheat.below-needed"_key,
                  {{"given", UnitValue{20, "C"}}, {"needed", UnitValue{80.5, "C"}}});
}
const Language& german() {
  return *find_language("de");
}

std::string sentence_json(const Sentence& sentence) {
  JsonWriter json;
  json.begin_object();
  write_sentence_members(json, sentence);
  json.end_object();
  return json.take();
}
Sentence read_back(const std::string& json, const std::string& text = "as it was") {
  const JsonDocument document(json, "body");
  return sentence_of_members(document.root(), text);
}

TEST(SentenceTest, is_text_in_the_readers_language_and_units) {
  EXPECT_EQ(preheat().english(), "Preheat is 20 C, method B asks for 80.5 C.");
  EXPECT_EQ(sentence_text(preheat(), TextView(german())),
            "Die Vorwärmung ist 20\u202f°C, Methode B verlangt 80.5\u202f°C.");
  EXPECT_EQ(sentence_text(preheat(), TextView(english(), UnitSystem::us)),
            "Preheat is 68\u202f°F, method B asks for 176.9\u202f°F.");
}

TEST(SentenceTest, a_unit_that_two_numbers_share_is_written_once) {
  const Sentence size("fillet.size.undersize"_key, {{"what", "Fillet leg"_word},
                                                    {"obtained", UnitValue{5.113, "mm", 3}},
                                                    {"needed", UnitValue{6, "mm", 3}}});
  EXPECT_EQ(size.english(), "Fillet leg is 5.11 of 6 mm that the drawing asks for.");
  EXPECT_EQ(sentence_text(size, TextView(english(), UnitSystem::us)),
            "Fillet leg is 0.201 of 0.236\u202fin that the drawing asks for.");
  EXPECT_EQ(sentence_text(size, TextView(german())),
            "Schenkel der Kehlnaht: 5.11 von 6\u202fmm, die die Zeichnung verlangt.");
}

TEST(SentenceTest, a_name_from_a_file_is_shown_as_it_is_whatever_it_looks_like) {
  const Sentence sentence("tracking.no-weave"_key, {{"schedule", "{schedule} %1 <b>plan limit</b>"}});
  EXPECT_EQ(sentence.english(),
            "Through-arc tracking needs a weave, and schedule {schedule} %1 <b>plan limit</b> has none.");
}

TEST(SentenceTest, an_accepted_finding_is_a_sentence_around_its_own) {
  const Sentence accepted(
      "finding.accepted"_key,
      {{"finding", preheat()}, {"by", "w. e."}, {"date", "2026-11-25"}, {"why", "tried"}});
  EXPECT_EQ(accepted.english(),
            "Preheat is 20 C, method B asks for 80.5 C. Accepted by w. e. on 2026-11-25: tried");
}

TEST(SentenceTest, a_hole_without_argument_is_a_fault_of_the_program) {
  EXPECT_THROW(Sentence("preheat.below-needed"_key).english(), std::logic_error);
}

TEST(SentenceJson, is_read_back_as_it_was_written) {
  const Sentence accepted(
      "finding.accepted"_key,
      {{"finding", preheat()}, {"by", "w. e."}, {"date", "2026-11-25"}, {"why", "tried"}});
  for (const Sentence& sentence :
       {preheat(), accepted, Sentence("Heat input"_word), Sentence::verbatim("a person's words")}) {
    const Sentence again = read_back(sentence_json(sentence));
    EXPECT_EQ(sentence_json(again), sentence_json(sentence));
    EXPECT_EQ(sentence_text(again, TextView(german())), sentence_text(sentence, TextView(german())));
  }
}

TEST(SentenceJson, what_a_stranger_wrote_is_shown_as_its_text) {
  std::string nested = "{\"sentence\": \"preheat.below-needed\", \"arguments\": {}}";
  for (int i = 0; i < 15; ++i)
    nested =
        "{\"sentence\": \"finding.accepted\", \"arguments\": {\"by\": \"a\", \"date\": \"b\", \"why\": "
        "\"c\", \"finding\": [" +
        nested + "]}}";
  for (const std::string& body :
       {std::string("{}"), std::string("[]"), std::string("{\"sentence\": 5, \"arguments\": {}}"),
        std::string("{\"sentence\": \"no.such\", \"arguments\": {}}"),
        std::string("{\"sentence\": \"preheat.below-needed\", \"arguments\": []}"),
        std::string("{\"sentence\": \"preheat.below-needed\", \"arguments\": {\"given\": 20}}"),
        std::string("{\"sentence\": null, \"arguments\": {\"text\": 20}}"), nested})
    EXPECT_EQ(read_back(body).english(), "as it was") << body;
}

TEST(LanguageTest, is_refused_where_its_table_is_damaged) {
  const auto refusal = [](const std::string& json) -> std::string {
    try {
      Language language("xx", json, "xx.json");
    } catch (const InputError& error) {
      return error.what();
    }
    return "taken";
  };
  EXPECT_NE(refusal("{\"name\": \"X\"}").find("/sentences"), std::string::npos);
  EXPECT_NE(
      refusal("{\"name\": \"X\", \"sentences\": {\"a\": \"{b\"}, \"words\": {}}").find("a hole that ends"),
      std::string::npos);
  EXPECT_NE(refusal("{\"name\": \"X\", \"sentences\": {\"a\": 1}, \"words\": {}}").find("a text"),
            std::string::npos);
  EXPECT_EQ(refusal("{\"name\": \"X\", \"sentences\": {\"a\": \"{b:number} {b|one|many}\"}, \"words\": {}}"),
            "taken");
}

TEST(LanguageTest, has_its_code_from_its_file_and_no_path_gets_through) {
  EXPECT_EQ(find_language("de")->name(), "Deutsch");
  for (const char* code : {"", "xx", "../de", "de.json", "DE"})
    EXPECT_EQ(find_language(code), nullptr) << code;
  const auto codes = language_codes();
  EXPECT_NE(std::find(codes.begin(), codes.end(), "en"), codes.end());
}

}  // namespace
}  // namespace seamtakt
