#pragma once

#include <QTableView>
#include <vector>

class QLineEdit;
class QMenu;
class QSortFilterProxyModel;

namespace seamtakt::desk {

class FrozenColumns;
class GridModel;
class SortedRows;
class TableFilter;
struct PastedCell;
struct PastedRange;

/// A table of the desk: sorted by the cells' unrounded numbers, filtered, copied to and pasted from a
/// spreadsheet, with a menu for what can be done with its cells.
class GridView : public QTableView {
  Q_OBJECT

 public:
  GridView(GridModel& grid, const QString& name, QWidget* parent = nullptr);

  GridModel& grid() const { return grid_; }
  QSortFilterProxyModel& proxy() const;
  /// Row of the model for the current one; -1 where there is none.
  int currentRow() const;
  /// Puts the cursor into that row, in its present column; -1: nowhere.
  void selectRow(int source_row);
  /// Puts the cursor into the cell of a column.
  bool focusCell(int source_row, std::string_view key);

  /// The selected range as tab-separated text with its headings left out, as spreadsheets take it.
  QString copyText() const;
  /// The headings of the selected columns, tab-separated: "Time, s".
  QString copyHeadings() const;
  /// Puts tab-separated text in from the current cell on, all of it or nothing; more rows than there are add
  /// rows. What is more than one column, adds rows or has a refused cell is shown before, and a person
  /// decides. Whether it was pasted at once.
  bool paste(const QString& text);
  /// Columns that there is no room for are left to their end; widths follow the contents.
  void fitColumns();
  /// One column as wide as its contents, within bounds in pixels.
  void fitColumn(int column, int least, int most);
  /// Columns are chosen in the heading's menu, moved and widened by dragging, and kept under this name.
  void keepColumns(const QString& key);
  QMenu* columnMenu();
  /// Ctrl+F goes to this box in place of the table's own.
  void setFilterBox(QLineEdit* box);
  void askFilter();
  /// Rows of the model that the selection touches, in their order.
  std::vector<int> selectedRows() const;
  /// Sets a field in all selected rows, as one step of undo, or in none.
  void setSelected(int column, const QString& value);
  /// The same of other cells. `what`: the name of the step.
  void setCells(const std::vector<PastedCell>& cells, const QString& what);
  /// Asks for the value of the current column that all selected rows get.
  void askToSet();
  void showMenu(const QModelIndex& at, const QPoint& where);
  /// What a double click does.
  void openAt(const QModelIndex& at);
  void scrollTo(const QModelIndex& index, ScrollHint hint = EnsureVisible) override;
  /// The column that takes the remaining width: a large window shows more of a long text.
  void setRoomTaker(int column);

 public slots:
  /// Puts the selected range on the clipboard: for other programs with its headings, for a table of the desk
  /// without them. A single cell is its value alone.
  void copy();
  void pasteClipboard();

 signals:
  void rowChosen(int source_row);
  /// The derived value in the cell that has become the current one, or has the focus again; empty where there
  /// is none.
  void cellChosen(const QString& place, const QString& key);
  /// Values that a paste could not set, and why.
  void refused(const QString& reason);
  void opened(int source_row);
  /// What was done.
  void said(const QString& text);
  /// The menu of a cell is about to be shown: pages add what they can do with it.
  void menuAsked(QMenu& menu, const QModelIndex& at);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  QStringList pastedLines(const QString& text, int first_column) const;
  bool takePasted(const PastedRange& range, const QString& what);
  bool canSet() const;
  int namingColumns() const;
  void storeColumns() const;
  void restoreColumns();
  bool askToRename(const QModelIndex& at);
  int contentWidth(int column) const;
  int fittedWidth(int column) const;
  void setFitted(int column, int width);
  void giveRoom();

  GridModel& grid_;
  SortedRows* proxy_;
  FrozenColumns* frozen_ = nullptr;
  TableFilter* filter_ = nullptr;
  QLineEdit* filter_box_ = nullptr;
  QString kept_;
  QVariantMap widths_;  ///< that a person gave columns, by key; they stay
  bool is_fitting_ = false;
  int room_taker_ = -1;
};

}  // namespace seamtakt::desk
