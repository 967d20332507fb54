#include "app/page_slices.hpp"

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextFrame>
#include <QTextLayout>
#include <QTextTable>
#include <algorithm>
#include <limits>

namespace seamtakt::desk {

namespace {

/// What a page holds whole.
struct Box {
  double top = 0, bottom = 0;
  bool stays_with_next = false;
  double header_top = 0, header_bottom = 0;  ///< of its table, where a page may begin with it
};

class Boxes {
 public:
  explicit Boxes(const QTextDocument& document) : layout_(*document.documentLayout()) {
    take(*document.rootFrame());
  }
  const std::vector<Box>& list() const { return list_; }

 private:
  void take(const QTextFrame& frame) {
    for (auto at = frame.begin(); !at.atEnd(); ++at) {
      if (const auto* table = qobject_cast<QTextTable*>(at.currentFrame()))
        take_table(*table);
      else if (const QTextFrame* child = at.currentFrame())
        take(*child);
      else
        take_block(at.currentBlock());
    }
  }

  void take_block(const QTextBlock& block) {
    const QRectF place = layout_.blockBoundingRect(block);
    const QTextLayout& lines = *block.layout();
    const bool is_heading = block.blockFormat().headingLevel() > 0;
    if (lines.lineCount() == 0) return;
    const double first = lines.lineAt(0).y();
    for (int i = 0; i < lines.lineCount(); ++i) {
      const QTextLine line = lines.lineAt(i);
      const double top = place.top() + line.y() - first;
      list_.push_back({top, top + line.height(), is_heading, 0, 0});
    }
  }

  Box row_of(const QTextTable& table, int row) const {
    Box box{std::numeric_limits<double>::max(), 0, false, 0, 0};
    for (int column = 0; column < table.columns(); ++column) {
      const QTextTableCell cell = table.cellAt(row, column);
      for (auto at = cell.begin(); !at.atEnd(); ++at) {
        QTextFrame* inner = at.currentFrame();
        const QRectF place =
            inner ? layout_.frameBoundingRect(inner) : layout_.blockBoundingRect(at.currentBlock());
        box.top = std::min(box.top, place.top());
        box.bottom = std::max(box.bottom, place.bottom());
      }
    }
    return box;
  }

  void take_table(const QTextTable& table) {
    const int headers = table.format().toTableFormat().headerRowCount();
    const std::size_t first = list_.size();
    for (int row = 0; row < table.rows(); ++row) {
      list_.push_back(row_of(table, row));
      list_.back().stays_with_next = row < headers;
    }
    if (headers <= 0 || headers >= table.rows()) return;
    const auto body = first + static_cast<std::size_t>(headers);
    const double top = layout_.frameBoundingRect(const_cast<QTextTable*>(&table)).top();
    const double bottom = (list_[body - 1].bottom + list_[body].top) / 2;
    for (std::size_t i = body + 1; i < list_.size(); ++i) {
      list_[i].header_top = top;
      list_[i].header_bottom = bottom;
    }
  }

  const QAbstractTextDocumentLayout& layout_;
  std::vector<Box> list_;
};

}  // namespace

std::vector<PageSlice> page_slices(const QTextDocument& document, double height) {
  const Boxes boxes(document);
  const std::vector<Box>& list = boxes.list();
  const double end = document.documentLayout()->documentSize().height();
  const auto border = [&](std::size_t i) { return (list[i - 1].bottom + list[i].top) / 2; };
  std::vector<PageSlice> slices;
  PageSlice slice;
  for (std::size_t next = 1; slice.top < end;) {
    const double room = std::max(height - (slice.header_bottom - slice.header_top), height / 4);
    // The last border on this page at which it may end.
    std::size_t cut = 0;
    std::size_t i = next;
    for (; i < list.size() && border(i) <= slice.top + room; ++i)
      if (!list[i - 1].stays_with_next && border(i) > slice.top) cut = i;
    if (end <= slice.top + room) {
      slice.bottom = end;
      slices.push_back(slice);
      break;
    }
    // What is too tall for any page begins where it is.
    if (cut > 0 && list[cut].bottom - list[cut].top > height) cut = 0;
    slice.bottom = cut > 0 ? border(cut) : slice.top + room;
    slices.push_back(slice);
    slice = {slice.bottom, 0, 0, 0};
    if (cut == 0) continue;
    next = cut + 1;
    slice.header_top = list[cut].header_top;
    slice.header_bottom = list[cut].header_bottom;
  }
  return slices;
}

}  // namespace seamtakt::desk
