// Headings and legends are named by their English text: each language must have a word for them.
#include <gtest/gtest.h>

#include "base/sentences/language.hpp"
#include "cell/timeline/cycle_columns.hpp"
#include "cell/timeline/move_look.hpp"

namespace seamtakt::test {
namespace {

std::vector<const Language*> translations() {
  std::vector<const Language*> languages;
  for (const std::string& code : language_codes())
    if (code != english().code()) languages.push_back(find_language(code));
  return languages;
}

template <class Row>
void expect_words(const Language& language, std::span<const Column<Row>> columns) {
  for (const auto& column : columns)
    for (const std::string_view text : {column.label, column.heading(), column.help})
      if (!text.empty()) {
        EXPECT_TRUE(language.known_word(text)) << language.code() << ": " << text;
      }
}

TEST(CycleHeadings, EveryLanguageHasThem) {
  ASSERT_FALSE(translations().empty());
  for (const Language* language : translations()) {
    expect_words(*language, cycle_columns());
    expect_words(*language, move_columns());
  }
}

TEST(MoveLook, EveryLanguageHasItsLegend) {
  for (const Language* language : translations())
    for (const MoveLook& look : move_looks)
      EXPECT_TRUE(language->known_word(look.legend)) << language->code() << ": " << look.legend;
}

TEST(MoveKinds, HaveTheContractsWordInEnglish) {
  for (const MoveLook& look : move_looks) EXPECT_EQ(kind_sentence(look.kind).english(), to_string(look.kind));
}

}  // namespace
}  // namespace seamtakt::test
