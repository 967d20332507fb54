#include "base/error.hpp"

#include <gtest/gtest.h>

#include "base/finding.hpp"

using namespace seamtakt;

TEST(InputErrorTest, states_place_found_expected_and_pointer_in_one_line) {
  const InputError error("a.json:3:7", "\"x\"", "a number", "/cell/robots/0");
  EXPECT_STREQ(error.what(), "a.json:3:7: found \"x\", expected a number (at /cell/robots/0)");
  EXPECT_EQ(error.where(), "a.json:3:7");
  EXPECT_EQ(error.found().english(), "\"x\"");
  EXPECT_EQ(error.expected().english(), "a number");
  EXPECT_EQ(error.pointer(), "/cell/robots/0");
}

TEST(InputErrorTest, leaves_out_what_is_empty) {
  EXPECT_STREQ(InputError("--x", "nothing", "a value").what(), "--x: found nothing, expected a value");
  EXPECT_STREQ(InputError("", "nothing", "").what(), "found nothing");
}

TEST(InputErrorTest, message_stays_one_line_whatever_a_file_holds) {
  const std::string line = InputError("a\nb", "x\r\n\x1b[31m", "y\xe2\x80\xa8z").what();
  EXPECT_EQ(line, "a\\x0Ab: found x\\x0D\\x0A\\x1B[31m, expected y\\u{2028}z");
}

TEST(PrintableTest, keeps_text_and_escapes_control_bytes) {
  EXPECT_EQ(printable("Größe 5 mm\u00b2"), "Größe 5 mm²");
  EXPECT_EQ(printable(std::string_view("a\0b\x7f\t", 5)), "a\\x00b\\x7F\\x09");
}

TEST(PrintableTest, escapes_bytes_that_are_not_utf8) {
  EXPECT_EQ(printable("a\xff\xc3z"), "a\\xFF\\xC3z");
  EXPECT_EQ(printable("\xc0\xaf"), "\\xC0\\xAF");           // overlong '/'
  EXPECT_EQ(printable("\xed\xa0\x80"), "\\xED\\xA0\\x80");  // surrogate
  EXPECT_EQ(printable("\xf4\x90\x80\x80"), "\\xF4\\x90\\x80\\x80");
}

TEST(PrintableTest, escapes_characters_that_reorder_a_line) {
  EXPECT_EQ(printable("a\u202egpj.exe"), "a\\u{202E}gpj.exe");
  EXPECT_EQ(printable("\u2066x\u2069\u200f\u061c\ufeff\u009b"),
            "\\u{2066}x\\u{2069}\\u{200F}\\u{061C}\\u{FEFF}\\u{009B}");
}

TEST(PrintableTest, cuts_long_text_between_characters) {
  EXPECT_EQ(printable(std::string(500, 'a'), 10), "aaaaaaaaaa...");
  EXPECT_EQ(printable("aaäää", 5), "aaä...");
  EXPECT_EQ(printable("aaaaa", 5), "aaaaa");
}

TEST(PrintableTest, is_the_same_when_applied_twice) {
  const std::string once = printable("a\x01\xff\u202e", 100);
  EXPECT_EQ(printable(once, 100), once);
}

TEST(PrintableTest, shows_what_cannot_be_seen) {
  EXPECT_EQ(printable("a\u200bb\u2060c\u200dd\u00ade"), "a\\u{200B}b\\u{2060}c\\u{200D}d\\u{00AD}e");
  EXPECT_EQ(printable("\u3164\U000e0041"), "\\u{3164}\\u{E0041}");
}

TEST(PrintableTest, keeps_the_lines_of_a_long_text) {
  EXPECT_EQ(printable_lines("a\nb\x1b[1m\r\n\u202ec\t"), "a\nb\\x1B[1m\\x0D\n\\u{202E}c\\x09");
  const std::string plain(100'000, 'x');
  EXPECT_EQ(printable_lines(plain), plain);
}

TEST(FindingTest, only_fail_counts_as_failed) {
  Findings findings(2);
  findings[0].severity = Severity::note;
  findings[1].severity = Severity::warn;
  EXPECT_FALSE(any_failed(findings));
  EXPECT_FALSE(any_failed({}));
  findings.push_back({.rule = "x",
                      .severity = Severity::fail,
                      .where = {},
                      .value = {},
                      .limit = {},
                      .unit = {},
                      .sentence = {},
                      .source = {}});
  EXPECT_TRUE(any_failed(findings));
}

TEST(FindingTest, severities_have_the_names_of_the_json_result) {
  EXPECT_STREQ(to_string(Severity::note), "note");
  EXPECT_STREQ(to_string(Severity::warn), "warn");
  EXPECT_STREQ(to_string(Severity::fail), "fail");
}
