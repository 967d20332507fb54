#pragma once

#include <QDialog>

#include "plan/fields/field.hpp"

class QComboBox;

namespace seamtakt::desk {

class QuantityEdit;

/// Asks for the value that a field gets in all selected rows.
class SetDialog : public QDialog {
  Q_OBJECT

 public:
  SetDialog(const FieldInfo& field, int rows, const QString& present, QWidget* parent);
  /// As a person types it.
  QString value() const;
  QWidget* editor() const;

 private:
  QuantityEdit* line_ = nullptr;
  QComboBox* choice_ = nullptr;
};

}  // namespace seamtakt::desk
