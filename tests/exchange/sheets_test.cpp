// Tables that leave the program: text stays text, and each row tells where it is from.
#include <gtest/gtest.h>

#include <string>

#include "exchange/sheets/sheet.hpp"

namespace seamtakt {
namespace {

Sheet small_sheet(const std::string& text) {
  Sheet sheet;
  sheet.name = "passes";
  sheet.columns = {{"seam", {"Seam"_word}}, {"heat_input_kJ_mm", {"Heat input"_word, "kJ/mm"}}};
  sheet.rows = {{text, 0.8125}, {std::string("S2"), SheetCell()}};
  return sheet;
}

const SheetOrigin origin = {{"plan", "frame.weldplan.json", "Plan"_word}};

TEST(SheetCsv, has_the_keys_as_header_and_its_origin_in_each_row) {
  EXPECT_EQ(sheet_csv(small_sheet("S1"), origin),
            "seam,heat_input_kJ_mm,plan\r\n"
            "S1,0.8125,frame.weldplan.json\r\n"
            "S2,,frame.weldplan.json\r\n");
}

TEST(SheetCsv, quotes_what_would_part_a_field) {
  EXPECT_NE(sheet_csv(small_sheet("a,\"b\"\r\nc"), origin).find("\"a,\"\"b\"\"\r\nc\",0.8125"),
            std::string::npos);
}

TEST(SheetCsv, guards_text_that_a_spreadsheet_would_compute) {
  for (const std::string text : {"=1+1", "+A1", "-A1", "@SUM(A1)"})
    EXPECT_NE(sheet_csv(small_sheet(text), origin).find("\r\n'" + text), std::string::npos) << text;
}

TEST(SheetXlsx, is_a_zip_archive_whose_text_is_no_formula) {
  const std::string workbook =
      sheets_xlsx({small_sheet("=1+1")}, "Title"_word, origin, TextView::plain_english());
  ASSERT_GT(workbook.size(), 100u);
  EXPECT_EQ(workbook.substr(0, 4), "PK\x03\x04");
  EXPECT_NE(workbook.find("xl/worksheets/sheet1.xml"), std::string::npos);
}

}  // namespace
}  // namespace seamtakt
