#pragma once

#include <QDialog>

#include "document/document.hpp"

class QLabel;
class QMenu;
class QPushButton;
class QTreeWidget;
class QTreeWidgetItem;

namespace seamtakt::desk {

class FieldForm;

/// All that a plan holds, as a tree made from the field tables, and the form of the chosen one. Each kind of
/// thing is added, duplicated, removed and renamed here.
class PlanDataDialog : public QDialog {
  Q_OBJECT

 public:
  explicit PlanDataDialog(Document& document, QWidget* parent = nullptr);
  QTreeWidget& tree() { return *tree_; }
  FieldForm& form() { return *form_; }
  /// Chooses the node of an object, a list ("/wires") or an object that may be absent ("/cell"); false where
  /// there is none.
  bool choose(const std::string& pointer);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void makeTree();
  void makeButtons();
  void fill();
  void showChosen();
  /// What Add can make here, more than one way: a menu; else it is made at once.
  void add();
  void addBy(const QString& what, const std::function<std::string(Plan&)>& make);
  void duplicate();
  void remove();
  void rename();
  QTreeWidgetItem* itemAt(const std::string& pointer) const;

  Document& document_;
  QTreeWidget* tree_;
  FieldForm* form_;
  QLabel* refusal_;
  QPushButton *add_, *duplicate_, *remove_, *rename_;
  std::string shown_;  ///< all pointers and texts in the tree: refilled only when they change
};

}  // namespace seamtakt::desk
