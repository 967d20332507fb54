#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>

#include "base/error.hpp"
#include "base/limits.hpp"
#include "base/text/spelling_suggestion.hpp"
#include "base/text/text_table.hpp"
#include "base/text/utf8.hpp"

using namespace seamtakt;

TEST(NearestTest, finds_the_key_that_was_meant) {
  constexpr std::array<std::string_view, 6> keys = {"leg_mm", "throat_mm",  "travel_speed_mm_s",
                                                    "gap_mm", "gap_max_mm", "by"};
  EXPECT_EQ(spelling_suggestion("lge_mm", keys), "leg_mm");
  EXPECT_EQ(spelling_suggestion("Leg_MM", keys), "leg_mm");
  EXPECT_EQ(spelling_suggestion("travel_speed", keys), "travel_speed_mm_s");
  EXPECT_EQ(spelling_suggestion("travelspeed_mm_s", keys), "travel_speed_mm_s");
  EXPECT_EQ(spelling_suggestion("gap_mx_mm", keys), "gap_max_mm");
  EXPECT_EQ(spelling_suggestion("bx", keys), "by");
  EXPECT_EQ(spelling_suggestion("leg_mm", keys), "leg_mm");
}

TEST(NearestTest, finds_nothing_where_nothing_is_near) {
  constexpr std::array<std::string_view, 3> keys = {"leg_mm", "id", "x"};
  EXPECT_EQ(spelling_suggestion("colour", keys), "");
  EXPECT_EQ(spelling_suggestion("", keys), "");
  EXPECT_EQ(spelling_suggestion(std::string(100000, 'l'), keys), "");
  EXPECT_EQ(spelling_suggestion("leg_mm", {}), "");
}

TEST(NearestTest, takes_the_first_of_equals) {
  constexpr std::array<std::string_view, 2> keys = {"leg_b", "leg_a"};
  EXPECT_EQ(spelling_suggestion("leg_x", keys), "leg_b");
}

TEST(EditDistanceTest, counts_edits) {
  EXPECT_EQ(edit_distance("", ""), 0u);
  EXPECT_EQ(edit_distance("abc", ""), 3u);
  EXPECT_EQ(edit_distance("", "abc"), 3u);
  EXPECT_EQ(edit_distance("leg", "lge"), 1u);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(edit_distance("ca", "abc"), 3u);  // the restricted form: no piece is edited twice
}

RC_GTEST_PROP(EditDistanceProperty, is_symmetric_and_at_most_the_longer_length,
              (std::string a, std::string b)) {
  const std::size_t distance = edit_distance(a, b);
  RC_ASSERT(distance == edit_distance(b, a));
  RC_ASSERT(distance <= std::max(a.size(), b.size()));
  RC_ASSERT((distance == 0) == (a == b));
}

TEST(Utf8Test, accepts_and_refuses_the_borders_of_each_length) {
  for (char32_t code : {0x1u, 0x7fu, 0x80u, 0x7ffu, 0x800u, 0xd7ffu, 0xe000u, 0xffffu, 0x10000u, 0x10ffffu}) {
    const std::string bytes = utf8_bytes(code);
    const Utf8Character character = utf8_character(bytes, 0);
    EXPECT_EQ(character.code, code);
    EXPECT_EQ(character.bytes, bytes.size());
  }
  for (const char* bad : {"\x80", "\xbf", "\xc0\x80", "\xc1\xbf", "\xe0\x9f\xbf", "\xed\xa0\x80",
                          "\xed\xbf\xbf", "\xf0\x8f\xbf\xbf", "\xf4\x90\x80\x80", "\xf5\x80\x80\x80", "\xfe",
                          "\xff", "\xc3", "\xe2\x82", "\xf0\x9f\x98", "\xc3(", "\xe2\x28\xa1"}) {
    EXPECT_EQ(utf8_character(bad, 0).bytes, 0u) << printable(bad);
    EXPECT_EQ(first_invalid_utf8(std::string("ok") + bad), 2u) << printable(bad);
  }
  EXPECT_EQ(first_invalid_utf8("Größe ✓ 😀"), std::string_view::npos);
}

TEST(Utf8Test, display_width_counts_columns) {
  EXPECT_EQ(display_width("abc"), 3u);
  EXPECT_EQ(display_width("Größe"), 5u);
  EXPECT_EQ(display_width("e\u0301"), 1u);
  EXPECT_EQ(display_width("溶接"), 4u);
  EXPECT_EQ(display_width("\xff"), 1u);
}

TEST(TextTableTest, aligns_numbers_by_their_decimals) {
  TextTable table({{"seam", "", true}, {"leg", "mm"}, {"heat input", "kJ/mm"}, {"passes", ""}});
  table.cell("S01").cell(6.25).cell(0.81336).cell(1);
  table.cell("S02").cell(10.0).cell(12.5).cell(12);
  table.cell("Größe").cell(std::optional<double>()).cell(120.0).cell(3);
  EXPECT_EQ(table.rows(), 3u);
  EXPECT_EQ(table.text(),
            "seam     leg  heat input  passes\n"
            "          mm       kJ/mm\n"
            "S01     6.25      0.8134       1\n"
            "S02    10        12.5         12\n"
            "Größe      -    120            3\n");
}

TEST(TextTableTest, leaves_out_the_row_of_units_where_there_are_none) {
  TextTable table({{"quantity", "", true}, {"value", ""}});
  table.cell("takt").cell(0);
  EXPECT_EQ(table.text(), "quantity  value\ntakt          0\n");
  EXPECT_EQ(TextTable({{"a", "", true}}).text(), "a\n");
}

TEST(TextTableTest, speaks_the_language_and_units_of_its_view) {
  const TextView view(*find_language("de"), UnitSystem::us);
  TextTable table({{"Seam"_word, "", true}, {"Leg"_word, "mm", false, 3}, {"Seam", "", true}, {"", "mm2"}},
                  view);
  table.cell("Seam").cell(25.4).cell("nothing"_word).cell(645.16);
  table.cell("S2").cell(std::array<double, 2>{2.54, 50.8}).cell(Sentence("nothing"_word));
  EXPECT_EQ(table.text(),
            "Naht   Schenkel  Seam\n"
            "             in          in²\n"
            "Seam          1  nichts    1\n"
            "S2    0.1 bis 2  nichts\n");
}

TEST(TextTableTest, names_from_files_can_not_break_a_line) {
  TextTable table({{"a", "", true}, {"b", "", true}});
  table.cell("x\n\x1b[31m").cell("y");
  EXPECT_EQ(table.text(), "a              b\nx\\x0A\\x1B[31m  y\n");
}

TEST(LimitsTest, lists_the_limits_in_force) {
  const std::string text = limits_text();
  for (const char* part : {"67108864", "64", "65536", "1000000", "4096", "256"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
}
