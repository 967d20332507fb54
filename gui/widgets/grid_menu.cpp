// What a person can do with the cells of a table beside typing: its menu, and a value set in many rows.
#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QHeaderView>
#include <QLineEdit>
#include <QMenu>
#include <QScrollBar>
#include <QSettings>
#include <QSortFilterProxyModel>
#include <set>

#include "document/document.hpp"
#include "models/tables/grid_model.hpp"
#include "models/tables/pasted_range.hpp"
#include "widgets/frozen_columns.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/set_dialog.hpp"
#include "widgets/table_filter.hpp"

namespace seamtakt::desk {

void GridView::contextMenuEvent(QContextMenuEvent* event) {
  const bool by_key = event->reason() == QContextMenuEvent::Keyboard;
  const QModelIndex at = by_key ? currentIndex() : indexAt(event->pos());
  showMenu(at, by_key ? viewport()->mapToGlobal(visualRect(at).bottomLeft()) : event->globalPos());
}

void GridView::showMenu(const QModelIndex& at, const QPoint& where) {
  if (at.isValid() && !selectionModel()->isSelected(at)) setCurrentIndex(at);
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  const bool any = currentIndex().isValid();
  const auto add = [&](const QString& text, const QKeySequence& keys, bool enabled, auto slot) {
    QAction* action = menu->addAction(text, this, slot);
    // The key is only shown: the table has it itself.
    if (!keys.isEmpty()) action->setText(text + QLatin1Char('\t') + keys.toString(QKeySequence::NativeText));
    action->setEnabled(enabled);
  };
  add(tr("Copy"), QKeySequence::Copy, any, [this] { copy(); });
  if (grid_.edited()) {
    add(tr("Paste"), QKeySequence::Paste, any, [this] { pasteClipboard(); });
    add(tr("Set for all selected …"), QKeySequence(Qt::CTRL | Qt::Key_Return), canSet(),
        [this] { askToSet(); });
  }
  add(tr("Filter …"), QKeySequence::Find, true, [this] { askFilter(); });
  if (any) emit menuAsked(*menu, currentIndex());
  menu->popup(where);
}

bool GridView::canSet() const {
  const QModelIndex at = currentIndex();
  return at.isValid() && grid_.edited() && grid_.columns()[static_cast<std::size_t>(at.column())].field &&
         !grid_.isId(at.column());
}

void GridView::askToSet() {
  if (!canSet()) return;
  const QModelIndex at = currentIndex();
  const FieldInfo* field = grid_.columns()[static_cast<std::size_t>(at.column())].field;
  auto* dialog = new SetDialog(*field, static_cast<int>(selectedRows().size()),
                               at.data(Qt::EditRole).toString(), window());
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this,
          [this, dialog, column = at.column()] { setSelected(column, dialog->value()); });
  dialog->open();
}

std::vector<int> GridView::selectedRows() const {
  std::set<int> rows;
  for (const QModelIndex& cell : selectionModel()->selectedIndexes())
    rows.insert(proxy().mapToSource(cell).row());
  if (rows.empty() && currentRow() >= 0) rows.insert(currentRow());
  return {rows.begin(), rows.end()};
}

/// One step of undo: all rows, or none where one of them can't take the value.
void GridView::setSelected(int column, const QString& value) {
  std::vector<PastedCell> cells;
  for (const int row : selectedRows()) cells.push_back({row, column, value.trimmed()});
  setCells(cells, tr("Set %1").arg(grid_.columns()[static_cast<std::size_t>(column)].label));
}

void GridView::setCells(const std::vector<PastedCell>& cells, const QString& what) {
  const PastedRange range = read_pasted(grid_, cells);
  if (range.lines.empty()) return emit refused(tr("Nothing is changed: there is the same already"));
  for (const PastedRange::Line& line : range.lines)
    if (!line.refusal.isEmpty())
      return emit refused(tr("Nothing is changed. %1: %2").arg(line.where, line.refusal));
  takePasted(range, what);
}

void GridView::setFilterBox(QLineEdit* box) {
  filter_box_ = box;
}

void GridView::askFilter() {
  if (filter_box_) {
    filter_box_->setFocus(Qt::ShortcutFocusReason);
    filter_box_->selectAll();
    return;
  }
  if (!filter_) filter_ = new TableFilter(*this);
  filter_->ask();
}

/// How many of the first columns say which row it is: its state and its names.
int GridView::namingColumns() const {
  static const std::set<std::string, std::less<>> naming = {"mark", "severity", "weldment", "seam",
                                                            "pass", "id",       "serial",   "unit"};
  int count = 0;
  for (const GridColumn& column : grid_.columns()) {
    if (!naming.contains(column.key)) break;
    ++count;
  }
  return count;
}

void GridView::keepColumns(const QString& key) {
  kept_ = QStringLiteral("tables/") + key;
  horizontalHeader()->setSectionsMovable(true);
  horizontalHeader()->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(horizontalHeader(), &QHeaderView::customContextMenuRequested, this,
          [this](const QPoint& at) { columnMenu()->popup(horizontalHeader()->mapToGlobal(at)); });
  restoreColumns();
  connect(horizontalHeader(), &QHeaderView::sectionMoved, this, [this](int column, int from, int to) {
    const int fixed = namingColumns();
    // State and names stay in front.
    if (column < fixed || to < fixed) {
      const QSignalBlocker quiet(horizontalHeader());
      horizontalHeader()->moveSection(to, from);
      viewport()->update();
    }
    storeColumns();
  });
  connect(horizontalHeader(), &QHeaderView::sectionResized, this, [this](int column, int from, int to) {
    // Hiding and showing is no widening.
    if (is_fitting_ || from == 0 || to == 0) return;
    widths_[QString::fromStdString(grid_.columns()[static_cast<std::size_t>(column)].key)] = to;
    QSettings().setValue(kept_ + QStringLiteral("/widths"), widths_);
  });
}

/// The columns of the table, those that are shown checked.
QMenu* GridView::columnMenu() {
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  for (int column = namingColumns(); column < grid_.columnCount(); ++column) {
    QAction* action = menu->addAction(grid_.headingText(column), this, [this, column](bool shown) {
      setColumnHidden(column, !shown);
      if (shown) fitColumn(column, 40, 420);
      storeColumns();
    });
    action->setCheckable(true);
    action->setChecked(!isColumnHidden(column));
  }
  menu->addSeparator();
  menu->addAction(tr("All columns in their first order"), this, [this] {
    for (int column = 0; column < grid_.columnCount(); ++column) {
      horizontalHeader()->moveSection(horizontalHeader()->visualIndex(column), column);
      if (column >= namingColumns()) setColumnHidden(column, false);
    }
    storeColumns();
    widths_.clear();
    QSettings().remove(kept_ + QStringLiteral("/widths"));
    fitColumns();
  });
  return menu;
}

/// Columns are kept by their keys: later versions may have others.
void GridView::storeColumns() const {
  QStringList order, hidden;
  for (int visual = 0; visual < grid_.columnCount(); ++visual) {
    const int column = horizontalHeader()->logicalIndex(visual);
    const QString key = QString::fromStdString(grid_.columns()[static_cast<std::size_t>(column)].key);
    order << key;
    if (column >= namingColumns() && isColumnHidden(column)) hidden << key;
  }
  QSettings settings;
  settings.setValue(kept_ + QStringLiteral("/order"), order);
  settings.setValue(kept_ + QStringLiteral("/hidden"), hidden);
}

void GridView::restoreColumns() {
  const QSettings settings;
  widths_ = settings.value(kept_ + QStringLiteral("/widths")).toMap();
  int visual = 0;
  for (const QString& key : settings.value(kept_ + QStringLiteral("/order")).toStringList())
    if (const int column = grid_.columnNamed(key.toStdString()); column >= 0)
      horizontalHeader()->moveSection(horizontalHeader()->visualIndex(column), visual++);
  for (const QString& key : settings.value(kept_ + QStringLiteral("/hidden")).toStringList())
    if (const int column = grid_.columnNamed(key.toStdString()); column >= namingColumns())
      setColumnHidden(column, true);
}

void GridView::scrollTo(const QModelIndex& index, ScrollHint hint) {
  QTableView::scrollTo(index, hint);
  if (!frozen_ || index.column() < frozen_->count()) return;
  const int hidden = frozen_->covered() - visualRect(index).left();
  if (hidden > 0) horizontalScrollBar()->setValue(horizontalScrollBar()->value() - hidden);
}

}  // namespace seamtakt::desk
