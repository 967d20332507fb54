// Headings are named by their English text: each language must have a word for them.
#include <gtest/gtest.h>

#include "base/sentences/language.hpp"
#include "line/line_columns.hpp"

namespace seamtakt::test {
namespace {

template <class Row>
void expect_words(std::span<const Column<Row>> columns) {
  for (const std::string& code : language_codes()) {
    if (code == english().code()) continue;
    for (const auto& column : columns)
      for (const std::string_view text : {column.label, column.heading(), column.help})
        if (!text.empty()) {
          EXPECT_TRUE(find_language(code)->known_word(text)) << code << ": " << text;
        }
  }
}

TEST(LineHeadings, EveryLanguageHasThem) {
  expect_words(line_columns());
  expect_words(stage_columns());
  expect_words(unit_columns());
  expect_words(waiting_columns());
  expect_words(figures_columns(true));
  expect_words(improvement_columns(true));
}

}  // namespace
}  // namespace seamtakt::test
