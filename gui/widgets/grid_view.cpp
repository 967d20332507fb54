#include "widgets/grid_view.hpp"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMimeData>
#include <set>

#include "document/document.hpp"
#include "models/tables/grid_model.hpp"
#include "models/tables/pasted_range.hpp"
#include "widgets/frozen_columns.hpp"
#include "widgets/grid_delegate.hpp"
#include "widgets/paste_dialog.hpp"
#include "widgets/rename_dialog.hpp"
#include "widgets/sorted_rows.hpp"
#include "widgets/style.hpp"
#include "widgets/table_filter.hpp"

namespace seamtakt::desk {

namespace {

/// The copied cells without their headings, which a paste into a table of the desk mustn't take for values.
constexpr const char* cells_format = "application/x-seamtakt-cells";

/// The state of "ok; Heat: fail" that is this page's own.
QString first_word(const QString& state) {
  return state.section(QStringLiteral("; "), 0, 0);
}

}  // namespace

GridView::GridView(GridModel& grid, const QString& name, QWidget* parent)
    : QTableView(parent), grid_(grid), proxy_(new SortedRows(this)) {
  proxy_->setSourceModel(&grid_);
  proxy_->setSortRole(SortRole);
  proxy_->setSortCaseSensitivity(Qt::CaseInsensitive);
  proxy_->setFilterCaseSensitivity(Qt::CaseInsensitive);
  proxy_->setFilterKeyColumn(-1);
  setModel(proxy_);
  setItemDelegate(new GridDelegate(this));
  setAccessibleName(name);
  setSelectionBehavior(QAbstractItemView::SelectItems);
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                  QAbstractItemView::AnyKeyPressed);
  setShowGrid(false);
  setWordWrap(false);
  setSortingEnabled(true);
  sortByColumn(-1, Qt::AscendingOrder);
  setTabKeyNavigation(false);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(row_px);
  verticalHeader()->setMinimumSectionSize(row_px);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setSectionsMovable(false);
  horizontalHeader()->setDefaultSectionSize(80);
  connect(&grid_, &GridModel::refused, this,
          [this](const QModelIndex&, const QString& reason) { emit refused(reason); });
  connect(this, &QTableView::activated, this,
          [this](const QModelIndex& at) { emit opened(proxy_->mapToSource(at).row()); });
  connect(&grid_, &QAbstractItemModel::headerDataChanged, this, &GridView::fitColumns);
  connect(horizontalHeader(), &QHeaderView::sortIndicatorChanged, this, [this](int column) {
    // The arrow takes room.
    if (column >= 0 && column < grid_.columnCount())
      setFitted(column, std::max(columnWidth(column), fittedWidth(column)));
  });
  if (const int naming = namingColumns(); naming > 0) frozen_ = new FrozenColumns(*this, naming);
}

QSortFilterProxyModel& GridView::proxy() const {
  return *proxy_;
}

int GridView::currentRow() const {
  return currentIndex().isValid() ? proxy_->mapToSource(currentIndex()).row() : -1;
}

void GridView::selectRow(int source_row) {
  if (source_row == -1) return setCurrentIndex({});
  if (source_row < 0 || source_row >= grid_.rowCount() || source_row == currentRow()) return;
  const int column = currentIndex().isValid() ? currentIndex().column() : 0;
  const QModelIndex at = proxy_->mapFromSource(grid_.index(source_row, column));
  if (!at.isValid()) return;
  setCurrentIndex(at);
  scrollTo(at);
}

bool GridView::focusCell(int source_row, std::string_view key) {
  const int column = grid_.columnNamed(key);
  if (column < 0 || source_row < 0 || source_row >= grid_.rowCount()) return false;
  const QModelIndex at = proxy_->mapFromSource(grid_.index(source_row, column));
  if (!at.isValid()) return false;
  setCurrentIndex(at);
  setFocus(Qt::ShortcutFocusReason);
  return true;
}

/// Cells between those that are selected apart from one another are left blank.
QString GridView::copyText() const {
  std::set<int> rows, columns;
  for (const QModelIndex& cell : selectionModel()->selectedIndexes()) {
    rows.insert(cell.row());
    columns.insert(cell.column());
  }
  QStringList lines;
  for (const int row : rows) {
    QStringList line;
    for (const int column : columns) {
      const QModelIndex at = proxy_->index(row, column);
      QString cell = selectionModel()->isSelected(at) ? at.data(Qt::EditRole).toString() : QString();
      if (cell == QStringLiteral("–")) cell.clear();
      line << cell.replace('\t', ' ').replace('\n', ' ');
    }
    lines << line.join('\t');
  }
  return lines.join('\n');
}

QString GridView::copyHeadings() const {
  QList<int> columns;
  for (const QModelIndex& cell : selectionModel()->selectedIndexes())
    if (!columns.contains(cell.column())) columns.append(cell.column());
  std::sort(columns.begin(), columns.end());
  QStringList headings;
  for (const int column : columns)
    headings += grid_.headingText(column).replace('\t', ' ').replace('\n', ' ');
  return headings.join('\t');
}

void GridView::copy() {
  const QString cells = copyText();
  auto* copied = new QMimeData;
  const bool is_one = selectionModel()->selectedIndexes().size() < 2;
  copied->setText(is_one ? cells : copyHeadings() + '\n' + cells);
  copied->setData(QLatin1String(cells_format), cells.toUtf8());
  QApplication::clipboard()->setMimeData(copied);
}

/// The lines of a text of cells; the first is left out where it has the headings of the columns.
QStringList GridView::pastedLines(const QString& text, int first_column) const {
  QStringList lines = text.split('\n');
  for (QString& line : lines)
    if (line.endsWith('\r')) line.chop(1);
  if (!lines.isEmpty() && lines.last().trimmed().isEmpty()) lines.removeLast();
  if (lines.size() < 2) return lines;
  const QStringList cells = lines[0].split('\t');
  for (qsizetype c = 0; c < cells.size(); ++c) {
    const int column = first_column + static_cast<int>(c);
    if (column >= grid_.columnCount() || cells[c].trimmed() != grid_.headingText(column)) return lines;
  }
  return lines.mid(1);
}

bool GridView::paste(const QString& text) {
  const QModelIndex from = currentIndex();
  if (!from.isValid() || !grid_.edited()) return false;
  const QStringList lines = pastedLines(text, from.column());
  std::vector<PastedCell> cells;
  qsizetype columns = 0;
  for (qsizetype r = 0; r < lines.size(); ++r) {
    const QStringList values = lines[r].split('\t');
    columns = std::max(columns, values.size());
    const int shown = from.row() + static_cast<int>(r), rows = proxy_->rowCount();
    const int row =
        shown < rows ? proxy_->mapToSource(proxy_->index(shown, 0)).row() : grid_.rowCount() + shown - rows;
    for (qsizetype c = 0; c < values.size(); ++c)
      cells.push_back({row, from.column() + static_cast<int>(c), values[c].trimmed()});
  }
  auto range = std::make_shared<const PastedRange>(read_pasted(grid_, cells));
  if (range->lines.empty() && range->added == 0) {
    emit refused(tr("Nothing is changed: there is the same already"));
    return false;
  }
  if (cells.size() == 1 && range->refused > 0) {
    const PastedRange::Line& line = range->lines.front();
    emit refused(tr("Nothing is changed. %1: %2").arg(line.where, line.refusal));
    return false;
  }
  // One column goes where the cursor is; what is wider may be shifted, and is shown before.
  if (columns == 1 && range->added + range->refused + range->left_out == 0)
    return takePasted(*range, tr("Paste"));
  auto* preview = new PasteDialog(*range, window());
  preview->setAttribute(Qt::WA_DeleteOnClose);
  connect(preview, &QDialog::accepted, this, [this, range] { takePasted(*range, tr("Paste")); });
  preview->open();
  return false;
}

bool GridView::takePasted(const PastedRange& range, const QString& what) {
  Document& document = *grid_.edited();
  if (range.before != document.plan() || !range.after) {
    emit refused(tr("The plan has changed meanwhile: nothing is pasted."));
    return false;
  }
  document.endTyping();
  const auto refusal = document.edit(what, {}, [&](Plan& plan) { plan = *range.after; });
  if (refusal)
    emit refused(refusal->text);
  else
    emit said(tr("%1: %2 Undo takes it back.").arg(what, PasteDialog::summary(range)));
  return !refusal;
}

/// The command that changes an id is asked for where the id is.
bool GridView::askToRename(const QModelIndex& at) {
  if (!at.isValid() || !grid_.edited() || !grid_.isId(at.column())) return false;
  RenameDialog::ask(*grid_.edited(), at.data(AddressRole).toString().toStdString(), this);
  return true;
}

void GridView::mouseDoubleClickEvent(QMouseEvent* event) {
  if (!askToRename(indexAt(event->position().toPoint()))) QTableView::mouseDoubleClickEvent(event);
}

void GridView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_F2 && askToRename(currentIndex())) return;
  if (event->matches(QKeySequence::Copy)) return copy();
  if (event->matches(QKeySequence::Paste)) return pasteClipboard();
  if (event->matches(QKeySequence::Find)) return askFilter();
  if (event->keyCombination() == QKeyCombination(Qt::CTRL, Qt::Key_Return)) return askToSet();
  QTableView::keyPressEvent(event);
}

void GridView::pasteClipboard() {
  const QMimeData* copied = QApplication::clipboard()->mimeData();
  const QLatin1String format(cells_format);
  paste(copied && copied->hasFormat(format) ? QString::fromUtf8(copied->data(format))
                                            : QApplication::clipboard()->text());
}

/// The filter's key is the table's where a menu has it too.
bool GridView::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Find))
    event->accept();
  return QTableView::event(event);
}

void GridView::openAt(const QModelIndex& at) {
  if (!askToRename(at)) emit opened(proxy_->mapToSource(at).row());
}

void GridView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  // The whole row is lit.
  if (current.row() != previous.row()) viewport()->update();
  if (!current.isValid()) {
    emit cellChosen({}, {});
    return;
  }
  if (current.row() != previous.row() || !previous.isValid())
    emit rowChosen(proxy_->mapToSource(current).row());
  emit cellChosen(current.data(PlaceRole).toString(), current.data(KeyRole).toString());
}

void GridView::focusInEvent(QFocusEvent* event) {
  QTableView::focusInEvent(event);
  const QModelIndex at = currentIndex();
  emit cellChosen(at.data(PlaceRole).toString(), at.data(KeyRole).toString());
}

int GridView::contentWidth(int column) const {
  const QFontMetrics metrics = fontMetrics();
  const QStringList heading =
      proxy_->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().split('\n');
  int width = 0;
  for (const QString& line : heading) width = std::max(width, metrics.horizontalAdvance(line) + 22);
  const std::string& key = grid_.columns()[static_cast<std::size_t>(column)].key;
  const bool is_mark = key == "mark" || key == "severity";
  const int sampled = std::min(grid_.rowCount(), 100), digits = grid_.fractionDigits(column);
  for (int row = 0; row < sampled; ++row) {
    const QString text = GridDelegate::aligned(grid_.index(row, column).data().toString(), digits);
    const int box = grid_.index(row, column).data(Qt::CheckStateRole).isValid() ? 22 : 0;
    width = std::max(width, metrics.horizontalAdvance(is_mark ? first_word(text) : text) + 26 + box);
  }
  if (is_mark) {
    // Marks change while one works: there is room for each.
    for (const auto severity : {Severity::fail, Severity::warn, Severity::note})
      width = std::max(width, metrics.horizontalAdvance(severity_word(severity)) + 26);
    width += 22;
  }
  return width;
}

int GridView::fittedWidth(int column) const {
  const QVariant chosen =
      widths_.value(QString::fromStdString(grid_.columns()[static_cast<std::size_t>(column)].key));
  return chosen.isValid() ? chosen.toInt() : std::min(contentWidth(column), 420);
}

/// A width that the table chooses, no person.
void GridView::setFitted(int column, int width) {
  const bool was_fitting = std::exchange(is_fitting_, true);
  setColumnWidth(column, width);
  is_fitting_ = was_fitting;
}

void GridView::fitColumns() {
  for (int column = 0; column < grid_.columnCount(); ++column) setFitted(column, fittedWidth(column));
  giveRoom();
}

void GridView::fitColumn(int column, int least, int most) {
  setFitted(column, std::clamp(fittedWidth(column), least, most));
}

void GridView::setRoomTaker(int column) {
  room_taker_ = column;
  giveRoom();
}

void GridView::giveRoom() {
  if (room_taker_ < 0 || grid_.rowCount() == 0) return;
  const int wanted = contentWidth(room_taker_), least = std::min(wanted, 420);
  const int others = horizontalHeader()->length() - columnWidth(room_taker_);
  setFitted(room_taker_, std::clamp(viewport()->width() - others, least, std::max(least, wanted)));
}

void GridView::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  giveRoom();
  if (frozen_) frozen_->follow();
  if (filter_) filter_->place();
}

}  // namespace seamtakt::desk
