#include "base/csv/csv.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/text/utf8.hpp"

using namespace seamtakt;
using namespace std::string_view_literals;

namespace {

std::string csv_refusal(std::string_view text, const CsvLimits& limits = {}) {
  try {
    parse_csv(text, "t.csv", limits);
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

using Fields = std::vector<std::string>;

}  // namespace

TEST(CsvTest, reads_a_table_with_its_lines) {
  const CsvTable table = parse_csv("part,quantity\nP-1,2\n\nP-2,\"3\"\n", "t.csv");
  EXPECT_EQ(table.delimiter, ',');
  EXPECT_EQ(table.header, (Fields{"part", "quantity"}));
  ASSERT_EQ(table.rows.size(), 2u);
  EXPECT_EQ(table.rows[0].fields, (Fields{"P-1", "2"}));
  EXPECT_EQ(table.rows[0].line, 2u);
  EXPECT_EQ(table.rows[1].line, 4u);
}

TEST(CsvTest, finds_the_delimiter_from_the_header) {
  EXPECT_EQ(parse_csv("a;b\n1,5;2,5\n", "t").rows[0].fields, (Fields{"1,5", "2,5"}));
  EXPECT_EQ(parse_csv("a\tb\n1,5\t2;5\n", "t").rows[0].fields, (Fields{"1,5", "2;5"}));
  EXPECT_EQ(parse_csv("\"a;;;\",b\n1,2\n", "t").delimiter, ',');
  EXPECT_EQ(parse_csv("\n\na;b\n1;2\n", "t").delimiter, ';');
  EXPECT_EQ(parse_csv("part\nP-1\n", "t").rows[0].fields, Fields{"P-1"});
}

TEST(CsvTest, takes_crlf_byte_order_mark_and_a_missing_last_newline) {
  const CsvTable table = parse_csv("\xef\xbb\xbfpart,quantity\r\nP-1,2\nP-2,3", "t");
  EXPECT_EQ(table.header[0], "part");
  EXPECT_EQ(table.rows.size(), 2u);
  EXPECT_EQ(table.rows[0].fields[1], "2");
  EXPECT_EQ(table.rows[1].fields[1], "3");
}

TEST(CsvTest, quoted_fields_hold_delimiters_quotes_and_lines) {
  const CsvTable table = parse_csv("a,b\n\"1,\"\"x\"\"\",\"l1\r\nl2\"\n3,4\n", "t");
  EXPECT_EQ(table.rows[0].fields, (Fields{"1,\"x\"", "l1\r\nl2"}));
  EXPECT_EQ(table.rows[1].line, 4u);
  EXPECT_EQ(parse_csv("size,b\n1/2\" plate,2\n", "t").rows[0].fields[0], "1/2\" plate");
  EXPECT_EQ(parse_csv("a,b\n\"\",\n", "t").rows[0].fields, (Fields{"", ""}));
}

TEST(CsvTest, columns_are_found_without_regard_to_case_and_blanks_around) {
  const CsvTable table = parse_csv("Unit_Serial, Weldment \nU1,W\n", "t.csv");
  EXPECT_EQ(table.column("unit_serial"), 0);
  EXPECT_EQ(table.require("WELDMENT"), 1u);
  EXPECT_EQ(table.column("due"), -1);
  try {
    table.require("due");
    FAIL();
  } catch (const InputError& error) {
    EXPECT_STREQ(error.what(),
                 "t.csv:1:1: found the columns Unit_Serial, Weldment, expected a column \"due\"");
  }
}

TEST(CsvTest, says_what_is_wrong_and_where) {
  EXPECT_EQ(csv_refusal(""), "t.csv: found an empty file, expected a header row");
  EXPECT_EQ(csv_refusal("\xef\xbb\xbf\r\n\n"), "t.csv: found an empty file, expected a header row");
  EXPECT_EQ(csv_refusal("a,b\n1,\"x\n2,3\n"),
            "t.csv:2:3: found a quote that is never closed, expected a closing quote");
  EXPECT_EQ(csv_refusal("a,b\n1,\"x\"y\n"),
            "t.csv:2:6: found text after a closing quote, expected a delimiter or the end of the line");
  EXPECT_EQ(csv_refusal("a,b\n1,2\n1\n"), "t.csv:3:1: found 1 field, expected 2 as in the header");
  EXPECT_EQ(csv_refusal("a,b\n1,2,3\n"), "t.csv:2:1: found 3 fields, expected 2 as in the header");
  EXPECT_EQ(csv_refusal("a,b,A\n"), "t.csv:1:1: found the column \"A\" twice, expected each column once");
  EXPECT_EQ(csv_refusal("a,b\n1,\0\n"sv), "t.csv:2:3: found the byte NUL, expected text in UTF-8");
  EXPECT_EQ(csv_refusal("a,b\nää\xff,1\n"),
            "t.csv:2:3: found a byte that isn't UTF-8, expected text in UTF-8");
  EXPECT_EQ(csv_refusal("a,b\n1,\xc0\xaf\n"),
            "t.csv:2:3: found a byte that isn't UTF-8, expected text in UTF-8");
  EXPECT_EQ(csv_refusal("a,b\r1,2\r"),
            "t.csv:1:4: found a carriage return without a line feed, expected lines that end in LF or CRLF");
}

TEST(CsvTest, names_files_that_are_no_tables) {
  EXPECT_NE(csv_refusal("\xff\xfe"
                        "a\0,\0b\0"sv)
                .find("UTF-16"),
            std::string::npos);
  EXPECT_NE(csv_refusal("\x1f\x8b\x08\0\0"sv).find("gzip"), std::string::npos);
  EXPECT_NE(csv_refusal("PK\x03\x04\x14\0"sv).find("spreadsheet"), std::string::npos);
}

TEST(CsvTest, nameless_columns_may_repeat) {
  EXPECT_EQ(csv_refusal("a,b,,\n1,2,,\n"), "accepted");
}

TEST(CsvTest, keeps_to_its_limits) {
  const std::string long_field(4096, 'x');
  EXPECT_EQ(csv_refusal("a,b\n" + long_field + ",1\n"), "accepted");
  EXPECT_NE(csv_refusal("a,b\n" + long_field + "x,1\n").find("a field of more than 4096 bytes"),
            std::string::npos);
  EXPECT_NE(csv_refusal("a,b\n\"" + long_field + "x\",1\n").find("a field of more than 4096 bytes"),
            std::string::npos);
  std::string wide = "a";
  for (int i = 1; i < 256; ++i) wide += ",a" + std::to_string(i);
  EXPECT_EQ(csv_refusal(wide + "\n"), "accepted");
  EXPECT_NE(csv_refusal(wide + ",b\n").find("more than 256 fields"), std::string::npos);
  CsvLimits limits;
  limits.record_bytes = 20;
  EXPECT_NE(csv_refusal("a,b\n0123456789,01234567890\n", limits).find("a row of more than 20 bytes"),
            std::string::npos);
}

TEST(CsvTest, an_absent_file_and_a_folder_are_bad_input) {
  EXPECT_THROW(read_csv("/nonexistent/table.csv"), InputError);
  EXPECT_THROW(read_csv("/tmp"), InputError);
}

TEST(ParseNumberTest, takes_finite_numbers) {
  double value = 0;
  EXPECT_TRUE(parse_number("250", value) && value == 250);
  EXPECT_TRUE(parse_number("-2.5e1", value) && value == -25);
  EXPECT_TRUE(parse_number("+250", value) && value == 250);
  EXPECT_TRUE(parse_number(".5", value) && value == 0.5);
  EXPECT_TRUE(parse_number("24,8", value, true) && value == 24.8);
  EXPECT_TRUE(parse_number("24.8", value, true) && value == 24.8);
}

TEST(ParseNumberTest, refuses_anything_else_and_leaves_the_value_alone) {
  double value = 42;
  for (const char* text : {"", " 5", "5 ", "nan", "inf", "-inf", "1e999", "0x10", "1,250.0", "5A", "--5",
                           "+-5", "+", "1 2", "1e"}) {
    EXPECT_FALSE(parse_number(text, value)) << text;
    EXPECT_FALSE(parse_number(text, value, true)) << text;
  }
  EXPECT_FALSE(parse_number("24,8", value));
  EXPECT_FALSE(parse_number("1.250,5", value, true));
  EXPECT_FALSE(parse_number("1,250,5", value, true));
  EXPECT_EQ(value, 42);
}

TEST(CsvFieldTest, guards_what_a_spreadsheet_would_take_for_a_formula) {
  EXPECT_EQ(csv_field("=1+1"), "'=1+1");
  EXPECT_EQ(csv_field("@SUM(A1)"), "'@SUM(A1)");
  EXPECT_EQ(csv_field("+cmd|' /C calc'!A0"), "'+cmd|' /C calc'!A0");
  EXPECT_EQ(csv_field("-x"), "'-x");
  EXPECT_EQ(csv_field("  =1"), "\"'  =1\"");
  EXPECT_EQ(csv_field("\t=1"), "\"'\t=1\"");
  EXPECT_EQ(csv_field("-5.5"), "-5.5");
  EXPECT_EQ(csv_field("+5"), "+5");
  EXPECT_EQ(csv_field("BD-2/S03"), "BD-2/S03");
}

TEST(CsvFieldTest, guards_signs_of_full_width_and_wide_blanks_before_a_sign) {
  for (const std::string text : {"\uFF1D1+1", "\uFF0BA1", "\uFF0DA1", "\uFF20SUM(A1)", "\u3000=1+1",
                                 "\u00A0\uFF1DA1", "\u3000\uFF0D1"})
    EXPECT_EQ(csv_field(text), "'" + text);
  for (const std::string text : {"a\uFF1D1", "\uFF21", "1\uFF0B1", "\u3000a", "\xEF\xBC"})
    EXPECT_EQ(csv_field(text), text);
}

TEST(CsvFieldTest, a_guarded_text_is_read_as_it_was) {
  for (const std::string text : {"=1+1", "-x", "@a,b", "it's", "'a", "-5.5", "", "'"}) {
    const CsvTable table = parse_csv("a,b\n" + csv_field(text) + ",1\n", "t.csv");
    EXPECT_EQ(csv_unguarded(table.rows[0].fields[0]), text);
  }
}

TEST(CsvFieldTest, quotes_where_a_reader_needs_it) {
  EXPECT_EQ(csv_field("a,b"), "\"a,b\"");
  EXPECT_EQ(csv_field("a\"b"), "\"a\"\"b\"");
  EXPECT_EQ(csv_field("a\nb"), "\"a\nb\"");
  EXPECT_EQ(csv_field(""), "");
}

RC_GTEST_PROP(CsvProperty, fields_come_back_from_the_reader, (std::vector<std::string> texts)) {
  RC_PRE(!texts.empty() && texts.size() < 200);
  std::string header, row;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    for (char& c : texts[i]) {
      if (c == '\0' || static_cast<unsigned char>(c) >= 0x80) c = ',';
    }
    header.append(i ? ",c" : "c").append(std::to_string(i));
    row.append(i ? "," : "").append(csv_field(texts[i]));
  }
  // A row without text is a blank line to any reader.
  RC_PRE(!row.empty());
  const CsvTable table = parse_csv(header + "\r\n" + row + "\r\n", "t",
                                   {.field_bytes = 1u << 20, .record_bytes = 1u << 24, .columns = 256});
  RC_ASSERT(table.rows.size() == 1u);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const std::string& field = table.rows[0].fields[i];
    RC_ASSERT(field == texts[i] || field == std::string("'").append(texts[i]));
  }
}

RC_GTEST_PROP(CsvProperty, random_bytes_are_parsed_or_refused_cleanly, ()) {
  const auto text =
      *rc::gen::container<std::string>(rc::gen::elementOf(std::string("a1,;\t\"\r\n\"\",\n\xc3\xa4 =")));
  try {
    const CsvTable table = parse_csv(text, "t");
    for (const CsvRow& row : table.rows) RC_ASSERT(row.fields.size() == table.header.size());
  } catch (const InputError& error) {
    RC_ASSERT(!error.where().empty());
  }
}

/// A copy of the tables may have been through a checkout that turns CRLF into LF.
std::string with_lf(std::string text) {
  for (std::size_t at = 0; (at = text.find("\r\n", at)) != std::string::npos;) text.erase(at, 1);
  return text;
}

// github.com/maxogden/csv-spectrum: each table with the records that it represents.
TEST(CsvSpectrum, tables_hold_the_records_that_come_with_them) {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  if (!folder) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA isn't set: the files of csv-spectrum are not at hand";
  const std::string root = std::string(folder) + "/parsers/csv-spectrum/";
  int tried = 0;
  for (const auto& entry : std::filesystem::directory_iterator(root + "csvs")) {
    const std::string expected_path = root + "json/" + entry.path().stem().string() + ".json";
    if (!std::filesystem::exists(expected_path)) continue;
    ++tried;
    const CsvTable table = read_csv(entry.path());
    const JsonNode expected = parse_json(read_file(expected_path, 1u << 20), expected_path);
    ASSERT_EQ(table.rows.size(), expected.elements.size()) << entry.path();
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
      for (const auto& [name, value] : expected.elements[i].members) {
        EXPECT_EQ(with_lf(table.rows[i].fields[table.require(name)]), with_lf(value.string))
            << entry.path() << " row " << i;
      }
    }
  }
  EXPECT_GE(tried, 8);
}

TEST(Csv, the_delimiter_is_what_the_first_line_has_most_of) {
  EXPECT_EQ(csv_delimiter("a;b;c,d"), ';');
  EXPECT_EQ(csv_delimiter("a\tb\tc;d"), '\t');
  EXPECT_EQ(csv_delimiter("a,b;c\td"), ',') << "of equals the first";
  EXPECT_EQ(csv_delimiter("a;b\tc"), ';');
  EXPECT_EQ(csv_delimiter("\"a;b;c\",d"), ',') << "not within quotes";
  EXPECT_EQ(csv_delimiter("\r\n\na;b\n1,2,3,4"), ';') << "of the first line that isn't blank";
  EXPECT_EQ(csv_delimiter("one"), ',');
  EXPECT_EQ(csv_delimiter(""), ',');
}
