#include "app/report_document.hpp"

#include <QAbstractTextDocumentLayout>
#include <QTextCursor>
#include <QTextFrame>
#include <QTextTable>
#include <algorithm>

#include "app/report_figure.hpp"
#include "base/error.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "widgets/plain_text.hpp"

namespace seamtakt::desk {

namespace {

const QColor quiet(0x5a, 0x62, 0x6d), thin_rule(0xcc, 0xcc, 0xcc), head_rule(0x44, 0x44, 0x44);

/// Control bytes as printable() shows them; nothing is cut.
QString plain(const std::string& text) {
  return QString::fromStdString(printable(text, text.size() * 8 + 8));
}

QTextBlockFormat block_format(double top_px, double bottom_px) {
  QTextBlockFormat format;
  format.setTopMargin(top_px);
  format.setBottomMargin(bottom_px);
  return format;
}

QTextCharFormat coloured(const QColor& colour) {
  QTextCharFormat format;
  format.setForeground(colour);
  return format;
}

/// A number isn't broken from its unit, nor are the two ends of a range.
bool is_number(const SheetCell& cell) {
  return std::holds_alternative<double>(cell) || std::holds_alternative<Count>(cell) ||
         std::holds_alternative<Measure>(cell) || std::holds_alternative<MeasureRange>(cell) ||
         std::holds_alternative<Pair>(cell) || std::holds_alternative<Figure>(cell);
}

/// How a cell looks.
struct CellLook {
  QColor rule = thin_rule;  ///< below it; an invalid one draws none
  QTextCharFormat text = {};
  bool right = false, one_line = false;
};

class Writer {
 public:
  Writer(QTextDocument& document, const TextView& view)
      : view_(view), figures_(new ReportFigures(document)), cursor_(&document) {}

  void put(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) std::visit(*this, block);
  }

  void operator()(const TitleBlock& block) {
    struct {
      double point_size, top_px, bottom_px;
    } looks[] = {{15, 0, 6}, {12, 14, 6}, {10, 10, 4}};
    const auto& look = looks[std::clamp(block.level, 1, 3) - 1];
    QTextBlockFormat format = block_format(look.top_px, look.bottom_px);
    format.setHeadingLevel(block.level);
    QTextCharFormat text;
    text.setFontPointSize(look.point_size);
    text.setFontWeight(QFont::Bold);
    begin_block(format);
    cursor_.insertText(plain(cell_text(block.text, view_)), text);
  }

  void operator()(const ParagraphBlock& block) {
    begin_block(block_format(3, 3));
    const bool is_quiet = block.look == ParagraphBlock::Look::quiet;
    cursor_.insertText(plain(cell_text(block.text, view_)), is_quiet ? coloured(quiet) : QTextCharFormat());
  }

  void operator()(const ItemsBlock& block) {
    if (block.items.empty()) return;
    QTextTable& table = begin_table(static_cast<int>(block.items.size()), 2, is_in_columns_);
    // In a narrow column the longest German label would be cut within a word, as Qt gives the values more
    // than half.
    if (is_in_columns_) set_widths(table, {51, 49});
    for (int row = 0; row < table.rows(); ++row) {
      const auto& [label, value] = block.items[static_cast<std::size_t>(row)];
      put_cell(table, row, 0, cell_text(label, view_), {thin_rule, coloured(quiet)});
      CellLook look;
      look.one_line = is_number(value);
      put_cell(table, row, 1, cell_text(value, view_), look);
    }
    end_table(table);
  }

  void operator()(const TableBlock& block) {
    const ShownTable shown = shown_table(block.sheet, view_);
    const int columns = static_cast<int>(shown.head.size());
    QTextTable& table = begin_table(static_cast<int>(shown.rows.size()) + 1, columns, true);
    QTextTableFormat format = table.format();
    format.setHeaderRowCount(1);
    table.setFormat(format);
    QTextCharFormat head = coloured(quiet);
    head.setFontWeight(QFont::DemiBold);
    put_row(table, 0, shown, shown.head, {head_rule, head});
    for (std::size_t row = 0; row < shown.rows.size(); ++row)
      put_row(table, static_cast<int>(row) + 1, shown, shown.rows[row], {});
    end_table(table);
  }

  void operator()(const FigureBlock& block) {
    const std::string svg = block.draw(view_);
    if (svg.empty()) return;
    begin_block(block_format(3, 3));
    figures_->insert(cursor_, svg, block.size);
  }

  /// In one paragraph, so that they are beside one another as far as there is room.
  void operator()(const DrawingsBlock& block) {
    begin_block(block_format(3, 3));
    for (const Drawing& drawing : block.draw(view_)) figures_->insert(cursor_, drawing);
  }

  void operator()(const CodeBlock& block) {
    QTextTable& table = begin_table(1, 2, false);
    put_cell(table, 0, 0, view_.word(block.label), {thin_rule, coloured(quiet)});
    CellLook look;
    look.text.setFontFamilies({QStringLiteral("DejaVu Sans Mono")});
    QStringList lines;
    for (const std::string& line : block.lines) lines << plain(line);
    put_text(table, 0, 1, lines.join(QChar(QChar::LineSeparator)), look);
    end_table(table);
  }

  /// A line to sign on above each. Side by side, so that no page begins with the last of them; the line stays
  /// with its words like the head of a table.
  void operator()(const SignBlock& block) {
    begin_block(block_format(3, 3));
    const int places = static_cast<int>(block.places.size());
    QTextTable& table = begin_table(2, places, true);
    QTextTableFormat format = table.format();
    format.setHeaderRowCount(1);
    table.setFormat(format);
    for (int column = 0; column < places; ++column) {
      put_text(table, 0, column, QString(2, QChar(QChar::LineSeparator)), {head_rule});
      put_cell(table, 1, column, view_.word(block.places[static_cast<std::size_t>(column)]), {QColor()});
    }
    end_table(table);
  }

  void operator()(const GroupBlock& block) {
    block.kind == GroupBlock::Kind::columns ? put_columns(block.blocks) : put(block.blocks);
  }

 private:
  /// The document has an empty block at its begin and after each table: the next one takes its place.
  void begin_block(const QTextBlockFormat& format) {
    if (is_fresh_)
      cursor_.setBlockFormat(format);
    else
      cursor_.insertBlock(format, QTextCharFormat());
    is_fresh_ = false;
  }

  QTextTable& begin_table(int rows, int columns, bool page_wide) {
    if (is_fresh_) {  // between two tables
      QTextBlockFormat gap;
      gap.setLineHeight(4, QTextBlockFormat::FixedHeight);
      cursor_.setBlockFormat(gap);
    }
    QTextTableFormat format;
    format.setCellSpacing(0);
    format.setCellPadding(2);
    format.setBorder(0);
    if (page_wide) format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
    return *cursor_.insertTable(rows, columns, format);
  }

  /// Behind the table, in the document or in the cell that holds it.
  void end_table(const QTextTable& table) {
    cursor_.setPosition(table.lastPosition() + 1);
    is_fresh_ = true;
  }

  static void set_widths(QTextTable& table, const QList<double>& percent) {
    QList<QTextLength> widths;
    for (const double width : percent) widths << QTextLength(QTextLength::PercentageLength, width);
    QTextTableFormat format = table.format();
    format.setColumnWidthConstraints(widths);
    table.setFormat(format);
  }

  static int share_of(const Block& block) {
    const GroupBlock* group = std::get_if<GroupBlock>(&block);
    return group != nullptr ? group->share : 1;
  }

  /// A row of cells without lines, each with its share of the width.
  void put_columns(const std::vector<Block>& columns) {
    if (columns.empty()) return;
    QTextTable& table = begin_table(1, static_cast<int>(columns.size()), true);
    double all = 0;
    for (const Block& column : columns) all += share_of(column);
    QList<double> widths;
    for (const Block& column : columns) widths << 100 * share_of(column) / all;
    set_widths(table, widths);
    is_in_columns_ = true;
    for (int i = 0; i < table.columns(); ++i) {
      cursor_ = table.cellAt(0, i).firstCursorPosition();
      is_fresh_ = true;
      std::visit(*this, columns[static_cast<std::size_t>(i)]);
    }
    is_in_columns_ = false;
    end_table(table);
  }

  void put_text(QTextTable& table, int row, int column, const QString& text, const CellLook& look) {
    QTextTableCell cell = table.cellAt(row, column);
    QTextTableCellFormat format;
    format.setVerticalAlignment(QTextCharFormat::AlignTop);
    if (look.rule.isValid()) {
      format.setBottomBorder(1);
      format.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
      format.setBottomBorderBrush(look.rule);
    }
    cell.setFormat(format);
    QTextBlockFormat block;
    block.setAlignment(look.right ? Qt::AlignRight : Qt::AlignLeft);
    block.setNonBreakableLines(look.one_line);
    QTextCursor inside = cell.firstCursorPosition();
    inside.setBlockFormat(block);
    inside.insertText(text, look.text);
  }

  void put_cell(QTextTable& table, int row, int column, const std::string& text, const CellLook& look) {
    put_text(table, row, column, plain(text), look);
  }

  /// A number isn't broken over two lines; a head is, except for a single word.
  void put_row(QTextTable& table, int row, const ShownTable& shown, const std::vector<std::string>& cells,
               const CellLook& look) {
    for (std::size_t i = 0; i < cells.size(); ++i) {
      CellLook of_cell = look;
      of_cell.right = shown.numeric[i];
      of_cell.one_line = shown.numeric[i] ? row > 0 : stays_on_one_line(cells[i]);
      put_cell(table, row, static_cast<int>(i), cells[i], of_cell);
    }
  }

  const TextView& view_;
  ReportFigures* figures_;  ///< the document's
  QTextCursor cursor_;
  bool is_fresh_ = true;
  bool is_in_columns_ = false;
};

void fit_tables(QTextDocument& document, double width) {
  constexpr double smallest_pt = 4, step_pt = 0.5;
  for (QTextFrame* frame : document.rootFrame()->childFrames()) {
    auto* table = qobject_cast<QTextTable*>(frame);
    if (table == nullptr) continue;
    for (double size_pt = ReportDocument::font().pointSizeF() - step_pt;
         size_pt >= smallest_pt && document.documentLayout()->frameBoundingRect(table).width() > width;
         size_pt -= step_pt) {
      QTextCursor cells = table->firstCursorPosition();
      cells.setPosition(table->lastPosition(), QTextCursor::KeepAnchor);
      QTextCharFormat smaller;
      smaller.setFontPointSize(size_pt);
      cells.mergeCharFormat(smaller);
    }
  }
}

}  // namespace

ReportDocument::ReportDocument(const Report& report, const TextView& view, Title title) {
  setUndoRedoEnabled(false);
  setDefaultFont(font());
  setMetaInformation(DocumentTitle, plain(cell_text(report.title, view)));
  QTextCursor edit(this);
  edit.beginEditBlock();
  Writer writer(*this, view);
  if (title == Title::shown) writer(TitleBlock{1, report.title});
  writer.put(report.blocks);
  edit.endEditBlock();
}

/// A tiny letter spacing keeps Qt from using ligatures (ff, fi), which can't be copied or searched: anchors,
/// ids and digests must be copied from the page unchanged.
QFont ReportDocument::font() {
  QFont font(QStringLiteral("DejaVu Sans"), 7);
  font.setLetterSpacing(QFont::AbsoluteSpacing, 0.05);
  return font;
}

void ReportDocument::layOut(QPaintDevice& device) {
  layOut(device, device.width());
}

void ReportDocument::layOut(QPaintDevice& device, double width) {
  documentLayout()->setPaintDevice(&device);
  setTextWidth(width);
  fit_tables(*this, width);
}

QVariant ReportDocument::loadResource(int, const QUrl&) {
  return no_picture();
}

}  // namespace seamtakt::desk
