#pragma once

#include <QStyledItemDelegate>
#include <QTableView>

class QSortFilterProxyModel;

namespace seamtakt::desk {

class GridModel;

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

/// A table of the desk: sorted by the numbers behind the cells, copied to and pasted from a spreadsheet.
class GridView : public QTableView {
  Q_OBJECT

 public:
  GridView(GridModel& grid, const QString& name, QWidget* parent = nullptr);

  GridModel& grid() const { return grid_; }
  QSortFilterProxyModel& proxy() const { return *proxy_; }
  /// Row of the model behind the current one; -1 where there is none.
  int currentRow() const;
  void selectRow(int source_row);
  /// Puts the cursor into the cell of a column.
  bool focusCell(int source_row, std::string_view key);

  /// The selected range as tab-separated text with its headings left out, as spreadsheets take it.
  QString copyText() const;
  /// Puts tab-separated text in from the current cell on, all of it or nothing. False where nothing was put
  /// in.
  bool paste(const QString& text);
  /// Columns that there is no room for are left to their end; widths follow the contents.
  void fitColumns();
  /// One column as wide as its contents, within bounds in pixels.
  void fitColumn(int column, int least, int most);
  /// The column that takes what room is left over: of a long text more is read in a large window.
  void setRoomTaker(int column);

 public slots:
  void copy();

 signals:
  void rowChosen(int source_row);
  /// The derived value in the current cell; empty where there is none.
  void cellChosen(const QString& place, const QString& key);
  /// What a paste could not put in, and why.
  void refused(const QString& reason);
  void opened(int source_row);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  int contentWidth(int column) const;
  void giveRoom();

  GridModel& grid_;
  QSortFilterProxyModel* proxy_;
  int room_taker_ = -1;
};

}  // namespace seamtakt::desk
