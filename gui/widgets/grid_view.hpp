#pragma once

#include <QStyledItemDelegate>
#include <QTableView>

class QSortFilterProxyModel;

namespace seamtakt::desk {

class GridModel;
struct PastedRange;

/// Draws rows 28 px high with a mark in the state column, and edits cells with the same line as forms have.
class GridDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
};

/// A table of the desk: sorted by the cells' unrounded numbers, copied to and pasted from a spreadsheet.
class GridView : public QTableView {
  Q_OBJECT

 public:
  GridView(GridModel& grid, const QString& name, QWidget* parent = nullptr);

  GridModel& grid() const { return grid_; }
  QSortFilterProxyModel& proxy() const { return *proxy_; }
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
  /// The column that takes the remaining width: a large window shows more of a long text.
  void setRoomTaker(int column);

 public slots:
  /// Puts the selected range on the clipboard: for other programs with its headings, for a table of the desk
  /// without them. A single cell is its value alone.
  void copy();

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

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  QStringList pastedLines(const QString& text, int first_column) const;
  bool takePasted(const PastedRange& range);
  bool askToRename(const QModelIndex& at);
  int contentWidth(int column) const;
  void giveRoom();

  GridModel& grid_;
  QSortFilterProxyModel* proxy_;
  int room_taker_ = -1;
};

}  // namespace seamtakt::desk
