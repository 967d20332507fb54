#pragma once

#include <QWidget>

#include "document/document.hpp"
#include "plan/fields/field.hpp"

class QComboBox;
class QLabel;

namespace seamtakt::desk {

class QuantityEdit;

/// One field of a form: label, editor by the field's kind, and the reason where a value was refused.
class FieldCell : public QWidget {
  Q_OBJECT

 public:
  FieldCell(Document& document, std::string pointer, const FieldInfo& field, QWidget* parent);
  /// Shows what the plan holds.
  void refresh();
  QWidget* editor() const;
  /// Of an id, which otherwise only the command Rename changes: what was just made gets its name.
  void openId();
  const FieldInfo& field() const { return field_; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void makeChoice();
  void makeLine();
  void fillChoices();
  void set(const QString& text, WhenLocked when_locked);
  void finish();
  void takeBack();
  void lockId();
  bool arePoints() const;
  void askForPoints();

  Document& document_;
  std::string pointer_;
  const FieldInfo& field_;
  QLabel* label_;
  QLabel* refusal_;
  QComboBox* choice_ = nullptr;
  QuantityEdit* line_ = nullptr;
  bool is_id_ = false;
  bool asks_ = false;  ///< the text would change something locked: the end of editing asks what to do
};

}  // namespace seamtakt::desk
