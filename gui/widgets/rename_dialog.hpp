#pragma once

#include <QDialog>
#include <string>

#include "document/document.hpp"

class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace seamtakt::desk {

/// The command that changes an id: lists what refers to it, and renames all of it in one step of undo. A
/// refused id leaves the plan as it is, and the dialog says why.
class RenameDialog : public QDialog {
  Q_OBJECT

 public:
  /// `pointer`: an object that has an id.
  RenameDialog(Document& document, std::string pointer, QWidget* parent = nullptr);
  /// Shows one for the object, and doesn't wait.
  static void ask(Document& document, const std::string& pointer, QWidget* parent);
  QLineEdit& line() { return *line_; }
  QListWidget& references() { return *references_; }

  void accept() override;

 private:
  Document& document_;
  std::string pointer_;
  QLineEdit* line_;
  QListWidget* references_;
  QLabel* refusal_;
};

}  // namespace seamtakt::desk
