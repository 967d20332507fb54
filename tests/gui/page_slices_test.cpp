#include "app/page_slices.hpp"

#include <gtest/gtest.h>

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextTable>

namespace seamtakt::desk {
namespace {

/// Text of the cell in a row, so long that some rows take several lines.
QString cell_text(int row, int column) {
  return QStringLiteral("row%1 ").arg(row) +
         QStringLiteral("some words ").repeated((row * 7 + column * 3) % 12);
}

QString long_table(int rows) {
  QString html = QStringLiteral(
      "<h1>Title</h1><p>Before.</p><h2>Table</h2><table cellpadding=\"2\" width=\"100%\"><thead>"
      "<tr><th>Head A</th><th>Head B</th></tr></thead><tbody>");
  for (int row = 0; row < rows; ++row)
    html += "<tr><td>" + cell_text(row, 0) + "</td><td>" + cell_text(row, 1) + "</td></tr>";
  return html + QStringLiteral("</tbody></table><h2>After</h2><p>End.</p>");
}

class PageSlices : public testing::Test {
 protected:
  void lay_out(const QString& html) {
    document.setHtml(html);
    document.setTextWidth(300);
    slices = page_slices(document, height);
  }
  /// Top and bottom of a row's content.
  QRectF row_rect(const QTextTable& table, int row) {
    QRectF rect;
    for (int column = 0; column < table.columns(); ++column) {
      const QTextTableCell cell = table.cellAt(row, column);
      for (auto at = cell.begin(); !at.atEnd(); ++at)
        rect = rect.united(document.documentLayout()->blockBoundingRect(at.currentBlock()));
    }
    return rect;
  }
  const QTextTable& table() {
    for (QTextFrame* frame : document.rootFrame()->childFrames())
      if (auto* found = qobject_cast<QTextTable*>(frame)) return *found;
    throw std::logic_error("no table");
  }

  static constexpr double height = 400;
  QTextDocument document;
  std::vector<PageSlice> slices;
};

TEST_F(PageSlices, CoverTheDocumentOnceAndNoPageIsTooHigh) {
  lay_out(long_table(120));
  ASSERT_GT(slices.size(), 4u);
  double at = 0;
  for (const PageSlice& slice : slices) {
    EXPECT_DOUBLE_EQ(slice.top, at);
    EXPECT_GT(slice.bottom, slice.top);
    EXPECT_LE(slice.bottom - slice.top + slice.header_bottom - slice.header_top, height + 1e-6);
    at = slice.bottom;
  }
  EXPECT_NEAR(at, document.documentLayout()->documentSize().height(), 1e-6);
}

TEST_F(PageSlices, CutNoRowAndRepeatTheHeader) {
  lay_out(long_table(120));
  const QTextTable& rows = table();
  int several_lines = 0;
  for (int row = 0; row < rows.rows(); ++row) {
    const QRectF rect = row_rect(rows, row);
    several_lines += rect.height() > 40;
    for (const PageSlice& slice : slices)
      EXPECT_FALSE(slice.bottom > rect.top() + 0.5 && slice.bottom < rect.bottom() - 0.5) << "row " << row;
  }
  EXPECT_GT(several_lines, 20) << "rows of one line would prove little";
  const QRectF header = row_rect(rows, 0);
  for (std::size_t i = 1; i + 1 < slices.size(); ++i) {
    EXPECT_LE(slices[i].header_top, header.top());
    EXPECT_GE(slices[i].header_bottom, header.bottom());
  }
}

TEST_F(PageSlices, AHeadingStaysWithWhatFollows) {
  for (int rows = 10; rows < 40; ++rows) {
    lay_out(long_table(rows));
    for (QTextBlock block = document.begin(); block.isValid(); block = block.next()) {
      if (block.blockFormat().headingLevel() == 0) continue;
      const double top = document.documentLayout()->blockBoundingRect(block).top(),
                   next = document.documentLayout()->blockBoundingRect(block.next()).bottom();
      for (const PageSlice& slice : slices)
        EXPECT_FALSE(slice.bottom > top && slice.bottom < next - 0.5)
            << rows << " rows, " << block.text().toStdString();
    }
  }
}

TEST_F(PageSlices, WhatIsHigherThanAPageIsCutWhereItEnds) {
  lay_out("<table><tr><td>" + QStringLiteral("many words ").repeated(1500) + "</td></tr></table><p>End.</p>");
  ASSERT_GT(slices.size(), 3u);
  for (std::size_t i = 0; i + 2 < slices.size(); ++i)
    EXPECT_NEAR(slices[i].bottom - slices[i].top, height, 1e-6);
}

}  // namespace
}  // namespace seamtakt::desk
