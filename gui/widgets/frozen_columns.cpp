#include "widgets/frozen_columns.hpp"

#include <QContextMenuEvent>
#include <QHeaderView>
#include <QScrollBar>

#include "widgets/grid_view.hpp"

namespace seamtakt::desk {

FrozenColumns::FrozenColumns(GridView& table, int count) : QTableView(&table), table_(table), count_(count) {
  setModel(table.model());
  setSelectionModel(table.selectionModel());
  setItemDelegate(table.itemDelegate());
  setAccessibleName(table.accessibleName());
  setFocusPolicy(Qt::NoFocus);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionMode(table.selectionMode());
  setSelectionBehavior(table.selectionBehavior());
  setShowGrid(false);
  setWordWrap(false);
  setTabKeyNavigation(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(table.verticalScrollMode());
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(table.verticalHeader()->defaultSectionSize());
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setSectionsClickable(true);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  connect(horizontalHeader(), &QHeaderView::sectionClicked, this, [this](int column) {
    const QHeaderView& header = *table_.horizontalHeader();
    const bool again = header.sortIndicatorSection() == column;
    table_.sortByColumn(column, again && header.sortIndicatorOrder() == Qt::AscendingOrder
                                    ? Qt::DescendingOrder
                                    : Qt::AscendingOrder);
  });
  connect(table.verticalScrollBar(), &QScrollBar::valueChanged, verticalScrollBar(), &QScrollBar::setValue);
  connect(verticalScrollBar(), &QScrollBar::valueChanged, table.verticalScrollBar(), &QScrollBar::setValue);
  connect(table.horizontalScrollBar(), &QScrollBar::valueChanged, this, &FrozenColumns::follow);
  connect(table.horizontalHeader(), &QHeaderView::sectionResized, this, &FrozenColumns::follow);
  connect(this, &QTableView::clicked, &table, [&table] { table.setFocus(Qt::MouseFocusReason); });
  connect(this, &QTableView::doubleClicked, &table, &GridView::openAt);
  hide();
}

int FrozenColumns::wide() const {
  int width = 0;
  for (int column = 0; column < count_; ++column)
    if (!table_.isColumnHidden(column)) width += table_.columnWidth(column);
  return width;
}

void FrozenColumns::follow() {
  const bool is_wanted =
      table_.horizontalScrollBar()->value() > 0 && wide() < table_.viewport()->width() * 2 / 3;
  if (!is_wanted) return hide();
  setSelectionMode(table_.selectionMode());
  setSelectionBehavior(table_.selectionBehavior());
  for (int column = 0; column < model()->columnCount(); ++column) {
    const bool is_hidden = column >= count_ || table_.isColumnHidden(column);
    setColumnHidden(column, is_hidden);
    if (!is_hidden) setColumnWidth(column, table_.columnWidth(column));
  }
  horizontalHeader()->setVisible(!table_.horizontalHeader()->isHidden());
  horizontalHeader()->setFixedHeight(table_.horizontalHeader()->height());
  const QRect inside = table_.viewport()->geometry();
  const int head = table_.horizontalHeader()->isHidden() ? 0 : table_.horizontalHeader()->height();
  setGeometry(inside.left(), inside.top() - head, wide(), inside.height() + head);
  show();
  raise();
  verticalScrollBar()->setValue(table_.verticalScrollBar()->value());
}

void FrozenColumns::contextMenuEvent(QContextMenuEvent* event) {
  table_.showMenu(indexAt(viewport()->mapFromGlobal(event->globalPos())), event->globalPos());
}

}  // namespace seamtakt::desk
