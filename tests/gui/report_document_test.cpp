#include "app/report_document.hpp"

#include <gtest/gtest.h>

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QPainter>
#include <QPdfWriter>
#include <QTextBlock>
#include <QTextTable>

namespace seamtakt::desk {
namespace {

Sheet sheet_of(int rows, const std::string& text) {
  Sheet sheet{"seams", {{"seam", {"Seam"_word}, 0}, {"heat", {"Heat input"_word, "kJ/mm"}, 3}}, {}};
  for (int i = 0; i < rows; ++i) sheet.rows.push_back({text, 0.8126});
  return sheet;
}

std::vector<QTextTable*> tables_of(const QTextDocument& document) {
  std::vector<QTextTable*> tables;
  for (QTextFrame* frame : document.rootFrame()->childFrames())
    if (auto* table = qobject_cast<QTextTable*>(frame)) tables.push_back(table);
  return tables;
}

TEST(ReportDocument, HasTitlesAsHeadingsAndRepeatsTheHeadOfATable) {
  Report report{std::string("Plan"), {}};
  for (Block& block : titled_table("Seams"_word, sheet_of(3, "S1"))) report.add(std::move(block));
  const ReportDocument document(report, TextView::plain_english());
  EXPECT_EQ(document.begin().text(), "Plan");
  EXPECT_EQ(document.begin().blockFormat().headingLevel(), 1);
  EXPECT_EQ(document.begin().next().text(), "Seams");
  EXPECT_EQ(document.begin().next().blockFormat().headingLevel(), 2);
  ASSERT_EQ(tables_of(document).size(), 1u);
  const QTextTable& table = *tables_of(document)[0];
  EXPECT_EQ(table.rows(), 4);
  EXPECT_EQ(table.format().toTableFormat().headerRowCount(), 1);
  EXPECT_EQ(table.cellAt(0, 1).firstCursorPosition().block().text(), "Heat input, kJ/mm");
  EXPECT_EQ(table.cellAt(1, 1).firstCursorPosition().block().text(), "0.813");
}

TEST(ReportDocument, SpeaksTheLanguageAndUnitsOfItsView) {
  Report report{"Weld plan"_word,
                {TableBlock{sheet_of(1, "S1")}, SignBlock{{"Checked"_word, "Approved"_word}}}};
  const ReportDocument document(report, TextView(*find_language("de"), UnitSystem::us));
  EXPECT_EQ(document.begin().text(), "Plan der Schweißungen");
  EXPECT_EQ(document.metaInformation(QTextDocument::DocumentTitle), "Plan der Schweißungen");
  const QTextTable& table = *tables_of(document)[0];
  EXPECT_EQ(table.cellAt(0, 1).firstCursorPosition().block().text(), "Wärmeeinbringung, kJ/in");
  EXPECT_EQ(table.cellAt(1, 1).firstCursorPosition().block().text(), "20.6");
  EXPECT_TRUE(document.toPlainText().contains("Freigegeben"));
}

TEST(ReportDocument, ANumberStaysOnOneLineAndToTheRight) {
  Report report{std::string("Plan"), {TableBlock{sheet_of(1, "some words that may be broken")}}};
  const ReportDocument document(report, TextView::plain_english());
  const QTextTable& table = *tables_of(document)[0];
  const QTextBlockFormat text = table.cellAt(1, 0).firstCursorPosition().blockFormat(),
                         number = table.cellAt(1, 1).firstCursorPosition().blockFormat();
  EXPECT_TRUE(number.nonBreakableLines());
  EXPECT_EQ(number.alignment() & Qt::AlignHorizontal_Mask, Qt::AlignRight);
  EXPECT_FALSE(text.nonBreakableLines());
}

TEST(ReportDocument, AnItemsNumberStaysWithItsUnit) {
  Report report{std::string("Plan"),
                {ItemsBlock{{{"Arc energy"_word, Measure{1234.5, "J"}},
                             {"Arc energy"_word, MeasureRange{4.5, 6.0, "mm"}},
                             {"Title"_word, std::string("some words that may be broken")}}}}};
  const ReportDocument document(report, TextView::plain_english());
  const QTextTable& table = *tables_of(document)[0];
  const auto one_line = [&](int row) {
    return table.cellAt(row, 1).firstCursorPosition().blockFormat().nonBreakableLines();
  };
  EXPECT_TRUE(one_line(0));
  EXPECT_TRUE(one_line(1));
  EXPECT_FALSE(one_line(2));
}

TEST(ReportDocument, APlaceToSignHasALineAboveItsWords) {
  const Report report{std::string("Plan"), {SignBlock{{"Inspected"_word, "Released"_word}}}};
  const ReportDocument document(report, TextView::plain_english());
  const QTextTable& table = *tables_of(document)[0];
  ASSERT_EQ(table.rows(), 2);
  EXPECT_EQ(table.cellAt(1, 1).firstCursorPosition().block().text(), "Released");
  EXPECT_EQ(table.cellAt(0, 1).format().toTableCellFormat().bottomBorder(), 1);
  EXPECT_EQ(table.format().toTableFormat().headerRowCount(), 1) << "no page begins with the words alone";
}

TEST(ReportDocument, TextOfAFileStaysPlainText) {
  const std::string hostile = "<img src=\"/etc/hostname\"><b>bold</b>\x1b[2J";
  Report report{hostile, {ParagraphBlock{hostile}, TableBlock{sheet_of(1, hostile)}}};
  const ReportDocument document(report, TextView::plain_english());
  const QString text = document.toPlainText();
  EXPECT_EQ(text.count("<b>bold</b>\\x1B[2J"), 3) << text.toStdString();
  EXPECT_FALSE(text.contains(QChar(QChar::ObjectReplacementCharacter)));
}

TEST(ReportDocument, ADrawingIsPaintedAsVectorsAndACodeAsSquares) {
  const std::string svg =
      "<svg viewBox=\"0 0 10 5\"><rect fill=\"#d55e00\" x=\"0\" y=\"0\" width=\"10\" height=\"5\"/></svg>";
  for (const auto size : {FigureBlock::Size::page_wide, FigureBlock::Size::code}) {
    Report report{std::string("Plan"), {FigureBlock{[&](const TextView&) { return svg; }, size}}};
    ReportDocument document(report, TextView::plain_english());
    QImage page(1200, 900, QImage::Format_RGB32);
    page.fill(Qt::white);
    document.layOut(page);
    QPainter painter(&page);
    document.documentLayout()->draw(&painter, {});
    painter.end();
    const QTextBlock block = document.begin().next();
    const QRectF place = document.documentLayout()->blockBoundingRect(block);
    EXPECT_EQ(page.pixelColor(static_cast<int>(place.left()) + 20, static_cast<int>(place.top()) + 20),
              QColor(0xd5, 0x5e, 0x00));
  }
}

TEST(ReportDocument, ColumnsAreBesideOneAnotherByTheirShares) {
  const auto column = [](int share, const char* label) {
    return GroupBlock{GroupBlock::Kind::whole,
                      {ItemsBlock{{{std::string(label), 1.0}}}, ParagraphBlock{std::string("below")}},
                      share};
  };
  Report report{std::string("Plan"), {}};
  report.add(GroupBlock{GroupBlock::Kind::columns, {column(3, "left"), column(1, "right")}});
  report.add(ParagraphBlock{std::string("after")});
  ReportDocument document(report, TextView::plain_english());
  QImage page(800, 900, QImage::Format_RGB32);
  document.layOut(page);
  ASSERT_EQ(tables_of(document).size(), 1u);
  const QTextTable& table = *tables_of(document)[0];
  ASSERT_EQ(table.columns(), 2);
  ASSERT_EQ(table.childFrames().size(), 2) << "a table of items in each";
  const QRectF left = document.documentLayout()->frameBoundingRect(table.childFrames()[0]),
               right = document.documentLayout()->frameBoundingRect(table.childFrames()[1]);
  EXPECT_NEAR(left.top(), right.top(), 1);
  EXPECT_NEAR(right.left(), 600, 20);
  EXPECT_EQ(document.lastBlock().text(), "after");
}

TEST(ReportDocument, ASketchIsPaintedInItsPlace) {
  Drawing drawing;
  drawing.width = 96;
  drawing.height = 48;
  drawing.paths.push_back(
      {{{0, 0}, {96, 0}, {96, 48}, {0, 48}}, true, DrawingFill::ink, DrawingStroke::none});
  Report report{std::string("Plan"), {DrawingsBlock{[&](const TextView&) {
                  return std::vector<Drawing>{drawing, drawing};
                }}}};
  ReportDocument document(report, TextView::plain_english());
  QImage page(1200, 900, QImage::Format_RGB32);
  page.fill(Qt::white);
  document.layOut(page);
  QPainter painter(&page);
  document.documentLayout()->draw(&painter, {});
  painter.end();
  const QRectF place = document.documentLayout()->blockBoundingRect(document.begin().next());
  EXPECT_EQ(page.pixelColor(static_cast<int>(place.left()) + 10, static_cast<int>(place.top()) + 10),
            QColor(0x23, 0x27, 0x2e));
}

TEST(ReportDocument, ATableThatIsTooWideIsSetSmaller) {
  Sheet wide{"wide", {}, {{}}};
  for (int i = 0; i < 20; ++i) {
    wide.columns.push_back({"key", {"Number"_word}, 5});
    wide.rows[0].push_back(123456.0 + i);
  }
  Report report{std::string("Plan"), {TableBlock{wide}}};
  ReportDocument document(report, TextView::plain_english());
  QImage page(700, 900, QImage::Format_RGB32);
  document.layOut(page);
  QTextTable* table = tables_of(document)[0];
  EXPECT_LE(document.documentLayout()->frameBoundingRect(table).width(), 701);
  EXPECT_LT(table->cellAt(1, 0).firstCursorPosition().block().begin().fragment().charFormat().fontPointSize(),
            ReportDocument::font().pointSizeF());
}

}  // namespace
}  // namespace seamtakt::desk
