#include "widgets/table_filter.hpp"

#include <QKeyEvent>
#include <QSortFilterProxyModel>

#include "widgets/grid_view.hpp"

namespace seamtakt::desk {

TableFilter::TableFilter(GridView& table) : QLineEdit(&table), table_(table) {
  setPlaceholderText(tr("Rows that have these words"));
  setAccessibleName(tr("Filter of the table"));
  setClearButtonEnabled(true);
  setFrame(true);
  hide();
  connect(this, &QLineEdit::textChanged, this,
          [this](const QString& words) { table_.proxy().setFilterFixedString(words); });
}

void TableFilter::ask() {
  place();
  show();
  raise();
  setFocus(Qt::ShortcutFocusReason);
  selectAll();
}

void TableFilter::place() {
  const QRect inside = table_.viewport()->geometry();
  const int wide = std::min(inside.width(), fontMetrics().averageCharWidth() * 42);
  const int high = sizeHint().height();
  setGeometry(inside.right() - wide + 1, inside.bottom() - high + 1, wide, high);
}

/// Enter and the arrow keys go to the rows that are left; the filter stays.
void TableFilter::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Escape:
      clear();
      hide();
      table_.setFocus(Qt::ShortcutFocusReason);
      return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Up:
    case Qt::Key_Down:
      if (!table_.currentIndex().isValid()) table_.setCurrentIndex(table_.proxy().index(0, 0));
      table_.setFocus(Qt::ShortcutFocusReason);
      if (text().isEmpty()) hide();
      return;
    default:
      QLineEdit::keyPressEvent(event);
  }
}

}  // namespace seamtakt::desk
