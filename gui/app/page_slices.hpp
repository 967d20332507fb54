#pragma once

#include <QTextDocument>
#include <vector>

namespace seamtakt::desk {

/// A strip of a document that is laid out as one tall page.
struct PageSlice {
  double top = 0, bottom = 0;
  /// Header of the table that continues at `top`, drawn above it once more; an empty span where none does.
  double header_top = 0, header_bottom = 0;
};

/// Cuts a document that has no pages of its own (QTextDocument::setTextWidth) into pages of `height`. No cut
/// goes through a line, a picture or a table's row; a heading stays with what follows, a table's header with
/// its first row. An item taller than a page is cut where the page ends.
std::vector<PageSlice> page_slices(const QTextDocument& document, double height);

}  // namespace seamtakt::desk
