#pragma once

#include <QDialog>
#include <functional>

#include "plan/fields/field.hpp"

class QLabel;
class QTableWidget;

namespace seamtakt::desk {

/// The points of a path, or pairs of numbers, as a small table: a row a point.
class PointsDialog : public QDialog {
  Q_OBJECT

 public:
  /// `text`: the field as its line shows it, "0 0 0; 120 0 0".
  PointsDialog(const FieldInfo& field, const QString& text, QWidget* parent);
  /// Takes what text() says; the reason where it is refused: then the dialog stays, with the reason.
  void setTaker(std::function<QString(const QString& text)> taker) { taker_ = std::move(taker); }
  void accept() override;
  QString refusal() const;
  QTableWidget& points() { return *points_; }
  /// The same of what the table holds; rows without any number are left out.
  QString text() const;

 private:
  void addRow();
  void removeRow();

  QTableWidget* points_;
  QLabel* refusal_;
  std::function<QString(const QString& text)> taker_;
};

}  // namespace seamtakt::desk
