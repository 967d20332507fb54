// A report's values become text in one place; a page and files show the same tables.
#include <gtest/gtest.h>

#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/report_model.hpp"

namespace seamtakt {
namespace {

/// As files have it: English, SI.
const TextView& plain() {
  return TextView::plain_english();
}

TEST(CellText, of_numbers_has_the_digits_and_the_unit_that_they_state) {
  EXPECT_EQ(cell_text(Measure{8.123456, "mm/s", 3}, plain()), "8.12 mm/s");
  EXPECT_EQ(cell_text(Measure{8.123456, "mm/s"}, plain()), "8.123456 mm/s");
  EXPECT_EQ(cell_text(Measure{4, ""}, plain()), "4");
  EXPECT_EQ(cell_text(1.23456789, plain()), "1.2346");
  EXPECT_EQ(cell_text(1.23456789, plain(), {2}), "1.2");
  EXPECT_EQ(cell_text(std::monostate(), plain()), "-");
  EXPECT_EQ(cell_text(Pair{4.5, 6}, plain()), "4.5 to 6");
}

TEST(CellText, of_a_range_says_which_end_is_open) {
  EXPECT_EQ(cell_text(MeasureRange{4.5, 6.0, "mm"}, plain()), "4.5 to 6 mm");
  EXPECT_EQ(cell_text(MeasureRange{4.5, {}, "mm"}, plain()), "from 4.5 mm");
  EXPECT_EQ(cell_text(MeasureRange{{}, 6.0, "mm"}, plain()), "up to 6 mm");
  EXPECT_EQ(cell_text(MeasureRange{{}, {}, "mm"}, plain()), "not stated");
}

TEST(CellText, of_a_phrase_fills_its_holes_and_nothing_that_looks_like_one_in_a_value) {
  EXPECT_EQ(
      cell_text(PatternCell{"{1} ({2})"_word, {Measure{24, "V"}, MeasureRange{22.0, 26.0, "V"}}}, plain()),
      "24 V (22 to 26 V)");
  EXPECT_EQ(cell_text(PatternCell{"{2}, {1}"_word, {std::string("{2}"), std::string("b")}}, plain()),
            "b, {2}");
  EXPECT_EQ(cell_text(PatternCell{"{3} {x} {"_word, {std::string("a")}}, plain()), "{3} {x} {");
}

TEST(FileText, has_all_digits_and_leaves_an_empty_cell_empty) {
  EXPECT_EQ(file_text(std::monostate(), plain()), "");
  EXPECT_EQ(file_text(1.23456789, plain()), "1.23456789");
  EXPECT_EQ(file_text("yes"_word, plain()), "yes");
}

Sheet table() {
  Sheet sheet{"seams",
              {{"seam", {"Seam"_word}, 0},
               {"span_s", {"Span"_word, "s"}, 3},
               {"preheat_C", {"Preheat"_word, "C"}, 3, true, 20},
               {"note", {"Note"_word}, 0, false}},
              {}};
  sheet.rows = {{std::string("S1"), Pair{4.12345, 6}, 15.0, std::string("a")},
                {std::string("S2"), SheetCell(), 80.04, std::string("b")}};
  return sheet;
}

TEST(ShownTable, has_the_brief_columns_rounded_and_what_is_no_more_than_the_shop_as_none) {
  const ShownTable shown = shown_table(table(), plain());
  EXPECT_EQ(shown.head, (std::vector<std::string>{"Seam", "Span, s", "Preheat, C"}));
  EXPECT_EQ(shown.numeric, (std::vector<bool>{false, true, true}));
  EXPECT_EQ(shown.rows[0], (std::vector<std::string>{"S1", "4.12 to 6", "none"}));
  EXPECT_EQ(shown.rows[1], (std::vector<std::string>{"S2", "-", "80"}));
}

TEST(SheetCsv, has_all_columns_a_pair_in_two_of_them_and_all_digits) {
  EXPECT_EQ(sheet_csv(table(), {{"plan", "p"}}),
            "seam,span_s_lo,span_s_hi,preheat_C,note,plan\r\n"
            "S1,4.12345,6,15,a,p\r\n"
            "S2,,,80.04,b,p\r\n");
  EXPECT_EQ(column_heading_text(with_pairs_apart(table()).columns[2], plain()), "Span, s (high)");
}

Report small_report() {
  Report report{std::string("A <b> & c"), {}};
  report.add(ParagraphBlock{"Careful."_word, ParagraphBlock::Look::caution});
  for (Block& block : titled_table("Seams"_word, table())) report.add(std::move(block));
  for (Block& block : titled_table("Empty"_word, {"empty", {}, {}})) report.add(std::move(block));
  report.add(ItemsBlock{{{Heading{"Arc time"_word, "s"}, 12.5}}});
  report.add(GroupBlock{GroupBlock::Kind::whole, {CodeBlock{"Anchor"_word, {"0001", "0002"}}}});
  report.add(SignBlock{{"Drafted"_word, "Checked"_word}});
  return report;
}

TEST(ReportPage, writes_each_block_and_escapes_text) {
  const std::string page = report_page(small_report(), plain());
  for (const char* part :
       {"<html lang=\"en\">", "<title>A &lt;b&gt; &amp; c</title>", "<h1>A &lt;b&gt; &amp; c</h1>",
        "<p class=\"caution\">Careful.</p>",
        "<h2>Seams</h2>\n<table><thead><tr><th class=\"w\">Seam</th><th class=\"n\">Span, s</th>",
        "<td class=\"w\">S1</td><td class=\"n\">4.12 to 6</td><td class=\"n\">none</td>",
        "<h2>Empty</h2>\n<p>None.</p>", "<dt>Arc time, s</dt><dd>12.5</dd>",
        "<section>\n<dl><dt>Anchor</dt><dd><div class=\"code\">0001<br>0002</div></dd>",
        "<div class=\"sign\"><div>Drafted</div><div>Checked</div></div>"})
    EXPECT_NE(page.find(part), std::string::npos) << part << "\n" << page;
}

/// In English and SI a page is what it was before it had a view, to the byte.
TEST(ReportPage, has_the_same_bytes_as_ever_where_nothing_is_asked_for) {
  const std::string page = report_page(small_report(), plain());
  EXPECT_EQ(
      page.substr(page.find("<body>")),
      "<body>\n<h1>A &lt;b&gt; &amp; c</h1>\n<p class=\"caution\">Careful.</p>\n<h2>Seams</h2>\n"
      "<table><thead><tr><th class=\"w\">Seam</th><th class=\"n\">Span, s</th>"
      "<th class=\"n\">Preheat, C</th></tr></thead><tbody>\n"
      "<tr><td class=\"w\">S1</td><td class=\"n\">4.12 to 6</td><td class=\"n\">none</td></tr>\n"
      "<tr><td class=\"w\">S2</td><td class=\"n\">-</td><td class=\"n\">80</td></tr>\n"
      "</tbody></table>\n<h2>Empty</h2>\n<p>None.</p>\n"
      "<dl><dt>Arc time, s</dt><dd>12.5</dd>\n</dl>\n"
      "<section>\n<dl><dt>Anchor</dt><dd><div class=\"code\">0001<br>0002</div></dd>\n</dl>\n</section>\n"
      "<div class=\"sign\"><div>Drafted</div><div>Checked</div></div>\n</body></html>\n");
}

}  // namespace
}  // namespace seamtakt
