#pragma once

#include <QLineEdit>

#include "plan/fields/field.hpp"

namespace seamtakt::desk {

/// The menu's key for the other units: one that edits no text on any platform.
inline constexpr QKeyCombination other_units_key = Qt::Key_F8;

/// A line for one field: takes "45 cm/min" or "18 in/min", shows the view's unit, steps with the arrow keys
/// (Page Up and Down ten times as far), and shows why it refuses.
class QuantityEdit : public QLineEdit {
  Q_OBJECT

 public:
  explicit QuantityEdit(QWidget* parent = nullptr);

  /// What it is about: range, unit and help come from the field. Must outlive the edit.
  void setField(const FieldInfo* field);
  const FieldInfo* field() const { return field_; }
  /// Shows a value set from outside; text being typed is kept.
  void setShown(const QString& text);
  void setRefusal(const QString& reason);
  const QString& refusal() const { return refusal_; }

 signals:
  /// At each key: the present text.
  void typed(const QString& text);
  void refusalChanged(const QString& reason);
  /// Escape: the entry shall be as if it had never begun.
  void dropped();

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void step(double steps);
  void drop();
  QString unitShown() const;

  const FieldInfo* field_ = nullptr;
  QString refusal_, shown_;
  bool follows_ = false;  ///< a value that comes from elsewhere is shown, not one that a table's editor holds
};

}  // namespace seamtakt::desk
