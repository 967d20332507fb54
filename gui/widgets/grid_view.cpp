#include "widgets/grid_view.hpp"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMimeData>
#include <QPainter>
#include <QSortFilterProxyModel>

#include "document/document.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/tables/pasted_range.hpp"
#include "widgets/paste_dialog.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/rename_dialog.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

/// The copied cells without their headings, which a paste into a table of the desk mustn't take for values.
constexpr const char* cells_format = "application/x-seamtakt-cells";

const FieldInfo* field_of(const QModelIndex& index) {
  return reinterpret_cast<const FieldInfo*>(index.data(FieldRole).value<quintptr>());
}

std::optional<Severity> severity_of(const QModelIndex& index, int role = SeverityRole) {
  const QVariant severity = index.data(role);
  return severity.isValid() ? std::optional(static_cast<Severity>(severity.toInt())) : std::nullopt;
}

/// The state of "ok; Heat: fail" that is this page's own.
QString first_word(const QString& state) {
  return state.section(QStringLiteral("; "), 0, 0);
}

}  // namespace

void GridDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index) const {
  const QString key = index.data(KeyRole).toString();
  if (key != "mark" && key != "severity") return QStyledItemDelegate::paint(painter, option, index);
  QStyleOptionViewItem shifted = option;
  initStyleOption(&shifted, index);
  // A finding of another page is a second mark; the cell's tip and Explain have its words.
  const std::optional<Severity> beyond = severity_of(index, BeyondRole);
  const QString word = first_word(shifted.text);
  shifted.text.clear();
  option.widget->style()->drawControl(QStyle::CE_ItemViewItem, &shifted, painter, option.widget);
  if (word.isEmpty()) return;
  const QRect box(option.rect.left() + 8, option.rect.center().y() - 6, 13, 13);
  const std::optional<Severity> own = severity_of(index);
  const bool is_partly_judged = !own && index.data(PartlyJudgedRole).toBool();
  if (is_partly_judged)
    draw_partly_mark(*painter, box);
  else
    draw_mark(*painter, box, own);
  painter->setPen(is_partly_judged ? Palette::current().quiet : Palette::current().of(own));
  painter->drawText(option.rect.adjusted(27, 0, -2, 0), Qt::AlignVCenter | Qt::AlignLeft, word);
  if (!beyond) return;
  const int after = box.right() + 6 + painter->fontMetrics().horizontalAdvance(word) + 8;
  draw_mark(*painter, box.translated(after - box.left(), 0), beyond);
}

QWidget* GridDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&,
                                    const QModelIndex& index) const {
  const FieldInfo* field = field_of(index);
  if (!field) return nullptr;
  if (field->kind == FieldKind::choice) {
    auto* choice = new QComboBox(parent);
    choice->setAccessibleName(core_label(field->label));
    if (!field->required) choice->addItem(QStringLiteral("–"), QString());
    for (std::string_view item : field->choices)
      choice->addItem(core_text(item), QString::fromUtf8(item.data(), static_cast<qsizetype>(item.size())));
    return choice;
  }
  auto* line = new QuantityEdit(parent);
  line->setField(field);
  return line;
}

void GridDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  const QString text = index.data(Qt::EditRole).toString();
  if (auto* choice = qobject_cast<QComboBox*>(editor))
    choice->setCurrentIndex(std::max(0, choice->findData(text)));
  // An evaluation that ends meanwhile changes the cell; the text being typed is kept.
  if (auto* line = qobject_cast<QuantityEdit*>(editor); line && !line->isModified()) line->setText(text);
}

void GridDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
  if (auto* choice = qobject_cast<QComboBox*>(editor)) model->setData(index, choice->currentData());
  if (auto* line = qobject_cast<QuantityEdit*>(editor)) model->setData(index, line->text());
}

GridView::GridView(GridModel& grid, const QString& name, QWidget* parent)
    : QTableView(parent), grid_(grid), proxy_(new QSortFilterProxyModel(this)) {
  proxy_->setSourceModel(&grid_);
  proxy_->setSortRole(SortRole);
  proxy_->setSortCaseSensitivity(Qt::CaseInsensitive);
  proxy_->setFilterCaseSensitivity(Qt::CaseInsensitive);
  proxy_->setFilterKeyColumn(-1);
  setModel(proxy_);
  setItemDelegate(new GridDelegate(this));
  setAccessibleName(name);
  setSelectionBehavior(QAbstractItemView::SelectItems);
  setSelectionMode(QAbstractItemView::ContiguousSelection);
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

QString GridView::copyText() const {
  QModelIndexList cells = selectionModel()->selectedIndexes();
  std::sort(cells.begin(), cells.end(), [](const QModelIndex& a, const QModelIndex& b) {
    return a.row() != b.row() ? a.row() < b.row() : a.column() < b.column();
  });
  QString text;
  for (qsizetype i = 0; i < cells.size(); ++i) {
    if (i > 0) text += cells[i].row() == cells[i - 1].row() ? '\t' : '\n';
    QString cell = cells[i].data(Qt::EditRole).toString();
    if (cell == QStringLiteral("–")) cell.clear();
    text += cell.replace('\t', ' ').replace('\n', ' ');
  }
  return text;
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
  if (columns == 1 && range->added + range->refused + range->left_out == 0) return takePasted(*range);
  auto* preview = new PasteDialog(*range, window());
  preview->setAttribute(Qt::WA_DeleteOnClose);
  connect(preview, &QDialog::accepted, this, [this, range] { takePasted(*range); });
  preview->open();
  return false;
}

bool GridView::takePasted(const PastedRange& range) {
  Document& document = *grid_.edited();
  if (range.before != document.plan() || !range.after) {
    emit refused(tr("The plan has changed meanwhile: nothing is pasted."));
    return false;
  }
  document.endTyping();
  const auto refusal = document.edit(tr("Paste"), {}, [&](Plan& plan) { plan = *range.after; });
  if (refusal)
    emit refused(refusal->text);
  else
    emit said(tr("Pasted. %1 Undo takes it back.").arg(PasteDialog::summary(range)));
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
  if (event->matches(QKeySequence::Paste)) {
    const QMimeData* copied = QApplication::clipboard()->mimeData();
    const QLatin1String format(cells_format);
    paste(copied && copied->hasFormat(format) ? QString::fromUtf8(copied->data(format))
                                              : QApplication::clipboard()->text());
    return;
  }
  QTableView::keyPressEvent(event);
}

void GridView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
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
      grid_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().split('\n');
  int width = 0;
  for (const QString& line : heading) width = std::max(width, metrics.horizontalAdvance(line) + 22);
  const std::string& key = grid_.columns()[static_cast<std::size_t>(column)].key;
  const bool is_mark = key == "mark" || key == "severity";
  const int sampled = std::min(grid_.rowCount(), 100);
  for (int row = 0; row < sampled; ++row) {
    const QString text = grid_.index(row, column).data().toString();
    width = std::max(width, metrics.horizontalAdvance(is_mark ? first_word(text) : text) + 26);
  }
  if (is_mark) {
    // Marks change while one works: there is room for each.
    for (const auto severity : {Severity::fail, Severity::warn, Severity::note})
      width = std::max(width, metrics.horizontalAdvance(severity_word(severity)) + 26);
    width += 22;
  }
  return width;
}

void GridView::fitColumns() {
  for (int column = 0; column < grid_.columnCount(); ++column)
    setColumnWidth(column, std::min(contentWidth(column), 420));
  giveRoom();
}

void GridView::fitColumn(int column, int least, int most) {
  setColumnWidth(column, std::clamp(contentWidth(column), least, most));
}

void GridView::setRoomTaker(int column) {
  room_taker_ = column;
  giveRoom();
}

void GridView::giveRoom() {
  if (room_taker_ < 0 || grid_.rowCount() == 0) return;
  const int wanted = contentWidth(room_taker_), least = std::min(wanted, 420);
  const int others = horizontalHeader()->length() - columnWidth(room_taker_);
  setColumnWidth(room_taker_, std::clamp(viewport()->width() - others, least, std::max(least, wanted)));
}

void GridView::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  giveRoom();
}

}  // namespace seamtakt::desk
