#pragma once

#include <QStyledItemDelegate>

namespace seamtakt::desk {

/// Draws rows 28 px high with a mark in the state column, numbers aligned at the decimal sign and the whole
/// current row lit, and edits cells with the same line as forms have.
class GridDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;

  /// A number followed by blanks as wide as the digits that others of its column have after the decimal sign.
  static QString aligned(const QString& number, int fraction_digits);

 protected:
  void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override;

 private:
  void paintCell(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const;
};

}  // namespace seamtakt::desk
